import type { StepFacts } from "./construction.ts";
import { type Phrase, phrase } from "./phrase.ts";

const PRESSED = new Set(["woven", "felt"]);

/** Cutting the strip: always the first step. */
export function cutStep(facts: StepFacts): Phrase {
  return phrase("Cut every piece of the list on the straight grain, never on the bias; the strip is {cut} wide.", {
    cut: facts.cutWidth,
  });
}

/** Fusing or basting the interfacing; nothing when there is none. */
export function interfaceStep(facts: StepFacts, onto: "strip" | "facing" = "strip"): readonly Phrase[] {
  const where = {
    none: "",
    full: `the whole ${onto} before folding`,
    reduced: `the middle three quarters of the ${onto} before folding`,
    quarter: `the part of the ${onto} that becomes its face, between the fold lines, before folding`,
  }[facts.interfacing];
  return where === "" ? [] : [phrase(`Fuse or baste the interfacing to ${where}.`)];
}

/** A fold that is pressed in cloth and taped in what an iron would melt. */
export function creaseAndTape(
  facts: StepFacts,
  what: string,
  lengths: Readonly<Record<string, number>> = {},
): readonly Phrase[] {
  const how = PRESSED.has(facts.outerKind)
    ? "press and pin or clip"
    : "hold with narrow double-sided tape kept off the stitch line, and roll the fold flat (no iron)";
  return [phrase(`${what}; ${how}.`, lengths)];
}

/** The topstitching that closes the strap, with its distance from the edge. */
export function topstitchStep(facts: StepFacts, what: string): Phrase {
  const knots = PRESSED.has(facts.outerKind) ? "" : " Holes stay: do not backstitch, tie the ends off.";
  return phrase(`${what}, {topstitch} from the edge.${knots}`, { topstitch: facts.topstitch });
}
