import { expect, test } from "vitest";
import { edited } from "./edits.ts";
import { readProject } from "./file/readProject.ts";
import type { Project } from "./project.ts";
import { withPanelShape } from "./reshapedPanel.ts";
import { sizedPanelOf } from "./sizedPanels.ts";

function project(shape: object, more: object = {}): Project {
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Test",
      materials: [{ id: "cloth", kind: "woven", thickness: 0.5 }],
      panels: [
        { id: "front", material: "cloth", shape, seamAllowance: 10, ...more },
        { id: "side", material: "cloth", shape: { kind: "rectangle", along: 100, across: 50 } },
      ],
      seams: [{ first: [{ panel: "front", edge: "top" }], second: [{ panel: "side", edge: "bottom" }] }],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const RECTANGLE = { kind: "rectangle", along: 300, across: 200 };
const OF_EDGES = {
  edges: [{ edge: "top", allowance: 25, hem: true }],
  corners: [{ corner: "left", style: "square" }],
  notches: [{ edge: "right", at: 40 }],
};

function reshaped(before: Project, shape: Parameters<typeof withPanelShape>[2]): Project {
  const after = edited(before, (now) => withPanelShape(now, "front", shape));
  if (!after.ok) throw new Error(JSON.stringify(after.problems));
  return after.value;
}

test("a shape made an outline of its own: edges keep their names, and all that stands on them", () => {
  const before = project(RECTANGLE, OF_EDGES);
  const { contour } = sizedPanelOf(before, "front")!.outline;
  const after = reshaped(before, { kind: "outline", contour });
  const [panel] = after.panels;
  expect(panel).toMatchObject(OF_EDGES);
  expect(after.seams).toEqual(before.seams);
  expect(sizedPanelOf(after, "front")!.allowances).toEqual([10, 10, 25, 10]);
});

test("a corner that comes moves the numbers of those behind it, one that goes takes what starts there", () => {
  const drawn = project(
    {
      kind: "outline",
      points: [
        [0, 0],
        [300, 0],
        [300, 200],
        [0, 200],
      ],
      edges: [{ name: "top", start: 2 }],
    },
    {
      edges: [
        { edge: 1, allowance: 5 },
        { edge: 3, allowance: 7 },
      ],
      fold: 3,
    },
  );
  const more = reshaped(drawn, {
    kind: "outline",
    contour: { closed: true, vertices: Float64Array.of(0, 0, 0, 150, 0, 0, 300, 0, 0, 300, 200, 0, 0, 200, 0) },
  });
  expect(more.panels[0]).toMatchObject({
    shape: { edges: [{ name: "top", start: 3 }] },
    edges: [
      { edge: 2, allowance: 5 },
      { edge: 4, allowance: 7 },
    ],
    foldEdge: 4,
  });
  const fewer = reshaped(more, {
    kind: "outline",
    contour: { closed: true, vertices: Float64Array.of(0, 0, 0, 150, 0, 0, 300, 200, 0, 0, 200, 0) },
  });
  expect(fewer.panels[0]).toMatchObject({
    shape: { edges: [{ name: "top", start: 2 }] },
    edges: [{ edge: 3, allowance: 7 }],
    foldEdge: 3,
  });
});

test("another shape keeps what its edges have by the same name, and drops the rest with its seams", () => {
  const before = project(RECTANGLE, OF_EDGES);
  const round = reshaped(before, { kind: "measured", shape: "circle", sizes: { diameter: 200 } });
  const [panel] = round.panels;
  expect([panel?.edges, panel?.corners, panel?.notches]).toEqual([[], [], []]);
  expect(round.seams).toEqual([]);
  const rounded = reshaped(before, {
    kind: "measured",
    shape: "trapezoid",
    sizes: { bottomWidth: 300, topWidth: 200, height: 150 },
  });
  expect(rounded.panels[0]).toMatchObject(OF_EDGES);
  expect(rounded.seams).toEqual(before.seams);
});
