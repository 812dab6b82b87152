import type { Ply, SectionPlan, StripPlan } from "../section/foldPlan.ts";
import { skivedEnds, turnedThickness } from "../section/skiving.ts";
import type { FoldChoices } from "../wish/strapWish.ts";
import {
  bothEdges,
  type Construction,
  halfMiddleGap,
  insideBoth,
  PLAIN,
  type SectionInput,
  TRADE,
} from "./construction.ts";
import { creaseAndTape, held, topstitchStep } from "./stepPhrases.ts";

function turnedStrip(
  ply: Ply,
  levels: [flap: number, main: number],
  inset: number,
  clearance: number,
  choices: FoldChoices,
): StripPlan {
  const hold = clearance * turnedThickness(ply, choices);
  return {
    ply,
    levels: [levels[0], levels[1], levels[0]],
    firstFold: "left",
    start: { from: "middle", mm: -hold },
    end: { from: "middle", mm: hold },
    outsides: insideBoth(inset),
    ...skivedEnds(ply, choices),
    face: 1,
  };
}

/** Each strip has its edges turned to its middle; the facing is narrower, so the outer shows on both its sides. */
function plan({ outer, facing, clearance, choices }: SectionInput): SectionPlan {
  return {
    strips: [
      turnedStrip(outer, [1, 0], 0, clearance, choices),
      turnedStrip(facing, [2, 3], choices.reveal ?? TRADE.reveal, clearance, choices),
    ],
    slabs: [],
    settles: false,
  };
}

export const twoLayer: Construction = {
  ...PLAIN,
  id: "two-layer",
  heeds: () => ["crease", "clearance", "reveal", "turnedThickness"],
  rule: () => "two-layer",
  layers: () => 4,
  defaultClearance: 0.5,
  interfaced: "facing",
  thickestLayer: 2,
  roles: { facing: "optional" },
  tapeRuns: () => 6,
  plan,
  setback: halfMiddleGap,
  rows: (choices, fromEdge) => bothEdges((choices.reveal ?? TRADE.reveal) + fromEdge),
  steps: (facts) => [
    ...creaseAndTape(facts, "two-layer-edges"),
    held(facts, "two-layer-lay", { reveal: facts.choices.reveal ?? TRADE.reveal }),
    topstitchStep(facts, "two-layer-topstitch"),
  ],
};
