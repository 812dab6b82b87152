import { phrase } from "../../words/phrase.ts";
import type { EdgePlan, SectionPlan } from "../section/foldPlan.ts";
import { skivedEnds } from "../section/skiving.ts";
import { allowanceEdge, bothEdges, type Construction, PLAIN, type SectionInput, TRADE } from "./construction.ts";
import { creaseAndTape, topstitchStep } from "./stepPhrases.ts";

/** A single cover: once round the webbing, its edges turned under and butted along the middle of the back. */
function coverPlan({ outer, webbingThickness, choices }: SectionInput): SectionPlan {
  const { thickness } = outer;
  const turned = allowanceEdge(choices.turn ?? TRADE.coverTurn, outer, choices);
  return {
    strips: [
      {
        ply: outer,
        levels: [2, 3, 0, 3, 2],
        firstFold: "right",
        start: { from: "middle", mm: -turned },
        end: { from: "middle", mm: turned },
        outsides: [
          { from: "middle", mm: 0 },
          { from: "left", mm: 0 },
          { from: "right", mm: 0 },
          { from: "middle", mm: 0 },
        ],
        wraps: [[], [1], [1], []],
        ...skivedEnds(outer, choices),
        face: 2,
      },
    ],
    slabs: [
      {
        role: "webbing",
        level: 1,
        thickness: webbingThickness,
        insetLeft: thickness,
        insetRight: thickness,
        square: true,
      },
    ],
    settles: true,
  };
}

/**
 * A fourfold sleeve wrapped round a webbing: both raw edges go round the webbing's edge and meet in its middle, so
 * the outer ply and the two flaps each pass its thickness once. The open folds lie flush with its other edge.
 */
function sleevePlan({ outer, webbingThickness, clearance }: SectionInput): SectionPlan {
  const { thickness } = outer;
  const rise = Math.max(0, webbingThickness / 2 - clearance * thickness);
  const edge = (up: boolean): EdgePlan => ({ from: "right", mm: thickness, corner: { rise, up } });
  return {
    strips: [
      {
        ply: outer,
        levels: [3, 4, 0, 1],
        firstFold: "left",
        start: edge(false),
        end: edge(true),
        face: 1,
      },
    ],
    slabs: [
      {
        role: "webbing",
        level: 2,
        thickness: webbingThickness,
        insetLeft: 0,
        insetRight: 2 * thickness,
        square: true,
      },
    ],
    settles: false,
  };
}

export const webbingSleeve: Construction = {
  ...PLAIN,
  id: "webbing-sleeve",
  heeds: (choices) =>
    choices.layers === undefined
      ? ["layers", "crease", "clearance"]
      : ["layers", "crease", "turn", "turnedThickness"],
  turnedEdge: (choices) => (choices.layers === undefined ? null : { choice: "turn", usual: TRADE.coverTurn }),
  rule: (choices) => (choices.layers === undefined ? "webbing-sleeve" : "webbing-cover"),
  layers: (choices) => choices.layers ?? 4,
  layerChoices: [1],
  defaultClearance: 0.5,
  widthOnWebbing: (webbing, layer) => webbing + 2 * layer,
  thickestLayer: 1.2,
  roles: { webbing: "needed" },
  tapeRuns: () => 2,
  plan: (input) => (input.choices.layers === undefined ? sleevePlan(input) : coverPlan(input)),
  setback: (section) => {
    const { corner } = section.strips[0]!.plan.end;
    return corner ? Math.max(0, section.slabs[0]!.plan.thickness / 2 - corner.rise) : 0;
  },
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    ...(facts.choices.layers === undefined
      ? [...creaseAndTape(facts, "sleeve-edges"), phrase("sleeve-wrap"), topstitchStep(facts, "sleeve-topstitch")]
      : [
          ...creaseAndTape(facts, "cover-edges", {
            turn: facts.choices.turn ?? TRADE.coverTurn,
          }),
          phrase("cover-wrap"),
          topstitchStep(facts, "cover-topstitch"),
        ]),
  ],
  cautions: ["webbing-ends"],
};
