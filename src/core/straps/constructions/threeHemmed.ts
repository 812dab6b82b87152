import { phrase } from "../../words/phrase.ts";
import type { SectionPlan, SlabPlan } from "../section/foldPlan.ts";
import { skivedEnds } from "../section/skiving.ts";
import { allowanceEdge, bothEdges, type Construction, PLAIN, type SectionInput, TRADE } from "./construction.ts";
import { creaseAndTape, topstitchStep } from "./stepPhrases.ts";

/** The hidden edge stops short by what the hem takes, so the strip stays three widths of cloth. */
function plan({ outer, clearance, padding, choices }: SectionInput): SectionPlan {
  const { thickness, leastRadius } = outer;
  const hem = choices.hem ?? TRADE.hem;
  const setback = choices.setback ?? TRADE.hemSetback;
  const wrapped = (padding ?? 0) + thickness;
  const radius = Math.max(wrapped / 2, leastRadius);
  const slabs: SlabPlan[] = [];
  if (padding !== null) {
    const inset = TRADE.paddingShy / 2 + thickness;
    slabs.push({
      role: "padding",
      level: 1,
      thickness: padding,
      insetLeft: Math.max(inset, padding / 2, leastRadius),
      insetRight: inset,
      square: false,
    });
  }
  return {
    strips: [
      {
        ply: outer,
        levels: [2, 0, 4, 3],
        firstFold: "left",
        start: {
          from: "right",
          mm: thickness + clearance * radius + Math.max(0, hem - setback),
        },
        end: { from: "left", mm: setback + allowanceEdge(hem, outer, choices) },
        outsides: [
          { from: "left", mm: 0 },
          { from: "right", mm: 0 },
          { from: "left", mm: setback },
        ],
        wraps: [[1], [1, 2], []],
        ...skivedEnds(outer, choices, { start: false, end: true }),
        face: 1,
      },
    ],
    slabs,
    settles: true,
  };
}

export const threeHemmed: Construction = {
  ...PLAIN,
  id: "three-hemmed",
  heeds: () => ["crease", "clearance", "hem", "setback", "paddingPressed", "turnedThickness"],
  turnedEdge: () => ({ choice: "hem", usual: TRADE.hem }),
  rule: () => "three",
  layers: () => 3,
  defaultClearance: 1,
  paddingShy: TRADE.paddingShy,
  heldEdge: "hem",
  thickestLayer: 1.5,
  roles: { padding: "optional" },
  tapeRuns: () => 2,
  plan,
  setback: (section) => section.strips[0]!.plan.outsides?.[2]?.mm ?? 0,
  rows: (_, fromEdge, setback) => [
    { kind: "topstitch", from: "left", mm: setback + fromEdge },
    bothEdges(fromEdge)[1]!,
  ],
  steps: (facts) => [
    ...creaseAndTape(facts, "hemmed-hem", {
      hem: facts.choices.hem ?? TRADE.hem,
    }),
    ...(facts.padded ? [phrase("hemmed-pad")] : []),
    phrase("hemmed-fold", {
      width: facts.finishedWidth,
    }),
    phrase("hemmed-setback", {
      setback: facts.setback,
    }),
    topstitchStep(facts, "hemmed-topstitch"),
  ],
  cautions: ["slow-hem"],
};
