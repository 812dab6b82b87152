import { expect, test } from "vitest";
import { curveArea, curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternDrawing } from "../../core/patterns/patternDrawing.ts";
import { ReadingEnds } from "../readingEnds.ts";
import { readDxf } from "./readDxf.ts";

/** Groups as `code value code value …`; values hold no blanks. */
const groups = (text: string): string => text.trim().split(/\s+/u).join("\n");
const section = (name: string, text: string): string =>
  `0\nSECTION\n2\n${name}\n${text === "" ? "" : `${groups(text)}\n`}0\nENDSEC\n`;
const MM = section("HEADER", "9 $INSUNITS 70 4");

function dxf(entities: string, others = MM): PatternDrawing {
  return readDxf(`${others}${section("ENTITIES", entities)}0\nEOF\n`);
}

/** Box of each line, area of closed ones, rounded to 1 nm. */
function boxes(drawing: PatternDrawing): number[][] {
  const round = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;
  return drawing.lines.map(({ curve }) => {
    const { minX, minY, maxX, maxY } = curveBox(curve);
    return [minX, minY, maxX, maxY, curve.closed ? Math.abs(curveArea(curve)) : 0].map(round);
  });
}

const SQUARE = "0 LWPOLYLINE 8 0 90 4 70 1 10 0 20 0 10 10 20 0 10 10 20 20 10 0 20 20";

test("lines, arcs, circles, ellipses and polylines with bulges lie where they are drawn", () => {
  const drawing = dxf(`0 LINE 8 CUT 10 1 20 2 11 5 21 8
    0 CIRCLE 8 CUT 10 50 20 50 40 10
    0 ARC 8 CUT 10 0 20 0 40 10 50 350 51 90
    0 ELLIPSE 8 CUT 10 0 20 0 11 0 21 30 40 0.5 41 0 42 6.283185307179586
    0 LWPOLYLINE 8 CUT 70 1 10 0 20 0 10 20 20 0 42 1 10 20 20 10 10 0 20 10
    0 POLYLINE 8 CUT 66 1 70 1 0 VERTEX 8 CUT 10 0 20 0 42 -0.41421356237309503 0 VERTEX 8 CUT 10 10 20 10 0 VERTEX 8 CUT 10 0 20 10 0 SEQEND`);
  expect(boxes(drawing)).toEqual([
    [1, 2, 5, 8, 0],
    [40, 40, 60, 60, 314.159265],
    [0, -1.736482, 10, 10, 0],
    [-15, -30, 15, 30, 1413.716694],
    // A rectangle 20 by 10 with half a circle of radius 5 outside its right edge.
    [0, 0, 25, 10, 200 + 12.5 * Math.PI].map((value) => Math.round(value * 1e6) / 1e6),
    // A triangle less the segment of a quarter circle about (10, 0): clockwise bows to the left.
    [0, 0, 10, 10, 100 - 25 * Math.PI].map((value) => Math.round(value * 1e6) / 1e6),
  ]);
});

test("splines: clamped, of other degrees, rational, and through fit points", () => {
  // One cubic Bézier; the area under it by its Bernstein form: ∫ y dx of (0,0) (0,30) (30,30) (30,0) is 0.6 · 900.
  const cubic = dxf(
    "0 SPLINE 8 0 70 0 71 3 40 0 40 0 40 0 40 0 40 1 40 1 40 1 40 1 10 0 20 0 10 0 20 30 10 30 20 30 10 30 20 0",
  );
  expect(Math.abs(curveArea({ ...cubic.lines[0]!.curve, closed: true }))).toBeCloseTo(540, 9);
  // A full circle of radius 10 as a rational quadratic: Piegl & Tiller, The NURBS Book, example 7.3.
  const w = Math.SQRT1_2;
  const points = [
    [10, 0, 1],
    [10, 10, w],
    [0, 10, 1],
    [-10, 10, w],
    [-10, 0, 1],
    [-10, -10, w],
    [0, -10, 1],
    [10, -10, w],
    [10, 0, 1],
  ];
  const knots = [0, 0, 0, 0.25, 0.25, 0.5, 0.5, 0.75, 0.75, 1, 1, 1];
  const circle = dxf(
    `0 SPLINE 8 0 70 5 71 2 ${knots.map((k) => `40 ${k}`).join(" ")} ${points.map(([, , v]) => `41 ${v}`).join(" ")} ${points.map(([x, y]) => `10 ${x} 20 ${y}`).join(" ")}`,
  );
  const { curve } = circle.lines[0]!;
  expect(Math.abs(curveArea({ ...curve, closed: true }))).toBeCloseTo(100 * Math.PI, 2);
  // A uniform quadratic is pieces of parabolas: its ends are the middles of its outer legs.
  const loose = dxf(
    "0 SPLINE 8 0 71 2 40 0 40 1 40 2 40 3 40 4 40 5 40 6 10 0 20 0 10 10 20 20 10 20 20 0 10 30 20 20",
  ).lines[0]!.curve;
  expect([loose.x, loose.y, loose.parts.at(-1)!.x, loose.parts.at(-1)!.y]).toEqual([5, 10, 25, 10]);
  const fitted = dxf("0 SPLINE 8 0 71 3 74 3 11 0 21 0 11 10 21 10 11 20 21 0").lines[0]!.curve;
  expect(fitted.parts.map(({ x, y }) => [x, y])).toEqual([
    [10, 10],
    [20, 0],
  ]);
  expect(dxf("0 SPLINE 8 0 71 3 40 0 40 1 10 0 20 0").problems).toMatchObject([{ thing: "unknown-shape" }]);
});

