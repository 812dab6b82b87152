import { expect, test } from "vitest";
import { sizePanels } from "../../panels/sizePanels.ts";
import { readProject } from "./readProject.ts";
import { writeProject } from "./writeProject.ts";

const cloth = { id: "cloth", kind: "woven", thickness: 0.5, stock: [{ kind: "roll", id: "roll", width: 1500 }] };

const read = (...panels: object[]) =>
  readProject(
    JSON.stringify({
      laywright: 1,
      name: "Test",
      measures: [{ id: "width", name: "Width", length: "30 cm" }],
      materials: [cloth],
      panels: panels.map((panel, i) => ({ id: `p${i}`, material: "cloth", ...panel })),
    }),
  );

const everything = {
  shape: {
    kind: "outline",
    points: [
      [0, 0],
      [100, 0, 5],
      [100, 60],
      [0, 60],
    ],
    edges: [
      { name: "bottom", start: 0 },
      { name: "side", start: 1 },
      { name: "rest", start: 2 },
    ],
  },
  drawn: "cut",
  seamAllowance: { measure: "width", times: 0.02 },
  edges: [
    { edge: "side", allowance: "5 mm" },
    { edge: 2, allowance: [{ of: "p1", measure: "along" }, 2], hem: true },
  ],
  cornerStyle: "blunted",
  corners: [{ corner: 3, style: "square" }],
  grain: "crosswise",
  grainArrow: [
    [0, 0],
    [0, 50],
  ],
  notches: [
    { edge: "bottom", at: { share: "25 %" }, cut: "out", mark: "A" },
    { edge: 3, at: "1 cm", cut: "in" },
  ],
  drills: [{ x: 10, y: { of: "p1", measure: "across" }, text: "ring" }],
  texts: [{ x: 20, y: 20, text: "Top" }],
  lines: [
    {
      role: "stitch",
      points: [
        [10, 10],
        [20, 10, 2],
        [30, 20],
      ],
      closed: true,
    },
    {
      role: "fold",
      points: [
        [10, 10, 3],
        [50, 30],
      ],
    },
  ],
  interfacing: { material: "cloth", cut: "inset", inset: "2 mm" },
  lining: { material: "cloth", cut: "net" },
};

test("everything a panel can have is written and read back", () => {
  const project = read(everything, { shape: { kind: "rectangle", along: 8, across: 30 } });
  if (!project.ok) throw new Error(JSON.stringify(project.problems));
  const text = writeProject(project.value);
  const again = readProject(text);
  expect(again).toEqual(project);
  expect(again.ok && writeProject(again.value)).toBe(text);
  const sized = sizePanels(project.value.panels, project.value.measures);
  expect(sized.ok && sized.value[0]).toMatchObject({
    allowances: [6, 5, 10, 6],
    hems: [false, false, true, false],
    corners: ["blunted", "blunted", "blunted", "square"],
    drills: [{ x: 10, y: 30 }],
    interfacingInset: 2,
  });
});

test("an outline given clockwise has its names, notches and corners where the file puts them", () => {
  const points = [
    [0, 0],
    [0, 60],
    [100, 60],
    [100, 0],
  ];
  const panel = {
    shape: {
      kind: "outline",
      points,
      edges: [
        { name: "left", start: 0 },
        { name: "rest", start: 1 },
      ],
    },
    seamAllowance: 4,
    edges: [{ edge: "left", allowance: 9 }],
    corners: [
      { corner: "rest", style: "square" },
      { corner: 3, style: "blunted" },
    ],
    notches: [
      { edge: "left", at: 20 },
      { edge: "left", at: { share: 0.25 } },
      { edge: 3, at: 30 },
    ],
  };
  const project = read(panel);
  if (!project.ok) throw new Error(JSON.stringify(project.problems));
  const sized = sizePanels(project.value.panels);
  if (!sized.ok) throw new Error("no size");
  const { outline, allowances, corners, notches } = sized.value[0]!;
  expect([...outline.contour.vertices].filter((_, i) => i % 3 !== 2)).toEqual([0, 0, 100, 0, 100, 60, 0, 60]);
  // Left is the edge from (0, 60) down to (0, 0) now; 20 mm from its lower end is 40 mm from its upper one.
  expect(allowances).toEqual([4, 4, 4, 9]);
  expect(notches).toMatchObject([
    { edge: 3, at: 40 },
    { edge: 3, at: 45 },
    { edge: 0, at: 70 },
  ]);
  // The corner (0, 60), where the rest starts, and (100, 0).
  expect(corners).toEqual(["mitred", "blunted", "mitred", "square"]);
});

test.each([
  ["no such name", { edges: [{ edge: "tpo", allowance: 1 }] }, "panels[0].edges[0].edge: no-such-edge-name"],
  [
    "names out of order",
    {
      shape: {
        kind: "outline",
        points: [
          [0, 0],
          [9, 0],
          [0, 9],
        ],
        edges: [
          { name: "a", start: 2 },
          { name: "b", start: 1 },
        ],
      },
    },
    "panels[0].shape.edges[1]: edge-start-unusable",
  ],
  [
    "a circle",
    { shape: { kind: "rectangle", along: { of: "p0", measure: "along" }, across: 3 } },
    "panels[0].shape.along: measures-in-circle",
  ],
  ["not a measure", { seamAllowance: true }, "panels[0].seamAllowance: wrong-type"],
  [
    "an unknown key of a measure",
    { seamAllowance: { of: "a", measure: "b", time: 2 } },
    "panels[0].seamAllowance: unknown-key",
  ],
  ["a lining of nothing", { lining: { material: "silk" } }, "panels[0].lining.material: unknown-material"],
  ["a fold that is no edge", { fold: "middle" }, "panels[0].fold: no-such-edge-name"],
])("%s is told at its place", (_, more, wanted) => {
  const project = read({ shape: { kind: "rectangle", along: 80, across: 30 }, ...more });
  expect(project.ok ? [] : project.problems.map(({ path, code }) => `${path}: ${code}`)).toEqual([wanted]);
});

test("a panel of before reads as it did", () => {
  const project = read({
    shape: { kind: "rounded", along: 80, across: 30, radius: 5 },
    seamAllowance: 10,
    fold: 0,
  });
  expect(project.ok && project.value.panels[0]).toEqual({
    id: "p0",
    name: "p0",
    materialId: "cloth",
    count: 1,
    mirroredCount: 0,
    shape: { kind: "measured", shape: "rounded", sizes: { along: 80, across: 30, radius: 5 } },
    seamAllowance: 10,
    foldEdge: 0,
    grain: "lengthwise",
    notches: [],
    interfacing: null,
  });
});
