import type { LayProblemFinding } from "../layProblems.ts";
import type { SentenceTable } from "../sentence.ts";

/** Lay problems and plans in English. */
export const laySentences: SentenceTable<LayProblemFinding> = {
  "stock-empty": ({ materialId }) => ({
    what: `There is nothing to cut "${materialId}" from.`,
    remedy: "Give the material a roll, a remnant or a skin.",
  }),
};
