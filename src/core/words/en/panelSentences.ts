import type { PanelProblem } from "../../problems/panelProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { SayLength } from "../../units/sayLength.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string => (nearest === null ? "" : ` Did you mean ${quoted(nearest)}?`);
/** Edges are counted from 1 for people; in the file they have names, or numbers from 0. */
const edgeName = (edge: number | string): string =>
  typeof edge === "number" ? `Edge ${edge + 1} (in the file: ${edge})` : `Edge ${edge}`;

function fitting(leastMm: number | null, mostMm: number | null, say: SayLength): string {
  if (leastMm === null) return mostMm === null ? "Change a size" : `Give at most ${say(mostMm)}`;
  return mostMm === null ? `Give at least ${say(leastMm)}` : `Give ${say(leastMm)} to ${say(mostMm)}`;
}

/** Panels in English. */
export const panelSentences: SentenceTable<PanelProblem> = {
  "notch-off-edge": ({ atMm, edgeMm }, say) => ({
    what: `A notch ${say(atMm)} along its edge is off an edge ${say(edgeMm)} long.`,
    remedy: "Measure from the start of the edge, counter-clockwise.",
  }),
  "no-such-edge": ({ edge, edges }) => ({
    what: `There is no edge ${edge + 1} (in the file: ${edge}).`,
    remedy: `The outline has edges 1 to ${edges}; edge 1 starts at the first point, and is 0 in the file.`,
  }),
  "no-such-edge-name": ({ name, nearest, known }) => ({
    what: `This shape has no edge ${quoted(name)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Its edges have no names: give the number, 0 for the edge that starts at the first point."
        : `Its edges are ${listed(known)}.`,
  }),
  "fold-edge-not-straight": ({ edge }) => ({
    what: `${edgeName(edge)} cannot lie on the fold.`,
    remedy: "Choose a straight edge that leaves the whole piece on one side of it.",
  }),
  "size-does-not-fit": ({ sizeMm, leastMm, mostMm }, say) => ({
    what: `A size of ${say(sizeMm)} does not go with the other sizes of this shape.`,
    remedy: `${fitting(leastMm, mostMm, say)}, or change another size.`,
  }),
  "unknown-measure": ({ of, name, nearest, known }) => ({
    what:
      of === null
        ? `The bag has no measure ${quoted(name)}.${meant(nearest)}`
        : `There is nothing called ${quoted(name)} to measure on ${quoted(of)}.${meant(nearest)}`,
    remedy: known.length === 0 ? "Give a length instead." : `Follow one of ${listed(known)}, or give a length.`,
  }),
  "measures-in-circle": ({ names }) => ({
    what: `These sizes follow each other in a circle: ${listed(names)}.`,
    remedy: "Give one of them a length.",
  }),
  "edge-start-unusable": ({ start, points }) => ({
    what: `No edge can be named from corner ${start}.`,
    remedy: `Name edges in order, each from another corner, 0 to ${points - 1}.`,
  }),
  "allowance-eats-panel": ({ allowanceMm }, say) => ({
    what: `A seam allowance of ${say(allowanceMm)} inside the cut line leaves nothing of this panel.`,
    remedy: "Make the panel larger or the allowance smaller, or say that the stitch line is drawn.",
  }),
  "inset-eats-panel": ({ insetMm }, say) => ({
    what: `An inset of ${say(insetMm)} leaves nothing of this panel.`,
    remedy: "Give a smaller inset.",
  }),
  "unknown-panel": ({ id, nearest, known }) => ({
    what: `There is no panel ${quoted(id)}.${meant(nearest)}`,
    remedy: `The panels are ${listed(known)}.`,
  }),
};
