import { type Phrase, phrase } from "../../words/phrase.ts";
import type { SectionPlan } from "../section/foldPlan.ts";
import type { FoldChoices } from "../wish/strapWish.ts";
import { bothEdges, type Construction, PLAIN, type SectionInput, type StepFacts } from "./construction.ts";
import { edgeStep, tieOff, topstitchStep } from "./stepPhrases.ts";

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

/** What is trimmed afterwards still lies beside the stitches: they keep further from the edge as it is then. */
function stitchStep(facts: StepFacts): Phrase {
  const what = layersOf(facts.choices) > 1 ? "bonded-stitch-layers" : "bonded-stitch";
  const trim = facts.choices.trim ?? 0;
  if (trim === 0) return topstitchStep(facts, what);
  const lengths = { raw: facts.topstitch + trim, topstitch: facts.topstitch };
  return phrase([what, "from-the-edge-before-trimming", ...tieOff(facts)], lengths);
}

export const bonded: Construction = {
  ...PLAIN,
  id: "bonded",
  heeds: () => ["layers", "trim"],
  rule: () => "bonded",
  layers: layersOf,
  layerChoices: [1, 2, 3],
  thickestLayer: 6,
  roles: { facing: "optional" },
  visibleEdges: () => 2,
  plan: bondedPlan,
  trim: (choices) => choices.trim ?? 0,
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    ...(layersOf(facts.choices) > 1 ? [phrase("bonded-bond")] : []),
    stitchStep(facts),
    ...((facts.choices.trim ?? 0) > 0 ? [phrase("bonded-trim", { width: facts.finishedWidth })] : []),
    ...edgeStep(facts, "bonded-finish"),
  ],
  cautions: ["raw-edge-frays", "solvents"],
};
