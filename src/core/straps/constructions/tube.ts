import {
  allowanceEdge,
  bothEdges,
  type Construction,
  noSetback,
  type SectionInput,
  TRADE,
} from "../construction.ts";
import type { SectionPlan } from "../foldPlan.ts";
import { phrase } from "../phrase.ts";
import { cutStep, interfaceStep, topstitchStep } from "../stepPhrases.ts";

/** One strip folded in half right sides together, sewn, turned; the seam lies on the right edge. */
function plan({ outer, choices }: SectionInput): SectionPlan {
  const edge = {
    from: "right",
    mm: allowanceEdge(choices.seamAllowance ?? TRADE.seamAllowance, outer),
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
        face: 2,
      },
    ],
    slabs: [],
    settles: true,
  };
}

export const tube: Construction = {
  id: "tube",
  title: "Turned tube (2 layers, 4 at the seam)",
  rule: "2 × width + 2 × seam allowance",
  layers: () => 2,
  thickestLayer: 1.2,
  needs: [],
  allows: [],
  visibleEdges: () => 0,
  tapeRuns: 0,
  plan,
  trim: () => 0,
  setback: noSetback,
  rows: (choices, fromEdge) => [
    { kind: "construction", from: "right", mm: choices.seamAllowance ?? TRADE.seamAllowance },
    ...bothEdges(fromEdge),
  ],
  steps: (facts) => [
    cutStep(facts),
    ...interfaceStep(facts),
    phrase("Fold in half lengthwise, right sides together, and sew {allowance} from the raw edges.", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    phrase(
      "Turn right side out and press or finger-press with the seam on one edge; the tube should measure {width}.",
      {
        width: facts.finishedWidth,
      },
    ),
    topstitchStep(facts, "Topstitch both edges"),
  ],
  cautions: ["Sew a narrow tube some 7 % longer than needed and trim it: the ends suffer in turning."],
};
