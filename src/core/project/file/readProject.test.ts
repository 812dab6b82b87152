import { expect, test } from "vitest";
import { problemLine } from "../../problems/describeProblem.ts";
import { readProject } from "./readProject.ts";

const roll = { kind: "roll", id: "roll", width: "150 cm" };
const cloth = { id: "cloth", kind: "woven", thickness: "0.5 mm", stock: [roll] };
const strap = {
  id: "strap",
  construction: "fourfold",
  width: "1 in",
  length: "1.2 m",
  materials: { outer: "cloth" },
};
const panel = { id: "panel", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 } };
const file = { laywright: 1, name: "Test", materials: [cloth], straps: [strap], panels: [panel] };

const read = (more: object) => readProject(JSON.stringify({ ...file, ...more }));
const codes = (text: string | object) => {
  const result = typeof text === "string" ? readProject(text) : read(text);
  return result.ok ? [] : result.problems.map((problem) => `${problem.path}: ${problem.code}`);
};
const outline = (points: unknown) => ({ panels: [{ ...panel, shape: { kind: "outline", points } }] });

test("a small file is read, defaults filled in, lengths in mm", () => {
  expect(read({})).toMatchObject({
    ok: true,
    value: {
      unit: "mm",
      bags: 1,
      materials: [{ name: "cloth", coating: "none", stock: [{ width: 1500, length: null, selvedge: 0 }] }],
      straps: [{ width: { kind: "finished", mm: 25.4 }, length: { kind: "finished", mm: 1200 } }],
      panels: [{ count: 1, mirroredCount: 0, seamAllowance: 0, grain: "lengthwise" }],
      output: { paper: "A4", lengths: "mm" },
    },
  });
});

test("bare numbers are in the file's unit", () => {
  const result = read({ unit: "in", gap: 0.125, panels: [{ ...panel, seamAllowance: "3/8" }] });
  expect(result).toMatchObject({
    value: { gap: 3.175, panels: [{ seamAllowance: 9.525 }], output: { lengths: "in/16" } },
  });
});

test.each([
  ["empty", "", [": file-empty"]],
  ["blank", " \n", [": file-empty"]],
  ["cut off", '{"laywright": 1, "name": "a"', [": file-not-json"]],
  ["not a number", '{"laywright": NaN}', [": file-not-json"]],
  ["a list", "[]", [": wrong-type"]],
  ["null", "null", [": wrong-type"]],
  ["deeply nested", `{"a":${"[".repeat(50_000)}`, [": file-too-deep"]],
  ["no version", "{}", ["laywright: file-version-unknown"]],
  ["version as text", '{"laywright": "1"}', ["laywright: file-version-unknown"]],
  ["newer", '{"laywright": 7, "anything": true}', ["laywright: file-newer"]],
  [
    "key twice",
    '{"laywright":1,"name":"a","name":"b","materials":[]}',
    [": key-repeated", "materials: list-length"],
  ],
] as const)("a file that is %s", (_, text, expected) => {
  expect(codes(text)).toEqual(expected);
});

test("a syntax fault is told by line and column", () => {
  const result = readProject('{\n  "laywright": 1,\n  "name": oops\n}');
  expect(result).toMatchObject({ problems: [{ line: 3, column: 11, reason: "value-expected" }] });
});

