import type { Contour } from "../../geometry/contour.ts";
import { edgeRun, runLength } from "../../panels/edgeRun.ts";
import type { Measure, MeasureTerm } from "../../panels/measure.ts";
import type { EdgeRef, Notch, Panel } from "../../panels/panel.ts";
import type { NamedEdge } from "../../panels/shapes/shapeRecord.ts";

/**
 * A panel whose outline the file gives clockwise and which is kept the other way round: what names edges, corners and
 * places along edges as the file does, put in terms of the kept outline.
 */
export function turnedPanel(panel: Panel): Panel {
  const { shape } = panel;
  if (shape.kind !== "outline") return panel;
  const outline = { contour: shape.contour, edges: shape.edges ?? [] };
  const total = shape.contour.vertices.length / 3;
  const edge = (ref: EdgeRef): EdgeRef => (typeof ref === "number" ? total - 1 - ref : ref);
  return {
    ...panel,
    foldEdge: panel.foldEdge === null ? null : edge(panel.foldEdge),
    notches: panel.notches.map((notch) => turnedNotch({ ...notch, edge: edge(notch.edge) }, outline)),
    ...(panel.edges && { edges: panel.edges.map((wish) => ({ ...wish, edge: edge(wish.edge) })) }),
    ...(panel.corners && {
      corners: panel.corners.map((wish) => ({ ...wish, corner: turnedCorner(wish.corner, outline.edges, total) })),
    }),
  };
}

/** Corner i is met again as corner −i; an edge's first corner is its last one now. */
function turnedCorner(corner: EdgeRef, edges: readonly NamedEdge[], total: number): EdgeRef {
  if (typeof corner === "number") return (total - corner) % total;
  const i = edges.findIndex(({ name }) => name === corner);
  return i < 0 ? corner : edges[(i + 1) % edges.length]!.start;
}

function turnedNotch(
  notch: Notch,
  outline: { readonly contour: Contour; readonly edges: readonly NamedEdge[] },
): Notch {
  const { at } = notch;
  if (typeof at === "object" && "share" in at) return { ...notch, at: { share: 1 - at.share } };
  const run = edgeRun(outline, notch.edge);
  return run === null ? notch : { ...notch, at: lessFrom(runLength(outline.contour, run), at) };
}

function lessFrom(whole: number, measure: Measure): Measure {
  if (typeof measure === "number") return whole - measure;
  const back = (term: MeasureTerm): MeasureTerm =>
    typeof term === "number" ? -term : { ...term, times: -term.times };
  return [whole, ...measure.map(back)];
}
