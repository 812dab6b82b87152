import DxfParser, { type ITextEntity } from "dxf-parser";
import { expect, test } from "vitest";
import type { Drawing, DrawingItem } from "../../core/drawing/list/drawing.ts";
import { drawArea, drawLine, drawText } from "../../core/drawing/list/items.ts";
import { circleContour, rectangleContour, segmentContour } from "../../core/geometry/contourShapes.ts";
import { DRAWING_ROLES } from "../../core/project/outputSettings.ts";
import { type DxfOptions, dxfText } from "./dxfText.ts";

const drawing = (...items: DrawingItem[]): Drawing => ({ box: { minX: -5, minY: 10, maxX: 95, maxY: 60 }, items });
/** The file as dxf-parser, a reader that we did not write, has it. */
const read = (items: DrawingItem[], options?: DxfOptions) =>
  new DxfParser().parseSync(dxfText(drawing(...items), options))!;
/** Group codes and values in pairs, as they stand in the file. */
const pairsOf = (items: DrawingItem[], options?: DxfOptions): string[] => {
  const lines = dxfText(drawing(...items), options).split("\r\n");
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => `${lines[2 * i]} ${lines[2 * i + 1]}`);
};

// DXF reference, release 12: groups of code and value; header variables with group 9.
test("the head tells release 12, millimetres, metric measure and the drawing's size from its corner", () => {
  const { header } = read([]);
  expect(header).toMatchObject({
    ...{ $ACADVER: "AC1009", $INSUNITS: 4, $MEASUREMENT: 1 },
    $EXTMIN: { x: 0, y: 0, z: 0 },
    $EXTMAX: { x: 100, y: 50, z: 0 },
  });
  const pairs = pairsOf([]);
  expect(pairs.filter((pair) => pair === "0 SECTION")).toHaveLength(3);
  expect(pairs.filter((pair) => pair === "0 ENDSEC")).toHaveLength(3);
  expect(pairs.filter((pair) => /^2 (?:HEADER|TABLES|ENTITIES)$/u.test(pair))).toEqual([
    "2 HEADER",
    "2 TABLES",
    "2 ENTITIES",
  ]);
  expect(pairs.at(-1)).toBe("0 EOF");
});

test("one line type, and a layer for each role with a colour of its own; only the layers that are asked for", () => {
  const pairs = pairsOf([]);
  const at = pairs.indexOf("2 LTYPE");
  expect(pairs.slice(at - 1, at + 10)).toEqual([
    ...[
      "0 TABLE",
      "2 LTYPE",
      "70 1",
      "0 LTYPE",
      "2 CONTINUOUS",
      "70 64",
      "3 Solid line",
      "72 65",
      "73 0",
      "40 0.0",
    ],
    "0 ENDTAB",
  ]);
  const { layers } = read([]).tables.layer;
  expect(Object.keys(layers).sort()).toEqual(DRAWING_ROLES.map((role) => role.toUpperCase()).sort());
  const colors = Object.values(layers).map(({ colorIndex }) => colorIndex);
  expect(new Set(colors).size).toBe(DRAWING_ROLES.length);
  // The palette's first nine, white or black for what is cut, and an orange for folds.
  expect([...colors].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 30]);
  expect(layers["CUT"]!.colorIndex).toBe(7);
  expect(layers["FLAW"]!.colorIndex).toBe(1);
  const roles = ["cut", "fold"] as const;
  expect(Object.keys(read([], { roles }).tables.layer.layers)).toEqual(["CUT", "FOLD"]);
  const table = pairsOf([], { roles });
  expect(table.slice(table.indexOf("2 LAYER"), table.indexOf("2 LAYER") + 8)).toEqual([
    ...["2 LAYER", "70 2", "0 LAYER", "2 CUT", "70 0", "62 7", "6 CONTINUOUS", "0 LAYER"],
  ]);
});

// The palette's first colours: red, yellow, green, cyan, blue, magenta, black or white, two greys (from memory).
test("a colour is the nearest of the palette", () => {
  const indexOf = (color: string) => read([], { lines: { cut: { color } } }).tables.layer.layers["CUT"]!.colorIndex;
  expect(
    [
      "#ff0000",
      "#ffff00",
      "#00ff00",
      "#00ffff",
      "#0000ff",
      "#ff00ff",
      "#000000",
      "#ffffff",
      "#808080",
      "#c0c0c0",
    ].map(indexOf),
  ).toEqual([...[1, 2, 3, 4, 5, 6, 7, 7, 8, 9]]);
  expect(
    [
      "#e01020",
      "#f0e010",
      "#10e020",
      "#20e0f0",
      "#2010e0",
      "#e020f0",
      "#201010",
      "#f0f0e0",
      "#707880",
      "#c8b8c0",
    ].map(indexOf),
  ).toEqual([...[1, 2, 3, 4, 5, 6, 7, 7, 8, 9]]);
});

test("roles of one layer share it and the colour of the first; names are capitals of 31 at most", () => {
  const lines = {
    stitch: { layer: "pen" },
    fold: { layer: "Pen", color: "#ff0000" },
    tape: { layer: "Kleb—Rand 2" },
    mark: { layer: "x".repeat(40) },
    cut: { layer: "" },
  };
  const { layers } = read([], { lines, roles: ["stitch", "fold", "tape", "mark", "cut"] }).tables.layer;
  expect(Object.keys(layers)).toEqual(expect.arrayContaining(["PEN", "KLEB_RAND_2", "X".repeat(31), "0"]));
  expect(layers["PEN"]!.colorIndex).toBe(4);
});

