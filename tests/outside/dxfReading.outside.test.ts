// What our reader takes from a DXF, held against a reader that we did not write (dxf-parser, MIT) on the same file: our
// own export of random panels and lines, and one of entities written by hand after the reference.
import DxfParser, { type IArcEntity, type ICircleEntity, type ILineEntity, type IPolylineEntity } from "dxf-parser";
import fc from "fast-check";
import { expect, test } from "vitest";
import { drawLine } from "../../src/core/drawing/list/items.ts";
import { ringBox } from "../../src/core/geometry/box.ts";
import { contourLength } from "../../src/core/geometry/contourEdgeLengths.ts";
import { flattenCurve } from "../../src/core/patterns/measureCurve.ts";
import { dxfText } from "../../src/export/dxf/dxfText.ts";
import { readDxf } from "../../src/reading/dxf/readDxf.ts";

/** Length of every line as the other reader has it, by layer, shortest first. mm. */
function byTheOther(text: string): Map<string, number[]> {
  const lengths = new Map<string, number[]>();
  for (const entity of new DxfParser().parseSync(text)!.entities) {
    const length = lengthOf(entity.type, entity as never);
    if (length !== null) lengths.set(entity.layer, [...(lengths.get(entity.layer) ?? []), length]);
  }
  return sorted(lengths);
}

function lengthOf(type: string, entity: ILineEntity & IPolylineEntity & IArcEntity & ICircleEntity): number | null {
  if (type === "CIRCLE") return 2 * Math.PI * entity.radius;
  if (type === "ARC") {
    const sweep = (entity.endAngle - entity.startAngle + 2 * Math.PI) % (2 * Math.PI);
    return entity.radius * sweep;
  }
  if (type !== "LINE" && type !== "POLYLINE" && type !== "LWPOLYLINE") return null;
  const vertices = entity.vertices.flatMap(({ x, y, ...more }) => [
    x,
    y,
    "bulge" in more ? Number(more.bulge) || 0 : 0,
  ]);
  return contourLength({ vertices: Float64Array.from(vertices), closed: entity.shape === true });
}

/** The same as we have it; chords within a thousandth of a millimetre. */
function byOurs(text: string): Map<string, number[]> {
  const lengths = new Map<string, number[]>();
  for (const { layer, curve } of readDxf(text).lines) {
    const points = flattenCurve(curve, 0.0001);
    let length = 0;
    for (let i = 2; i + 1 < points.length; i += 2)
      length += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
    if (curve.closed) length += Math.hypot(points.at(-2)! - points[0]!, points.at(-1)! - points[1]!);
    lengths.set(layer, [...(lengths.get(layer) ?? []), length]);
  }
  return sorted(lengths);
}

function sorted(lengths: Map<string, number[]>): Map<string, number[]> {
  return new Map(
    [...lengths].sort(([a], [b]) => (a < b ? -1 : 1)).map(([layer, all]) => [layer, all.sort((a, b) => a - b)]),
  );
}

function expectAlike(text: string): void {
  const [ours, theirs] = [byOurs(text), byTheOther(text)];
  expect([...ours.keys()]).toEqual([...theirs.keys()]);
  for (const [layer, lengths] of theirs) {
    expect(ours.get(layer), layer).toHaveLength(lengths.length);
    for (const [i, length] of lengths.entries()) expect(ours.get(layer)![i]! / length, layer).toBeCloseTo(1, 3);
  }
}

test("every line of our own DXF is there for both readers, layer by layer and as long", () => {
  const vertex = fc.tuple(
    fc.integer({ min: 0, max: 900 }),
    fc.integer({ min: 0, max: 900 }),
    fc.constantFrom(0, 0, 0.3, -0.6, 1),
  );
  const contour = fc
    .record({
      corners: fc.uniqueArray(vertex, { minLength: 3, maxLength: 9, selector: ([x, y]) => `${x} ${y}` }),
      closed: fc.boolean(),
    })
    .map(({ corners, closed }) => ({ vertices: Float64Array.from(corners.flat()), closed }));
  const role = fc.constantFrom("cut", "stitch", "fold", "mark");
  fc.assert(
    fc.property(fc.array(fc.tuple(role, contour), { minLength: 1, maxLength: 12 }), (lines) => {
      const items = lines.map(([each, line]) => drawLine(each as "cut", line));
      const box = ringBox(
        Float64Array.from(lines.flatMap(([, { vertices }]) => [...vertices].filter((_, i) => i % 3 !== 2))),
      );
      expectAlike(dxfText({ box, items }));
    }),
    { numRuns: 60 },
  );
});

// Source: DXF reference, ENTITIES: LINE, ARC (counter-clockwise, degrees), CIRCLE, LWPOLYLINE (bulge in group 42).
test("lines, arcs, circles and light polylines as the reference writes them", () => {
  const entities = [
    ["LINE", 8, "cut", 10, 0, 20, 0, 11, 30, 21, 40],
    ["ARC", 8, "cut", 10, 50, 20, 50, 40, 20, 50, 350, 51, 80],
    ["CIRCLE", 8, "holes", 10, 5, 20, 5, 40, 2.5],
    ["LWPOLYLINE", 8, "seam", 90, 3, 70, 1, 10, 0, 20, 0, 42, 0.5, 10, 60, 20, 0, 10, 60, 20, 30],
  ].map((entity) => [0, ...entity].join("\n"));
  const head = ["0", "SECTION", "2", "HEADER", "9", "$INSUNITS", "70", "4", "0", "ENDSEC"];
  expectAlike([...head, "0", "SECTION", "2", "ENTITIES", ...entities, "0", "ENDSEC", "0", "EOF", ""].join("\n"));
});
