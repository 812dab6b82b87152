import { phrase } from "../../words/phrase.ts";
import type { SectionPlan } from "../section/foldPlan.ts";
import { skivedEnds } from "../section/skiving.ts";
import { allowanceEdge, bothEdges, type Construction, PLAIN, type SectionInput, TRADE } from "./construction.ts";
import { topstitchStep } from "./stepPhrases.ts";

/** One strip folded in half right sides together, sewn, turned; the seam lies on the right edge. */
function plan({ outer, choices }: SectionInput): SectionPlan {
  const edge = {
    from: "right",
    mm: allowanceEdge(choices.seamAllowance ?? TRADE.seamAllowance, outer, choices),
  } as const;
  return {
    strips: [
      {
        ply: outer,
        levels: [1, 0, 3, 2],
        firstFold: "right",
        start: edge,
        end: edge,
        wraps: [[], [], []],
        ...skivedEnds(outer, choices),
        face: 2,
      },
    ],
    slabs: [],
    settles: true,
  };
}

export const tube: Construction = {
  ...PLAIN,
  id: "tube",
  heeds: () => ["crease", "seamAllowance", "turnedThickness"],
  turnedEdge: () => ({ choice: "seamAllowance", usual: TRADE.seamAllowance }),
  pulledThrough: true,
  mayLieOnBias: true,
  // Its ends suffer in turning (common practice, no source).
  lengthSpare: 0.07,
  rule: () => "tube",
  layers: () => 2,
  thickestLayer: 1.2,
  plan,
  rows: (choices, fromEdge) => [
    { kind: "construction", from: "right", mm: choices.seamAllowance ?? TRADE.seamAllowance },
    ...bothEdges(fromEdge),
  ],
  steps: (facts) => [
    phrase("tube-sew", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    phrase("tube-turn", {
      width: facts.finishedWidth,
    }),
    topstitchStep(facts, "topstitch-both"),
  ],
  cautions: ["tube-ends"],
};