const BLOCKS = section(
  "BLOCKS",
  `0 BLOCK 8 0 2 Flap 70 0 10 5 20 0 ${SQUARE} 0 ENDBLK
  0 BLOCK 8 0 2 Pair 70 0 10 0 20 0 0 INSERT 8 0 2 FLAP 10 0 20 0 0 INSERT 8 0 2 flap 10 100 20 0 41 -1 0 ENDBLK
  0 BLOCK 8 0 2 Ring 70 0 10 0 20 0 0 INSERT 8 0 2 Ring 10 1 20 0 0 ENDBLK
  0 BLOCK 8 0 2 Away 70 4 10 0 20 0 1 other.dxf 0 ENDBLK`,
);

test("blocks are drawn where they are inserted: base, scale, turn, mirror, rows, nested; and nowhere else", () => {
  const at = (insert: string): number[][] =>
    boxes(dxf(`0 INSERT 8 CUT ${insert}`, MM + BLOCKS)).map((box) => box.slice(0, 4));
  expect(at("2 Flap 10 100 20 50")).toEqual([[95, 50, 105, 70]]);
  expect(at("2 Flap 10 0 20 0 41 2 42 3")).toEqual([[-10, 0, 10, 60]]);
  expect(at("2 Flap 10 0 20 0 50 90")).toEqual([[-20, -5, 0, 5]]);
  expect(at("2 Flap 10 0 20 0 41 2 50 90")).toEqual([[-20, -10, 0, 10]]);
  expect(at("2 Flap 10 0 20 0 70 2 71 2 44 30 45 40")).toEqual([
    [-5, 0, 5, 20],
    [-5, 40, 5, 60],
    [25, 0, 35, 20],
    [25, 40, 35, 60],
  ]);
  expect(at("2 Flap 10 0 20 0 50 90 70 2 44 30")).toEqual([
    [-20, -5, 0, 5],
    [-20, 25, 0, 35],
  ]);
  expect(at("2 Pair 10 10 20 0")).toEqual([
    [5, 0, 15, 20],
    [105, 0, 115, 20],
  ]);
  expect(at("2 Nobody 10 0 20 0")).toEqual([]);
  expect(dxf("0 INSERT 8 0 2 Away 10 0 20 0", MM + BLOCKS).problems).toMatchObject([
    { thing: "outside-reference" },
  ]);
  expect(() => at("2 Ring 10 0 20 0")).toThrow(ReadingEnds);
  expect(() => at("2 Flap 10 0 20 0 70 30000 71 30000")).toThrow(ReadingEnds);
  const [line] = dxf("0 INSERT 8 CUT 62 1 2 Flap 10 0 20 0", MM + BLOCKS).lines;
  expect(line).toMatchObject({ name: "Flap", layer: "CUT", names: ["Flap", "CUT"] });
});

test("an entity seen from below is mirrored", () => {
  expect(boxes(dxf("0 CIRCLE 8 0 10 30 20 20 40 10 210 0 220 0 230 -1"))[0]!.slice(0, 4)).toEqual([
    -40, 10, -20, 30,
  ]);
  expect(boxes(dxf("0 ARC 8 0 10 0 20 0 40 10 50 0 51 90 230 -1"))[0]!.slice(0, 4)).toEqual([-10, 0, 0, 10]);
  expect(boxes(dxf(`${SQUARE} 230 -1`))[0]!.slice(0, 4)).toEqual([-10, 0, 0, 20]);
  // Lines are given in the world's coordinates, whatever their extrusion.
  expect(boxes(dxf("0 LINE 8 0 10 0 20 0 11 5 21 5 230 -1"))[0]!.slice(0, 4)).toEqual([0, 0, 5, 5]);
  expect(boxes(dxf("0 INSERT 8 0 2 Flap 10 100 20 0 230 -1", MM + BLOCKS))[0]!.slice(0, 4)).toEqual([
    -105, 0, -95, 20,
  ]);
  const half = dxf("0 ELLIPSE 8 0 10 0 20 0 11 10 21 0 40 0.5 41 0 42 3.141592653589793 230 -1");
  expect(boxes(half)[0]!.slice(0, 4)).toEqual([-10, -5, 10, 0]);
});

