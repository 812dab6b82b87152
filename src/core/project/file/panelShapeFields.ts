import { z } from "zod";
import type { Measure } from "../../panels/measure.ts";
import type { PanelShape } from "../../panels/panel.ts";
import { SHAPE_IDS, SHAPES, type ShapeId } from "../../panels/shapes/registry.ts";
import type { NamedEdge, ShapeRecord } from "../../panels/shapes/shapeRecord.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { countField, expected, group, type IssueSink, list, named, report, text } from "./fields.ts";
import { measureField } from "./measureFields.ts";
import { outlineKeys, turnedOutline } from "./shapeFields.ts";

/** A panel's shape as it is kept, and whether its outline was given the other way round: its edges count backwards. */
export interface GivenPanelShape {
  readonly shape: PanelShape;
  readonly isTurned: boolean;
}

const EDGE_NAME = /^(?!\d+$)/u;

/** A shape made from its measures or an outline; outlines come out counter-clockwise and simple. */
export function panelShapeField(unit: LengthUnit): z.ZodType<GivenPanelShape> {
  const edge = group({ name: text(60), start: countField(0, 2000) });
  const outline = group({ ...outlineKeys(unit), edges: list(edge, 1, 2000).optional() }).transform(
    ({ points, edges }, context): GivenPanelShape => {
      const given = turnedOutline(points, context);
      const total = given.contour.vertices.length / 3;
      if (edges !== undefined) checkStarts(edges, total, context);
      const names = edges && given.isTurned ? turnedNames(edges, total) : edges;
      const shape: PanelShape = { kind: "outline", contour: given.contour, ...(names ? { edges: names } : {}) };
      return { shape, isTurned: given.isTurned };
    },
  );
  const measured = SHAPE_IDS.map((id) => measuredField(id, unit));
  return named(
    "panelShape",
    "A shape made from its measures, or an outline of corners and arcs.",
    z.discriminatedUnion("kind", [outline, ...measured], expected("group")),
  );
}

/** A shape by its dimensions: those with a usual one may be left out. */
function measuredField(id: ShapeId, unit: LengthUnit) {
  const record: ShapeRecord = SHAPES[id];
  const dimensions = record.dimensions.map(({ id: key, least, most, otherwise, isCount }) => {
    const field = isCount ? countField(least, most) : measureField(unit, { minMm: least, maxMm: most });
    return [key, otherwise === undefined ? field : field.optional()] as const;
  });
  return group({ kind: z.literal(id), ...Object.fromEntries(dimensions) }).transform((file): GivenPanelShape => {
    const sizes = Object.entries(file).filter(([key, size]) => key !== "kind" && size !== undefined);
    const shape: PanelShape = {
      kind: "measured",
      shape: id,
      sizes: Object.fromEntries(sizes) as unknown as Readonly<Record<string, Measure>>,
    };
    return { shape, isTurned: false };
  });
}

/** Names of edges stand in order and each at another corner, none of them a number. */
function checkStarts(edges: readonly NamedEdge[], points: number, sink: IssueSink): void {
  for (const [i, { name, start }] of edges.entries()) {
    const before = i === 0 ? -1 : edges[i - 1]!.start;
    const isRepeated = edges.some((other, k) => k < i && other.name === name);
    if (start <= before || start >= points || isRepeated || !EDGE_NAME.test(name))
      report(sink, { code: "edge-start-unusable", start, points }, ["edges", i]);
  }
}

/** An edge that began at corner i and ran to j runs from −j to −i once the outline is walked the other way. */
function turnedNames(edges: readonly NamedEdge[], total: number): NamedEdge[] {
  return edges
    .map(({ name }, i) => ({ name, start: (total - edges[(i + 1) % edges.length]!.start) % total }))
    .sort((a, b) => a.start - b.start);
}
