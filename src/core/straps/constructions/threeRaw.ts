import { phrase } from "../../words/phrase.ts";
import type { Ply, SectionPlan } from "../section/foldPlan.ts";
import { type Construction, PLAIN, type SectionInput } from "./construction.ts";
import { creaseAndTape, edgeBeforeFolding } from "./stepPhrases.ts";

/**
 * How far the visible edge stays from the opposite fold when the strip is folded in equal thirds: its first edge
 * laid on the line two thirds across, the rest wrapped round it. 3.36 T at K 0.5 with hard creases.
 */
function thirdsSetback(ply: Ply, clearance: number): number {
  const { thickness, neutral, leastRadius } = ply;
  const outerRadius = Math.max(thickness / 2, leastRadius);
  const firstAxis = leastRadius + thickness;
  const secondAxis = outerRadius + thickness;
  const firstBend = Math.PI * (leastRadius + neutral * thickness);
  const secondBend = Math.PI * (outerRadius + neutral * thickness);
  const edgeShort = thickness + clearance * outerRadius;
  return firstAxis - 2 * secondAxis + secondBend + 2 * edgeShort - firstBend / 2;
}

function plan({ outer, clearance, choices }: SectionInput): SectionPlan {
  const short = outer.thickness + clearance * Math.max(outer.thickness / 2, outer.leastRadius);
  return {
    strips: [
      {
        ply: outer,
        levels: [1, 0, 2],
        firstFold: "left",
        start: { from: "right", mm: short },
        end: { from: "left", mm: choices.setback ?? thirdsSetback(outer, clearance) },
        face: 1,
      },
    ],
    slabs: [],
    settles: false,
  };
}

export const threeRaw: Construction = {
  ...PLAIN,
  id: "three-raw",
  heeds: () => ["crease", "clearance", "setback"],
  rule: () => "three",
  layers: () => 3,
  // The first raw edge is laid on a drawn line and the wrap starts at it, so it stops where the bend starts.
  defaultClearance: 1,
  testedAs: "three-raw",
  thickestLayer: 2.5,
  visibleEdges: () => 1,
  tapeRuns: () => 2,
  plan,
  setback: (section) => section.strips[0]!.plan.end.mm,
  rows: (_, fromEdge, setback) => [
    { kind: "topstitch", from: "left", mm: setback + fromEdge },
    { kind: "topstitch", from: "right", mm: fromEdge },
  ],
  steps: (facts) => [
    ...edgeBeforeFolding(facts),
    ...creaseAndTape(facts, "three-first"),
    phrase("three-wrap", {
      width: facts.finishedWidth,
      setback: facts.setback,
    }),
    phrase("three-topstitch", {
      topstitch: facts.topstitch,
    }),
  ],
  cautions: ["raw-edge-frays"],
};
