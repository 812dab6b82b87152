import type { SectionPlan } from "../section/foldPlan.ts";
import { phrase } from "../words/phrase.ts";
import { bothEdges, type Construction, edgeToSecondFold, type SectionInput } from "./construction.ts";
import { creaseAndTape, cutStep, interfaceStep, topstitchStep } from "./stepPhrases.ts";

/** Halfway between an edge crushed into the bend and one that stops where it starts: the trade's eighth at 1.0 mm. */
const CLEARANCE = 0.5;

/** Both edges to the centre, then in half. The centre fold wraps both flaps, so its inside radius is one layer. */
export function fourfoldPlan({ outer, clearance, choices }: SectionInput): SectionPlan {
  const { thickness, neutral, leastRadius } = outer;
  const radius = Math.max(thickness, leastRadius);
  const short =
    choices.edgeGap === undefined
      ? thickness + (clearance ?? CLEARANCE) * radius
      : radius + thickness + choices.edgeGap - (Math.PI / 2) * (radius + neutral * thickness);
  const edge = { from: "right", mm: short } as const;
  return {
    strips: [{ ply: outer, levels: [2, 3, 0, 1], firstFold: "left", start: edge, end: edge, face: 1 }],
    slabs: [],
    settles: false,
  };
}

export const fourfold: Construction = {
  id: "fourfold",
  layers: () => 4,
  thickestLayer: 2,
  needs: [],
  allows: [],
  visibleEdges: () => 0,
  tapeRuns: 2,
  plan: fourfoldPlan,
  trim: () => 0,
  setback: edgeToSecondFold,
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    cutStep(facts),
    ...interfaceStep(facts),
    phrase("fourfold-centre"),
    ...creaseAndTape(facts, "fourfold-edges", {
      setback: facts.setback,
    }),
    phrase("fourfold-halve", {
      width: facts.finishedWidth,
    }),
    topstitchStep(facts, "fourfold-topstitch"),
  ],
  cautions: [],
};
