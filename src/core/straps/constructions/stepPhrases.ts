import { type Phrase, phrase } from "../../words/phrase.ts";
import type { PhraseCode } from "../../words/strapWords.ts";
import type { StepFacts } from "./construction.ts";

const PRESSED = new Set(["woven", "felt"]);

/** Cutting the strip: always the first step. */
export function cutStep(facts: StepFacts): Phrase {
  return phrase("cut-pieces", { cut: facts.cutWidth });
}

/** Fusing or basting the interfacing; nothing when there is none. */
export function interfaceStep(facts: StepFacts, onto: "strip" | "facing" = "strip"): readonly Phrase[] {
  const { interfacing } = facts;
  if (interfacing === "none") return [];
  return [phrase(interfacing === "full" ? `interface-${onto}` : `interface-${onto}-${interfacing}`)];
}

/** A fold that is pressed in cloth and taped in what an iron would melt. */
export function creaseAndTape(
  facts: StepFacts,
  what: PhraseCode,
  lengths: Readonly<Record<string, number>> = {},
): readonly Phrase[] {
  return [phrase([what, PRESSED.has(facts.outerKind) ? "how-pressed" : "how-taped"], lengths)];
}

/** The topstitching that closes the strap, with its distance from the edge. */
export function topstitchStep(facts: StepFacts, what: PhraseCode): Phrase {
  const knots: PhraseCode[] = PRESSED.has(facts.outerKind) ? [] : ["tie-off"];
  return phrase([what, "from-the-edge", ...knots], { topstitch: facts.topstitch });
}
