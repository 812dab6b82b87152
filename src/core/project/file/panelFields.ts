import { z } from "zod";
import { contourEdges } from "../../geometry/contourArcs.ts";
import { shapeContour } from "../../geometry/shape.ts";
import type { Notch, Panel } from "../../panels/panel.ts";
import type { LengthUnit } from "../../units/length.ts";
import {
  countField,
  group,
  type IssueSink,
  idField,
  lengthField,
  list,
  named,
  nameField,
  report,
} from "./fields.ts";
import { grainField } from "./materialFields.ts";
import { givenShapeField } from "./shapeFields.ts";

const LONG = { minMm: 0, maxMm: 100_000 };
/** Half an inch or so is usual; a strip wider than this is not a seam allowance. */
const ALLOWANCE = { minMm: 0, maxMm: 200 };

function notchField(unit: LengthUnit) {
  const notch = group({ edge: countField(0, 2000), at: lengthField(unit, LONG) });
  return named("notch", "A mark on an edge, measured from the edge's start.", notch);
}

/** A panel as it stands in a file. */
export function panelField(unit: LengthUnit): z.ZodType<Panel> {
  return named(
    "panel",
    "A flat part of the bag, its shape on the stitch line.",
    group({
      id: idField(),
      name: nameField().optional(),
      material: idField(),
      count: countField(0, 1000).default(1),
      mirrored: countField(0, 1000).default(0),
      shape: givenShapeField(unit),
      seamAllowance: lengthField(unit, ALLOWANCE).default(0),
      fold: countField(0, 2000).optional(),
      grain: grainField().default("lengthwise"),
      notches: list(notchField(unit), 0, 200).default([]),
      interfacing: group({ material: idField(), cut: z.enum(["full", "net"]).default("full") }).optional(),
    }),
  ).transform((file, context): Panel => {
    const { material, mirrored, fold, interfacing, name, notches, ...same } = file;
    const { shape, isTurned } = file.shape;
    const edges = contourEdges(shapeContour(shape));
    // An outline given clockwise is kept the other way round, and its edges and their starts with it.
    const kept = (edge: number): number => (isTurned ? edges.length - 1 - edge : edge);
    checkEdges(file, edges, kept, context);
    const panel: Panel = {
      ...same,
      shape,
      notches: notches.map(({ edge, at }) => {
        const line = edges[kept(edge)];
        return { edge: kept(edge), at: isTurned && line ? edgeLength(line) - at : at };
      }),
      name: name ?? file.id,
      materialId: material,
      mirroredCount: mirrored,
      foldEdge: fold === undefined ? null : kept(fold),
      interfacing: interfacing ? { materialId: interfacing.material, cut: interfacing.cut } : null,
    };
    if (panel.count + panel.mirroredCount === 0)
      report(context, { code: "count-out-of-range", count: 0, min: 1, max: 1000 }, ["count"]);
    return panel;
  });
}

/** What the file says of edges, told by the numbers it gives them; `kept` is an edge's number in the kept outline. */
function checkEdges(
  { notches, fold }: { readonly notches: readonly Notch[]; readonly fold?: number | undefined },
  edges: readonly Edge[],
  kept: (edge: number) => number,
  sink: IssueSink,
): void {
  for (const [i, { edge, at }] of notches.entries()) {
    const line = edges[kept(edge)];
    const edgeMm = line === undefined ? 0 : edgeLength(line);
    if (line === undefined) report(sink, { code: "no-such-edge", edge, edges: edges.length }, ["notches", i]);
    else if (at > edgeMm + 1e-9) report(sink, { code: "notch-off-edge", atMm: at, edgeMm }, ["notches", i, "at"]);
  }
  if (fold !== undefined) checkFold(fold, edges[kept(fold)], edges, sink);
}

type Edge = ReturnType<typeof contourEdges>[number];

/** Length along an edge, arc or straight, mm: sweep 4 atan b, radius chord (1 + b²) / 4b. */
function edgeLength({ x0, y0, x1, y1, bulge }: Edge): number {
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const b = Math.abs(bulge);
  return b === 0 ? chord : (Math.atan(b) * chord * (1 + b * b)) / b;
}

function checkFold(fold: number, line: Edge | undefined, edges: readonly Edge[], sink: IssueSink): void {
  if (line === undefined) {
    report(sink, { code: "no-such-edge", edge: fold, edges: edges.length }, ["fold"]);
    return;
  }
  const side = (x: number, y: number): number =>
    (line.x1 - line.x0) * (y - line.y0) - (line.y1 - line.y0) * (x - line.x0);
  const beyond = edges.some(({ x0, y0 }) => side(x0, y0) < -1e-6);
  if (line.bulge !== 0 || beyond) report(sink, { code: "fold-edge-not-straight", edge: fold }, ["fold"]);
}
