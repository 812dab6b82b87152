import { bothEdges, type Construction, type SectionInput } from "../construction.ts";
import type { EdgePlan, SectionPlan } from "../foldPlan.ts";
import { phrase } from "../phrase.ts";
import { creaseAndTape, cutStep, interfaceStep, topstitchStep } from "../stepPhrases.ts";

/**
 * A fourfold sleeve wrapped round a webbing: both raw edges go round the webbing's edge and meet in its middle, so
 * the outer ply and the two flaps each pass its thickness once. The open folds lie flush with its other edge.
 */
function plan({ outer, webbingThickness, clearance }: SectionInput): SectionPlan {
  const { thickness } = outer;
  const rise = Math.max(0, webbingThickness / 2 - (clearance ?? 0.5) * thickness);
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
  id: "webbing-sleeve",
  title: "Webbing in a cloth sleeve (4 layers of cloth and the webbing)",
  rule: "4 × webbing + 2 × its thickness",
  layers: () => 4,
  thickestLayer: 1.2,
  needs: ["webbing"],
  allows: ["webbing"],
  visibleEdges: () => 0,
  tapeRuns: 2,
  plan,
  trim: () => 0,
  setback: (section) =>
    Math.max(0, section.slabs[0]!.plan.thickness / 2 - (section.strips[0]!.plan.end.corner?.rise ?? 0)),
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => [
    cutStep(facts),
    ...interfaceStep(facts),
    ...creaseAndTape(facts, "Fold both long edges to the centre line; the raw edges must not overlap"),
    phrase(
      "Lay the webbing against the centre line, wrap the sleeve round it and clip; wrap a hand's length first to test the fit.",
    ),
    topstitchStep(facts, "Topstitch the open edge through the webbing first, then the folded one"),
  ],
  cautions: ["Seal cut ends of synthetic webbing so that they do not fray; molten webbing burns skin."],
};
