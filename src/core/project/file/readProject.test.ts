import { expect, test } from "vitest";
import { cloth, codes, panel, read, roll, strap } from "../../../../tests/tools/smallProject.ts";
import { problemLine } from "../../problems/describeProblem.ts";
import { readProject } from "./readProject.ts";
import { writeProject } from "./writeProject.ts";

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

test("money, tax, supplies, and stock of the shop are read and written back the same", () => {
  const price = { amount: 12, per: "m", least: "50 cm", steps: [{ from: "5 m", amount: 11 }] };
  const quarter = { kind: "remnant", id: "q", shape: { kind: "rectangle", along: 460, across: 530 }, toBuy: true };
  const result = read({
    materials: [{ ...cloth, price, stock: [{ ...quarter, price: { amount: 4.5, per: "each" } }, roll] }],
    pricing: { minutesPerBag: 90, hourlyRate: "24,00", overheadShare: "10 %", by: "margin", share: "40 %" },
    tax: { rate: "19 %", inPrices: false },
    supplies: [{ id: "ring", perBag: 2, price: 4.9, pack: 10 }, { id: "label" }],
  });
  expect(result).toMatchObject({
    value: {
      materials: [
        {
          price: { step: 100, least: 500, steps: [{ from: 5000, amount: 11 }] },
          stock: [{ toBuy: true, price: { amount: 4.5, basis: { kind: "each" } } }, {}],
        },
      ],
      pricing: { workPerBag: 0, minutesPerBag: 90, hourlyRate: 24, overheadShare: 0.1, share: 0.4 },
      tax: { rate: 0.19, inPrices: false, onBags: false },
      supplies: [
        { name: "ring", pack: 10 },
        { perBag: 1, price: null, pack: 1 },
      ],
    },
  });
  if (result.ok) expect(readProject(writeProject(result.value))).toEqual(result);
  expect(codes({ supplies: [{ id: "zip" }, { id: "zip" }] })).toEqual(["supplies[1].id: duplicate-id"]);
  expect(codes({ tax: { rate: "150 %" } })).toEqual(["tax.rate: share-out-of-range"]);
  const wrong = { ...cloth, price: { ...price, steps: [{ from: "far", amount: 11 }] } };
  expect(codes({ materials: [wrong] })).toEqual(["materials[0].price.steps[0].from: length-unreadable"]);
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

const seamTo = (edge: string | number): object => ({
  seams: [{ first: [{ panel: "front", edge: 0 }], second: [{ panel: "front", edge }] }],
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
  ["an edge's name too long", seamTo("x".repeat(61)), ["seams[0].second[0].edge: text-too-long"]],
  ["an edge's name empty", seamTo(""), ["seams[0].second[0].edge: text-empty"]],
  ["an edge's number too large", seamTo(2001), ["seams[0].second[0].edge: count-out-of-range"]],
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

test("of very many problems the first 200 are told, and how many more there are", () => {
  const bad = Array.from({ length: 450 }, (_, i) => ({ ...panel, id: `p${i}`, material: "none" }));
  const text = JSON.stringify({ laywright: 1, materials: [], panels: bad });
  const read = readProject(text);
  if (read.ok) throw new Error("it was read");
  expect(read.problems).toHaveLength(201);
  expect(read.problems.at(-1)).toMatchObject({ code: "more-problems", count: expect.any(Number) });
  const told = (read.problems.at(-1) as { count: number }).count;
  expect(told).toBeGreaterThanOrEqual(450 - 200);
});
