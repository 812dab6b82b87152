import { expect, test } from "vitest";
import type { Panel } from "./panel.ts";
import { seamLengths, withSeamMarks } from "./seams.ts";
import { sizePanels } from "./sizePanels.ts";

const panel = (
  id: string,
  shape: "round-bottom" | "gusset" | "trapezoid",
  sizes: Record<string, number>,
): Panel => ({
  id,
  name: id,
  materialId: "cloth",
  count: 1,
  mirroredCount: 0,
  shape: { kind: "measured", shape, sizes },
  seamAllowance: 10,
  foldEdge: null,
  grain: "lengthwise",
  notches: [],
  interfacing: null,
});

const sized = (...panels: Panel[]) => {
  const result = sizePanels(panels);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const edges = (id: string, ...names: string[]) => names.map((edge) => ({ panel: id, edge }));

test("a side that is longer is told by how much, less the ease that is meant", () => {
  const panels = sized(
    panel("front", "trapezoid", { bottomWidth: 300, height: 200 }),
    panel("gusset", "gusset", { length: 697, width: 80 }),
  );
  const seam = { first: edges("front", "left", "bottom", "right"), second: edges("gusset", "front") };
  expect(seamLengths(panels, [seam, { ...seam, ease: 2 }])).toMatchObject({
    value: [{ first: [200, 300, 200], second: [697], over: 3 }, { over: 1 }],
  });
  expect(seamLengths(panels, [{ first: edges("front", "lef"), second: edges("flap", "top") }])).toMatchObject({
    problems: [
      { code: "no-such-edge-name", path: "seams[0].first[0].edge", nearest: "left" },
      { code: "unknown-panel", path: "seams[0].second[0].panel" },
    ],
  });
});

test("corners of one side are marked on the other; where edges only run into each other, on both", () => {
  const panels = sized(
    panel("front", "trapezoid", { bottomWidth: 300, height: 200 }),
    panel("back", "round-bottom", { width: 300, height: 200, radius: 40 }),
    panel("gusset", "gusset", { length: 700, width: 80 }),
  );
  const round = ["left", "bottom", "right"];
  const seams = seamLengths(panels, [
    { first: edges("gusset", "front"), second: edges("front", ...round) },
    { first: edges("gusset", "back"), second: edges("back", ...round) },
  ]);
  if (!seams.ok) throw new Error("no lengths");
  const marked = withSeamMarks(panels, seams.value);
  // The second side is met backwards; its corners are 200 mm from either end.
  expect(marked[2]!.notches.filter(({ mark }) => mark?.startsWith("A"))).toMatchObject([
    { edge: 0, at: 200, mark: "A1" },
    { edge: 0, at: 500, mark: "A2" },
  ]);
  // The front's corners are corners; the back's left side ends in an arc that runs on into its bottom.
  expect(marked[0]!.notches).toEqual([]);
  expect(marked[1]!.notches.map(({ mark }) => mark).sort()).toEqual(["B1", "B2"]);
});

test("a seam of one edge each is marked in its middle, on both sides with one letter", () => {
  const panels = sized(
    panel("front", "trapezoid", { bottomWidth: 300, height: 200 }),
    panel("back", "trapezoid", { bottomWidth: 300, height: 200 }),
  );
  const seams = seamLengths(panels, [{ first: edges("front", "right"), second: edges("back", "left") }]);
  const marked = withSeamMarks(panels, seams.ok ? seams.value : []);
  expect(marked.map(({ notches }) => notches)).toMatchObject([
    [{ edge: 1, at: 100, mark: "A", cut: "slit" }],
    [{ edge: 3, at: 100, mark: "A", cut: "slit" }],
  ]);
});