test("what is off, frozen, invisible or on paper is not there", () => {
  const tables = section(
    "TABLES",
    "0 TABLE 2 LAYER 0 LAYER 2 Off 70 0 62 -1 6 CONTINUOUS 0 LAYER 2 Frozen 70 1 62 7 0 LAYER 2 On 70 0 62 5 6 DASHED 0 LTYPE 2 DASHED 70 0 49 6 49 -3 0 ENDTAB",
  );
  const blocks = section(
    "BLOCKS",
    "0 BLOCK 8 0 2 B 70 0 10 0 20 0 0 CIRCLE 8 0 10 0 20 0 40 1 0 CIRCLE 8 On 10 0 20 0 40 2 0 ENDBLK",
  );
  const drawing = dxf(
    `0 CIRCLE 8 OFF 10 0 20 0 40 3 0 CIRCLE 8 Frozen 10 0 20 0 40 3 0 CIRCLE 8 On 60 1 10 0 20 0 40 3 0 CIRCLE 8 On 67 1 10 0 20 0 40 3
     0 INSERT 8 Off 2 B 10 0 20 0 0 INSERT 8 Frozen 2 B 10 0 20 0 0 CIRCLE 8 On 10 9 20 9 40 5 0 CIRCLE 8 On 62 1 6 CONTINUOUS 10 9 20 9 40 6`,
    MM + tables + blocks,
  );
  expect(drawing.lines.map(({ color, dash, curve }) => [Math.round(curveBox(curve).maxX), color, dash])).toEqual([
    [2, "#0000ff", [6, 3]],
    [14, "#0000ff", [6, 3]],
    [15, "#ff0000", []],
  ]);
  expect(drawing.problems).toEqual([
    { code: "pattern-left-out", path: "", thing: "off-layer", count: 4 },
    { code: "pattern-left-out", path: "", thing: "hidden", count: 1 },
  ]);
});

// Codes: DXF reference, HEADER, $INSUNITS.
test.each([
  [1, 25.4],
  [2, 304.8],
  [4, 1],
  [5, 10],
  [6, 1000],
  [14, 100],
])("with unit %i one is %d mm", (code, mm) => {
  const drawing = dxf(
    "0 LINE 8 0 10 0 20 0 11 1 21 0",
    section("HEADER", `9 $ACADVER 1 AC1015 9 $INSUNITS 70 ${code} 9 $LUNITS 70 2`),
  );
  expect(boxes(drawing)[0]![2]).toBe(mm);
  expect(drawing.problems).toEqual([]);
});

test("no unit is told and taken for mm", () => {
  for (const header of ["", section("HEADER", "9 $INSUNITS 70 0")])
    expect(dxf("0 LINE 8 0 10 0 20 0 11 7 21 0", header).problems).toEqual([
      { code: "pattern-unit-assumed", path: "", unit: "mm", ofMm: 1 },
    ]);
});

test("texts and points are marks", () => {
  const text = `${MM}0\nSECTION\n2\nENTITIES\n0\nTEXT\n8\nNotes\n10\n3\n20\n4\n1\nCut %%c 2 \\U+00E4\n0\nMTEXT\n8\nNotes\n10\n0\n20\n0\n3\n{\\fArial|b1;Front\n1\n\\Ppanel}\n0\nPOINT\n8\n0\n10\n5\n20\n6\n0\nENDSEC\n0\nEOF\n`;
  expect(readDxf(text.replaceAll("\n", "\r\n")).marks).toEqual([
    { kind: "text", x: 3, y: 4, text: "Cut ⌀ 2 ä", layer: "Notes" },
    { kind: "text", x: 0, y: 0, text: "Front panel", layer: "Notes" },
    { kind: "point", x: 5, y: 6, text: "", layer: "0" },
  ]);
});

test("a file that is cut short, or none, is refused", () => {
  const whole = `${MM}${section("ENTITIES", SQUARE)}0\nEOF\n`;
  for (const length of [30, 80, whole.length - 20])
    expect(() => readDxf(whole.slice(0, length)), String(length)).toThrow(ReadingEnds);
  expect(readDxf(whole.slice(0, -"0\nEOF\n".length)).lines).toHaveLength(1);
  expect(() => readDxf("0\nSECTION\nhello\nworld\n")).toThrow(ReadingEnds);
});
