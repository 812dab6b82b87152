import type { MaterialKind } from "../../materials/material.ts";
import { type Phrase, phrase } from "../../words/phrase.ts";
import type { PhraseCode } from "../../words/strapWords.ts";
import type { Construction, StepFacts } from "./construction.ts";

const PRESSED: ReadonlySet<MaterialKind> = new Set(["woven", "felt"]);

/** Whether folds of this material are pressed with an iron; others are held with tape. */
export function isPressed(kind: MaterialKind): boolean {
  return PRESSED.has(kind);
}

/** Cutting the strip: always the first step. Leather has a backbone and a belly, cloth a grain. */
export function cutStep(construction: Construction, kind: MaterialKind, cut: number): Phrase {
  if (kind === "leather") return phrase("cut-leather", { cut });
  if (kind !== "woven") return phrase("cut-sheet", { cut });
  return phrase(construction.mayLieOnBias ? "cut-tube" : "cut-pieces", { cut });
}

/** Fusing or basting the interfacing: what an iron would melt is glued. */
export function interfaceStep(
  construction: Construction,
  placement: "full" | "reduced" | "quarter",
  kind: MaterialKind,
): Phrase {
  const onto = construction.interfaced === "facing" ? "facing" : "strip";
  return phrase([isPressed(kind) ? "interface-fuse" : "interface-glue", `interface-${onto}-${placement}`]);
}

/** A fold that is pressed in cloth, taped in what an iron would melt, and rolled round in cork. */
export function creaseAndTape(
  facts: StepFacts,
  what: PhraseCode,
  lengths: Readonly<Record<string, number>> = {},
): Phrase[] {
  const how = isPressed(facts.outerKind) ? "how-pressed" : facts.outerKind === "cork" ? "how-rolled" : "how-taped";
  return [phrase([what, how], lengths)];
}

/** Something laid on something else and held until it is sewn. */
export function held(facts: StepFacts, what: PhraseCode, lengths: Readonly<Record<string, number>>): Phrase {
  return phrase([what, isPressed(facts.outerKind) ? "held-clipped" : "held-taped"], lengths);
}

/** Holes stay in what is not woven. */
export function tieOff(facts: StepFacts): PhraseCode[] {
  return isPressed(facts.outerKind) ? [] : ["tie-off"];
}

/** The topstitching that closes the strap, with its distance from the edge. */
export function topstitchStep(facts: StepFacts, what: PhraseCode): Phrase {
  return phrase([what, "from-the-edge", ...tieOff(facts)], { topstitch: facts.topstitch });
}

/** What is done to raw edges that show, at the end; `open` where the maker has not said. */
export function edgeStep({ edgeFinish }: StepFacts, open: PhraseCode): readonly Phrase[] {
  return [phrase(edgeFinish === null ? open : `edge-${edgeFinish}`)];
}

/** The same for an edge that can only be reached before the strap is folded. */
export function edgeBeforeFolding({ edgeFinish }: StepFacts): readonly Phrase[] {
  if (edgeFinish === "as-cut") return [];
  return [phrase(edgeFinish === null ? "three-colour" : `three-${edgeFinish}`)];
}
