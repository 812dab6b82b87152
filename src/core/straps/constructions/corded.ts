import { phrase } from "../../words/phrase.ts";
import { type Construction, PLAIN, TRADE } from "./construction.ts";
import { edgeStep } from "./stepPhrases.ts";

/** A strip wrapped round a cord, with flat ends; its section is a ring, not a stack: see `wrappedSection.ts`. */
export const corded: Construction = {
  ...PLAIN,
  id: "corded",
  heeds: () => ["seamAllowance"],
  interfaced: null,
  rule: () => "corded",
  cautions: ["solvents"],
  layers: () => 1,
  thickestLayer: 2.5,
  roles: { cord: "needed" },
  visibleEdges: () => 2,
  plan: null,
  usualEnd: "doubled",
  rows: (choices) => [{ kind: "construction", from: "left", mm: choices.seamAllowance ?? TRADE.seamAllowance }],
  steps: (facts) => [
    phrase("corded-measure"),
    ...(facts.doubledEnd === null ? [] : [phrase("corded-ends", { back: facts.doubledEnd })]),
    phrase("corded-wrap"),
    phrase("corded-stitch", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    phrase("corded-trim"),
    ...edgeStep(facts, "corded-finish"),
  ],
};
