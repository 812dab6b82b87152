import { phrase } from "../../words/phrase.ts";
import { type Construction, PLAIN, TRADE } from "./construction.ts";
import { cutStep } from "./stepPhrases.ts";

/** A strip wrapped round a cord, with flat ends; its section is a ring, not a stack: see `wrappedSection.ts`. */
export const corded: Construction = {
  ...PLAIN,
  id: "corded",
  cautions: ["solvents"],
  layers: () => 1,
  thickestLayer: 2.5,
  roles: { cord: "needed" },
  visibleEdges: () => 2,
  tapeRuns: 1,
  plan: null,
  usualEnd: "doubled",
  rows: (choices) => [{ kind: "construction", from: "left", mm: choices.seamAllowance ?? TRADE.seamAllowance }],
  steps: (facts) => [
    cutStep(facts),
    phrase("corded-measure"),
    phrase("corded-ends"),
    phrase("corded-wrap"),
    phrase("corded-stitch", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    phrase("corded-trim"),
  ],
};
