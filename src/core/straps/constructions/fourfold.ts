import { phrase } from "../../words/phrase.ts";
import type { Ply, SectionPlan } from "../section/foldPlan.ts";
import { bothEdges, type Construction, edgeToSecondFold, PLAIN, type SectionInput } from "./construction.ts";
import { creaseAndTape, topstitchStep } from "./stepPhrases.ts";

/** Both edges to the centre, then in half. The centre fold wraps both flaps, so its inside radius is one layer. */
export function fourfoldPlan({ outer, clearance, choices }: SectionInput): SectionPlan {
  const { thickness, neutral, leastRadius } = outer;
  const radius = Math.max(thickness, leastRadius);
  const short =
    choices.edgeGap === undefined
      ? thickness + clearance * radius
      : radius + thickness + choices.edgeGap - (Math.PI / 2) * (radius + neutral * thickness);
  const edge = { from: "right", mm: short } as const;
  return {
    strips: [{ ply: outer, levels: [2, 3, 0, 1], firstFold: "left", start: edge, end: edge, face: 1 }],
    slabs: [],
    settles: false,
  };
}

/** Raw edges that stop where the bend of the centre crease starts. */
function leastEdgeGap({ thickness, neutral, leastRadius }: Ply): number {
  const radius = Math.max(thickness, leastRadius);
  return (Math.PI / 2) * (radius + neutral * thickness) - radius;
}

export const fourfold: Construction = {
  ...PLAIN,
  id: "fourfold",
  heeds: ({ edgeGap }) => (edgeGap === undefined ? ["crease", "clearance", "edgeGap"] : ["crease", "edgeGap"]),
  rule: () => "fourfold",
  layers: () => 4,
  // Halfway between an edge crushed into the bend and one that stops where it starts: the trade's eighth at 1.0 mm.
  defaultClearance: 0.5,
  leastEdgeGap,
  testedAs: "fourfold",
  thickestLayer: 2,
  tapeRuns: () => 2,
  plan: fourfoldPlan,
  setback: edgeToSecondFold,
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    phrase(facts.outerKind === "cork" ? "fourfold-centre-drawn" : "fourfold-centre"),
    ...creaseAndTape(facts, "fourfold-edges", {
      setback: facts.setback,
    }),
    phrase("fourfold-halve", {
      width: facts.finishedWidth,
    }),
    topstitchStep(facts, "fourfold-topstitch"),
  ],
};