test.each([
  [
    "huge",
    { panels: [{ ...panel, shape: { ...panel.shape, along: 1e9 } }] },
    ["panels[0].shape.along: length-out-of-range"],
  ],
  ["negative", { gap: -1 }, ["gap: length-out-of-range"]],
  [
    "zero",
    { panels: [{ ...panel, shape: { ...panel.shape, along: 0 } }] },
    ["panels[0].shape.along: length-out-of-range"],
  ],
  ["NaN as text", { gap: "NaN" }, ["gap: length-unreadable"]],
  ["null", { gap: null }, ["gap: wrong-type"]],
  ["many bags", { bags: 1e9 }, ["bags: count-out-of-range"]],
  ["half a bag", { bags: 0.5 }, ["bags: count-unreadable"]],
  ["no pieces of a panel", { panels: [{ ...panel, count: 0 }] }, ["panels[0].count: count-out-of-range"]],
  ["bias", { straps: [{ ...strap, grain: "bias" }] }, ["straps[0].grain: bias-refused"]],
  ["unknown key", { panels: [{ ...panel, seam: 1 }] }, ["panels[0]: unknown-key"]],
  ["missing key", { straps: [{ ...strap, length: undefined }] }, ["straps[0]: key-missing"]],
  ["unknown choice", { straps: [{ ...strap, construction: "trifold" }] }, ["straps[0].construction: not-one-of"]],
  ["unknown material", { panels: [{ ...panel, material: "cloht" }] }, ["panels[0].material: unknown-material"]],
  ["id twice", { panels: [panel, panel] }, ["panels[1].id: duplicate-id"]],
  ["strap and panel of one id", { panels: [{ ...panel, id: "strap" }] }, ["panels[0].id: duplicate-id"]],
  ["control characters", { name: "a\u0000b" }, ["name: text-unprintable"]],
  ["an empty name", { name: "" }, ["name: text-empty"]],
  ["a name too long", { name: "x".repeat(201) }, ["name: text-too-long"]],
  [
    "cloth ounces",
    { materials: [{ ...cloth, thickness: "10 oz" }] },
    ["materials[0].thickness: thickness-in-cloth-ounces"],
  ],
  [
    "leather range",
    { materials: [{ ...cloth, kind: "leather", thickness: "3/4 oz" }] },
    ["materials[0].thickness: thickness-range"],
  ],
  [
    "selvedge",
    { materials: [{ ...cloth, stock: [{ ...roll, selvedge: "75 cm" }] }] },
    ["materials[0].stock[0].selvedge: selvedges-eat-width"],
  ],
  [
    "crosswise on lengthwise cloth",
    { materials: [{ ...cloth, grain: "lengthwise" }], panels: [{ ...panel, grain: "crosswise" }] },
    ["panels[0].grain: grain-conflict"],
  ],
  [
    "price",
    { materials: [{ ...cloth, price: { amount: "a lot", per: "furlong" } }] },
    ["materials[0].price.amount: money-unreadable"],
  ],
  [
    "price basis",
    { materials: [{ ...cloth, price: { amount: 1, per: "furlong" } }] },
    ["materials[0].price.per: length-unreadable"],
  ],
  ["unknown paper", { output: { paper: "A9" } }, ["output.paper: not-one-of"]],
  ["paper half said", { output: { paper: { width: 300 } } }, ["output.paper: key-missing"]],
  [
    "paper with a key too many",
    { output: { paper: { width: 300, height: 300, gsm: 80 } } },
    ["output.paper: unknown-key"],
  ],
  ["paper of no kind", { output: { paper: 4 } }, ["output.paper: not-one-of"]],
  ["paper all margin", { output: { paper: "A5", pageMargin: 50, overlap: 20 } }, ["output.paper: paper-too-small"]],
  [
    "colour by name",
    { output: { lines: { cut: { color: "red" } } } },
    ["output.lines.cut.color: color-unreadable"],
  ],
  [
    "layer with a blank",
    { output: { lines: { fold: { layer: "my pen" } } } },
    ["output.lines.fold.layer: layer-name-unusable"],
  ],
  [
    "folds on the layer of the cuts",
    { output: { lines: { fold: { layer: "Cut" } } } },
    ["output.lines.fold.layer: layer-is-cut"],
  ],
  [
    "cuts on the layer of the folds",
    { output: { lines: { cut: { layer: "fold" } } } },
    ["output.lines.cut.layer: layer-is-cut"],
  ],
  ["unknown role", { output: { lines: { score: {} } } }, ["output.lines: unknown-key"]],
  [
    "laser with a blade",
    { output: { machine: { bedWidth: 300, bedHeight: 300, tool: "laser", bladeOffset: 0.25 } } },
    ["output.machine.bladeOffset: laser-has-no-blade"],
  ],
  [
    "knife with kerf and blade",
    { output: { machine: { bedWidth: 300, bedHeight: 300, tool: "knife", bladeOffset: 0.25, kerf: 0.1 } } },
    ["output.machine.kerf: knife-takes-no-kerf"],
  ],
  [
    "bed all gripped",
    { output: { machine: { bedWidth: 300, bedHeight: 100, tool: "knife", grip: 50 } } },
    ["output.machine.grip: grip-eats-bed"],
  ],
  [
    "wrong length wish",
    { straps: [{ ...strap, length: { drop: "far" } }] },
    ["straps[0].length.drop: length-unreadable"],
  ],
  [
    "pin on no material",
    { pins: [{ material: "m", stock: "s", piece: "p", copy: 0, x: 0, y: 0 }] },
    ["pins[0].material: unknown-material"],
  ],
])("%s is one clear problem", (_, more, expected) => {
  expect(codes(more)).toEqual(expected);
});

