import { bonded, bondedPlan } from "./bonded.ts";
import { bothEdges, type Construction, edgeToSecondFold, PLAIN } from "./construction.ts";
import { fourfold, fourfoldPlan } from "./fourfold.ts";

/** A short strap folded over a ring or connector: fourfold, or flat layers when the maker asks for 1 to 3. */
export const tab: Construction = {
  ...PLAIN,
  id: "tab",
  heeds: (choices) =>
    choices.layers === undefined ? ["layers", ...fourfold.heeds(choices)] : bonded.heeds(choices),
  rule: (choices) => (choices.layers === undefined ? "fourfold" : "bonded"),
  layers: (choices) => choices.layers ?? 4,
  layerChoices: [1, 2, 3],
  defaultClearance: fourfold.defaultClearance,
  testedAs: fourfold.testedAs,
  offered: false,
  overRing: true,
  thickestLayer: 2,
  visibleEdges: (choices) => (choices.layers === undefined ? 0 : 2),
  tapeRuns: (choices) => (choices.layers === undefined ? 2 : 0),
  plan: (input) => (input.choices.layers === undefined ? fourfoldPlan(input) : bondedPlan(input)),
  trim: (choices) => (choices.layers === undefined ? 0 : (choices.trim ?? 0)),
  setback: (section) =>
    section.strips.length === 1 && section.strips[0]!.plan.levels.length === 4 ? edgeToSecondFold(section) : 0,
  rows: (_, fromEdge) => bothEdges(fromEdge),
  steps: (facts) => (facts.choices.layers === undefined ? fourfold.steps(facts) : bonded.steps(facts)),
  cautions: ["tab-hump"],
};
