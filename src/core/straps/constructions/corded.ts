import { phrase } from "../words/phrase.ts";
import { type Construction, noSetback, TRADE } from "./construction.ts";
import { cutStep } from "./stepPhrases.ts";

/** A strip wrapped round a cord, with flat ends; its section is a ring, not a stack: see `wrappedSection.ts`. */
export const corded: Construction = {
  id: "corded",
  layers: () => 1,
  thickestLayer: 2.5,
  needs: ["cord"],
  allows: ["cord"],
  visibleEdges: () => 2,
  tapeRuns: 1,
  plan: () => {
    throw new TypeError("corded: a corded handle has no stack of levels; use wrappedSection");
  },
  trim: () => 0,
  setback: noSetback,
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
  cautions: [],
};
