import { type Construction, noSetback, TRADE } from "../construction.ts";
import { phrase } from "../phrase.ts";
import { cutStep } from "../stepPhrases.ts";

/** A strip wrapped round a cord, with flat ends; its section is a ring, not a stack: see `wrappedSection.ts`. */
export const corded: Construction = {
  id: "corded",
  title: "Corded handle with flat ends (1 layer round the cord, 2 at the seam)",
  rule: "π × cord + 2 × seam allowance",
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
    phrase(
      "Wrap a piece of this very material round this very cord and measure it before cutting; trust the wrap over any formula.",
    ),
    phrase("Double the flat ends back on themselves, bond and stitch them."),
    phrase("Lay the cord on the middle of the strip between the flat ends, wrap, and clip the edges together."),
    phrase("Stitch close against the cord, {allowance} from the raw edges, by hand or with a narrow foot.", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    phrase("Trim the fin and finish its edges."),
  ],
  cautions: [],
};
