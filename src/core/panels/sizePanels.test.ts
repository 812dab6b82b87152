import { expect, test } from "vitest";
import type { Measure } from "./measure.ts";
import { following } from "./measure.ts";
import type { Panel } from "./panel.ts";
import { sizePanels } from "./sizePanels.ts";

const panel = (id: string, sizes: Record<string, Measure>, more: Partial<Panel> = {}): Panel => ({
  id,
  name: id,
  materialId: "cloth",
  count: 1,
  mirroredCount: 0,
  shape: { kind: "measured", shape: "rectangle", sizes },
  seamAllowance: 0,
  foldEdge: null,
  grain: "lengthwise",
  notches: [],
  interfacing: null,
  ...more,
});

const corners = (result: ReturnType<typeof sizePanels>, i: number) =>
  result.ok ? [...result.value[i]!.outline.contour.vertices].filter((_, k) => k % 3 !== 2) : result.problems;

test("a size follows another panel, wherever it stands in the list, and the bag's own measures", () => {
  const list = [
    panel("gusset", { along: following("body", "round"), across: following(undefined, "depth") }),
    panel("body", { along: 300, across: [{ of: "flap", measure: "along", times: 2 }, 10] }),
    panel("flap", { along: 100, across: following("flap", "along", 0.5) }),
  ];
  const sized = sizePanels(list, [{ id: "depth", name: "Depth", length: 80 }]);
  expect(corners(sized, 1)).toEqual([0, 0, 300, 0, 300, 210, 0, 210]);
  expect(corners(sized, 0)).toEqual([0, 0, 1020, 0, 1020, 80, 0, 80]);
  expect(corners(sized, 2)).toEqual([0, 0, 100, 0, 100, 50, 0, 50]);
});

test("an edge is followed by its name or its number", () => {
  const body = panel("body", { along: 300, across: 200 });
  const [side, top] = ["right", "2"].map((edge) => panel(edge, { along: following("body", edge), across: 40 }));
  const sized = sizePanels([body, side!, top!]);
  expect(corners(sized, 1)).toEqual([0, 0, 200, 0, 200, 40, 0, 40]);
  expect(corners(sized, 2)).toEqual([0, 0, 300, 0, 300, 40, 0, 40]);
});

test("a circle is told once, with everything in it; so is what is not there", () => {
  const circle = sizePanels([
    panel("a", { along: following("b", "along"), across: 10 }),
    panel("b", { along: following("c", "round"), across: 10 }),
    panel("c", { along: following("a", "along"), across: 10 }),
  ]);
  expect(circle).toMatchObject({
    problems: [{ code: "measures-in-circle", names: ["a: along", "b: along", "c: round", "c: along"] }],
  });
  const lost = sizePanels([
    panel("a", { along: following("bod", "along"), across: following("body", "acros") }),
    panel("body", { along: 50, across: 10 }),
    panel("c", { along: following(undefined, "width"), across: 10 }),
  ]);
  expect(lost).toMatchObject({
    problems: [
      { code: "unknown-panel", path: "panels[0].shape.along", nearest: "body" },
      { code: "unknown-measure", path: "panels[0].shape.across", nearest: "across" },
      { code: "unknown-measure", path: "panels[2].shape.along", of: null },
    ],
  });
});

test("a size that follows is held to the limits of its dimension", () => {
  const sized = sizePanels([
    panel("a", { along: following("b", "along", -1), across: 10 }),
    panel("b", { along: 50, across: 1 }),
  ]);
  expect(sized).toMatchObject({
    problems: [{ code: "length-out-of-range", path: "panels[0].shape.along", mm: -50 }],
  });
});

test("notches, allowances and corners of a named edge of several arcs", () => {
  const contour = {
    vertices: Float64Array.of(0, 0, 0, 100, 0, 0.2, 100, 50, 0.2, 100, 100, 0, 0, 100, 0),
    closed: true,
  };
  const edges = [
    { name: "bottom", start: 0 },
    { name: "side", start: 1 },
    { name: "rest", start: 3 },
  ];
  const wish = panel(
    "a",
    {},
    {
      shape: { kind: "outline", contour, edges },
      seamAllowance: 10,
      edges: [
        { edge: "side", allowance: 5 },
        { edge: 0, allowance: 20, hem: true },
      ],
      corners: [{ corner: "side", style: "blunted" }],
      notches: [
        { edge: "side", at: { share: 0.5 } },
        { edge: "rest", at: 150 },
      ],
      foldEdge: 4,
    },
  );
  const sized = sizePanels([wish]);
  if (!sized.ok) throw new Error(JSON.stringify(sized.problems));
  expect(sized.value[0]).toMatchObject({
    allowances: [20, 5, 5, 10, 0],
    hems: [true, false, false, false, false],
    corners: ["mitred", "blunted", "mitred", "mitred", "mitred"],
    notches: [{ edge: 1 }, { edge: 4, at: 50 }],
  });
  // The side is two equal arcs, so its middle is where they meet.
  const { x0, y0 } = { x0: 100, y0: 0 };
  expect(Math.hypot(100 - x0, 50 - y0)).toBe(50);
  expect(sized.value[0]!.notches[0]!.at).toBeCloseTo((Math.atan(0.2) * 50 * (1 + 0.04)) / 0.2, 9);
});