test("lines are polylines from the box's corner, with bulges where they bend, each part on the line's layer", () => {
  const pairs = pairsOf([
    drawLine("cut", circleContour(5, 20, 10)),
    drawLine("fold", segmentContour(-5, 10, 0.5, 10)),
  ]);
  const at = pairs.indexOf("2 ENTITIES") + 1;
  const zero = ["10 0.0", "20 0.0", "30 0.0"];
  expect(pairs.slice(at)).toEqual([
    ...["0 POLYLINE", "8 CUT", "66 1", ...zero, "70 1"],
    ...["0 VERTEX", "8 CUT", "10 0.0", "20 10.0", "30 0.0", "42 1.0"],
    ...["0 VERTEX", "8 CUT", "10 20.0", "20 10.0", "30 0.0", "42 1.0"],
    ...["0 SEQEND", "8 CUT"],
    ...["0 POLYLINE", "8 FOLD", "66 1", ...zero, "70 0"],
    ...["0 VERTEX", "8 FOLD", ...zero],
    ...["0 VERTEX", "8 FOLD", "10 5.5", "20 0.0", "30 0.0"],
    ...["0 SEQEND", "8 FOLD", "0 ENDSEC", "0 EOF"],
  ]);
});

test("areas are left out, and roles that are not asked for", () => {
  const items = [
    drawArea("piece", [rectangleContour(0, 0, 9, 9)]),
    drawLine("cut", segmentContour(0, 0, 1, 0)),
    drawText("Tab", 1, 1, 3),
  ];
  expect(read(items).entities.map(({ type }) => type)).toEqual(["POLYLINE", "TEXT"]);
  expect(read(items, { roles: ["label"] }).entities.map(({ type }) => type)).toEqual(["TEXT"]);
});

// Group 72: 0 left, 1 centred, 2 right; what is not left has its place in 11 and 21 as well. Capitals are 0.73 of the em.
test("a text has its height as capitals, its turn and where it is anchored", () => {
  const text = (more: object) => {
    const pairs = pairsOf([drawText("Tab", 15, 30, 10, more)]);
    const at = pairs.indexOf("0 TEXT");
    return pairs.slice(at, pairs.indexOf("0 ENDSEC", at));
  };
  expect(text({})).toEqual([
    ...["0 TEXT", "8 LABEL", "10 20.0", "20 20.0", "30 0.0", "40 7.3", "1 Tab", "50 0.0", "72 0"],
  ]);
  expect(text({ anchor: "middle", turnDeg: 90 })).toEqual([
    ...["0 TEXT", "8 LABEL", "10 20.0", "20 20.0", "30 0.0", "40 7.3", "1 Tab", "50 90.0", "72 1"],
    ...["11 20.0", "21 20.0", "31 0.0"],
  ]);
  expect(text({ anchor: "end" }).slice(-4)).toEqual(["72 2", "11 20.0", "21 20.0", "31 0.0"]);
});

test("text is one line of ASCII that a reader takes as it is written", () => {
  const said = (text: string) => (read([drawText(text, 0, 20, 3)]).entities[0] as ITextEntity).text;
  expect(said("50 % wide")).toBe("50 % wide");
  const written = (text: string) =>
    pairsOf([drawText(text, 0, 20, 3)]).find((pair) => pair.startsWith("1 ") && pair !== "1 AC1009");
  expect(written("Ä\u007f\u0080~")).toBe("1 \\U+00C4 ~");
  expect(written("帆\u{1f45c}")).toBe("1 \\U+5E06\\U+D83D\\U+DC5C");
  expect(written("a^b %%u")).toBe("1 a^ b % %u");
});

test("letters that are drawn are closed polylines on the text's layer, one a ring, where their strokes are", () => {
  const outlineText = () => [
    [0, 20, 3, 20, 3, 25],
    [5, 20, 6, 20, 6, 21],
  ];
  const pairs = pairsOf([drawText("ab", 0, 20, 3)], { outlineText });
  expect(pairs.filter((pair) => pair === "0 POLYLINE")).toHaveLength(2);
  expect(pairs).not.toContain("0 TEXT");
  const at = pairs.indexOf("0 VERTEX");
  expect(pairs.slice(at, at + 15)).toEqual([
    ...["0 VERTEX", "8 LABEL", "10 5.0", "20 10.0", "30 0.0"],
    ...["0 VERTEX", "8 LABEL", "10 8.0", "20 10.0", "30 0.0"],
    ...["0 VERTEX", "8 LABEL", "10 8.0", "20 15.0", "30 0.0"],
  ]);
  expect(pairs.filter((pair) => pair === "70 1").length).toBeGreaterThanOrEqual(3);
});

test("numbers are written to a nanometre, with a point and without an exponent; what is no number is our bug", () => {
  const vertex = (x: number) =>
    pairsOf([drawLine("cut", segmentContour(x - 5, 10, 0, 10))]).find(
      (pair) => /^10 /u.test(pair) && pair !== "10 0.0" && pair !== "10 100.0",
    );
  expect(vertex(1.234_567_891_23)).toBe("10 1.234567891");
  expect(vertex(0.000_000_2)).toBe("10 0.000000200");
  expect(vertex(-3)).toBe("10 -3.0");
  expect(() => dxfText(drawing(drawLine("cut", segmentContour(Number.NaN, 0, 1, 1))))).toThrow(RangeError);
  // A hundred thousand lines are all there.
  const many = Array.from({ length: 3000 }, (_, i) => drawLine("cut", segmentContour(i, 10, i, 20)));
  expect(read(many).entities).toHaveLength(3000);
});