test.each([
  [
    "bow tie",
    [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ],
    "panels[0].shape.points: outline-crosses-itself",
  ],
  [
    "two points",
    [
      [0, 0],
      [10, 10],
    ],
    "panels[0].shape.points: list-length",
  ],
  [
    "on one line",
    [
      [0, 0],
      [10, 10],
      [20, 20],
    ],
    "panels[0].shape.points: outline-no-area",
  ],
  [
    "closed by hand",
    [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 0],
    ],
    "panels[0].shape.points[0]: outline-repeats-point",
  ],
  ["point of one number", [[0], [10, 0], [10, 10]], "panels[0].shape.points[0]: list-length"],
  [
    "bow over half a circle",
    [
      [0, 0],
      [10, 0, 6],
      [10, 10],
    ],
    "panels[0].shape.points[1]: bow-too-large",
  ],
  [
    "arc through the far side",
    [
      [0, 0],
      [10, 0, -4.9],
      [10, 10, 0],
      [8, 5],
    ],
    "panels[0].shape.points: outline-crosses-itself",
  ],
  ["points as groups", [{ x: 1 }, { x: 2 }, { x: 3 }], "panels[0].shape.points[0]: wrong-type"],
])("outline: %s", (_, points, expected) => {
  expect(codes(outline(points))[0]).toBe(expected);
});

test("an outline given clockwise is the same shape as one given counter-clockwise", () => {
  const area = (points: unknown) => {
    const result = read(outline(points));
    return result.ok && result.value.panels[0]!.shape;
  };
  expect(
    area([
      [0, 0],
      [0, 100],
      [100, 100, 10],
      [100, 0],
    ]),
  ).toEqual(
    area([
      [0, 0],
      [100, 0, 10],
      [100, 100],
      [0, 100],
    ]),
  );
});

test("an edge that bows by next to nothing is straight", () => {
  const square = (bow: number) => {
    const corners = [
      [0, 0, bow],
      [100, 0],
      [100, 100],
      [0, 100],
    ];
    const result = read(outline(corners));
    return result.ok && result.value.panels[0]!.shape;
  };
  expect(square(0)).toBeTruthy();
  for (const bow of [5e-324, 7.5e-81, -1e-12, 9e-4]) expect(square(bow)).toEqual(square(0));
  expect(square(0.002)).not.toEqual(square(0));
});

test("fold and notches of an outline given clockwise stay on the edges they were given for", () => {
  // The same half body walked both ways: its fold is the edge on the x axis, the notch 30 mm from its right corner.
  const there = {
    points: [
      [0, 0],
      [100, 0],
      [100, 60],
      [0, 80],
    ],
    fold: 0,
    notches: [{ edge: 0, at: 70 }],
  };
  const back = {
    points: [
      [0, 0],
      [0, 80],
      [100, 60],
      [100, 0],
    ],
    fold: 3,
    notches: [{ edge: 3, at: 30 }],
  };
  const [one, other] = [there, back].map(({ points, ...more }) => {
    const result = read({ panels: [{ ...panel, ...more, shape: { kind: "outline", points } }] });
    return result.ok && result.value.panels[0]!;
  });
  expect(one).toMatchObject({ foldEdge: 0, notches: [{ edge: 0, at: 70 }] });
  expect(other).toEqual(one);
});

test("what is wrong with an edge is told by the number that the file gives it, clockwise or not", () => {
  const points = [
    [0, 0],
    [0, 80],
    [100, 60],
    [100, 0],
  ];
  const bad = {
    ...panel,
    shape: { kind: "outline", points },
    notches: [
      { edge: 3, at: 101 },
      { edge: 9, at: 1 },
    ],
  };
  const result = read({ panels: [bad] });
  expect(!result.ok && result.problems).toMatchObject([
    { path: "panels[0].notches[0].at", code: "notch-off-edge", edgeMm: 100 },
    { path: "panels[0].notches[1]", code: "no-such-edge", edge: 9 },
  ]);
});

test("fold and notches must lie on edges that are there", () => {
  const bad = {
    ...panel,
    fold: 7,
    notches: [
      { edge: 4, at: 1 },
      { edge: 0, at: 301 },
    ],
  };
  expect(codes({ panels: [bad] })).toEqual([
    "panels[0].notches[0]: no-such-edge",
    "panels[0].notches[1].at: notch-off-edge",
    "panels[0].fold: no-such-edge",
  ]);
  const dented = {
    kind: "outline",
    points: [
      [0, 0],
      [50, 20],
      [100, 0],
      [100, 60],
      [0, 60],
    ],
  };
  expect(codes({ panels: [{ ...panel, shape: dented, fold: 0 }] })).toEqual([
    "panels[0].fold: fold-edge-not-straight",
  ]);
});

test("every problem is told at once, each with a place and a remedy", () => {
  const result = read({
    bagz: 2,
    gap: "wide",
    materials: [{ ...cloth, thicknes: 1, thickness: undefined }],
    panels: [{ ...panel, material: "clth", grain: "bias" }],
  });
  const lines = result.ok ? [] : result.problems.map((problem) => problemLine(problem));
  expect(lines).toHaveLength(6);
  expect(lines).toContain('The key "bagz" is not known here. Did you mean "bags"? Otherwise remove it.');
  expect(lines).toContain(
    'panels[0].material: There is no material "clth". Did you mean "cloth"? Add it under materials, or use one of "cloth".',
  );
});
