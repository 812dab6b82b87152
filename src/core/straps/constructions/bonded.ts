import { phrase } from "../../words/phrase.ts";
import type { SectionPlan } from "../section/foldPlan.ts";
import type { FoldChoices } from "../wish/strapWish.ts";
import { bothEdges, type Construction, PLAIN, type SectionInput } from "./construction.ts";
import { cutStep, topstitchStep } from "./stepPhrases.ts";

/** Flat layers bonded on each other; the last one is the facing where there is one. */
export function bondedPlan({ outer, facing, ownFacing, choices }: SectionInput): SectionPlan {
  const layers = choices.layers ?? 2;
  return {
    strips: Array.from({ length: layers }, (_, i) => ({
      ply: ownFacing && i > 0 && i === layers - 1 ? facing : outer,
      levels: [i],
      firstFold: "right" as const,
      start: { from: "left" as const, mm: 0 },
      end: { from: "right" as const, mm: 0 },
      face: 0,
    })),
    slabs: [],
    settles: false,
  };
}

const layersOf = (choices: FoldChoices): number => choices.layers ?? 2;

export const bonded: Construction = {
  ...PLAIN,
  id: "bonded",
  layers: layersOf,
  layerChoices: [1, 2, 3],
  thickestLayer: 6,
  roles: { facing: "optional" },
  visibleEdges: () => 2,
  plan: bondedPlan,
  trim: (choices) => choices.trim ?? 0,
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    cutStep(facts),
    ...(layersOf(facts.choices) > 1 ? [phrase("bonded-bond")] : []),
    topstitchStep(facts, layersOf(facts.choices) > 1 ? "bonded-stitch-layers" : "bonded-stitch"),
    ...((facts.choices.trim ?? 0) > 0 ? [phrase("bonded-trim", { width: facts.finishedWidth })] : []),
    phrase("bonded-finish"),
  ],
  cautions: ["raw-edge-frays", "solvents"],
};
