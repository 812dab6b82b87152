import type { SectionPlan } from "../section/foldPlan.ts";
import { skivedEnds } from "../section/skiving.ts";
import {
  allowanceEdge,
  bothEdges,
  type Construction,
  insideBoth,
  PLAIN,
  type SectionInput,
  TRADE,
} from "./construction.ts";
import { creaseAndTape, held, topstitchStep } from "./stepPhrases.ts";

/** A strip with turned edges on one face of a webbing. */
function plan({ outer, webbingThickness, choices }: SectionInput): SectionPlan {
  const margin = choices.margin ?? TRADE.overlayMargin;
  const edge = margin + allowanceEdge(choices.turn ?? TRADE.overlayTurn, outer, choices);
  return {
    strips: [
      {
        ply: outer,
        levels: [1, 2, 1],
        firstFold: "left",
        start: { from: "left", mm: edge },
        end: { from: "right", mm: edge },
        outsides: insideBoth(margin),
        ...skivedEnds(outer, choices),
        face: 1,
      },
    ],
    slabs: [{ role: "webbing", level: 0, thickness: webbingThickness, insetLeft: 0, insetRight: 0, square: true }],
    settles: true,
  };
}

export const webbingOverlay: Construction = {
  ...PLAIN,
  id: "webbing-overlay",
  heeds: () => ["crease", "margin", "turn", "turnedThickness"],
  turnedEdge: () => ({ choice: "turn", usual: TRADE.overlayTurn }),
  rule: () => "webbing-overlay",
  layers: () => 1,
  thickestLayer: 1.5,
  roles: { webbing: "needed" },
  tapeRuns: () => 4,
  plan,
  rows: (choices, fromEdge) => bothEdges((choices.margin ?? TRADE.overlayMargin) + fromEdge),
  steps: (facts) => [
    ...creaseAndTape(facts, "overlay-edges", {
      turn: facts.choices.turn ?? TRADE.overlayTurn,
    }),
    held(facts, "overlay-lay", { margin: facts.choices.margin ?? TRADE.overlayMargin }),
    topstitchStep(facts, "overlay-topstitch"),
  ],
  cautions: ["webbing-ends"],
};
