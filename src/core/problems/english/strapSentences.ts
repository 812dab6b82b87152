import { formatLength } from "../../units/formatLength.ts";
import type { SentenceTable } from "../sentence.ts";
import type { StrapProblem } from "../strapProblems.ts";

/** Straps in English. */
export const strapSentences: SentenceTable<StrapProblem> = {
  "strap-too-narrow": ({ widthMm, leastMm }) => ({
    what: `A strap ${formatLength(widthMm, "mm")} wide is too narrow for its folds.`,
    remedy: `Make it at least ${formatLength(leastMm, "mm")} wide, or choose fewer layers or thinner material.`,
  }),
};
