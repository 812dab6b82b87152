import { expect, test } from "vitest";
import { contourBox, contourEdges, flattenContour } from "../geometry/contourArcs.ts";
import { contourArea, contourLength } from "../geometry/contourEdgeLengths.ts";
import { addCorner, bowEdge, cornersOf, moveCorner, removeCorner } from "../geometry/contourEdits.ts";
import { signedArea } from "../geometry/ring.ts";
import { cutListOf } from "./cutList.ts";
import { edited } from "./edits.ts";
import { readProject } from "./file/readProject.ts";
import { HALF_SIDES, withHalf, withOutline, withWhole } from "./outlineEdits.ts";
import type { Project } from "./project.ts";

/** A front 300 by 200, its upper edge sewn to another panel, marks on it; edges: 0 bottom, 1 right, 2 top, 3 left. */
function front(
  more: object = {},
  points: unknown = [
    [0, 0],
    [300, 0],
    [300, 200],
    [0, 200],
  ],
): Project {
  const panel = { id: "front", material: "cloth", shape: { kind: "outline", points }, seamAllowance: 10, ...more };
  const other = {
    id: "band",
    material: "cloth",
    shape: { kind: "rectangle", along: { of: "front", measure: "2" }, across: 40 },
  };
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Test",
      materials: [
        { id: "cloth", kind: "woven", thickness: 0.5, stock: [{ kind: "roll", id: "roll", width: 1500 }] },
      ],
      panels: [panel, other],
      seams: [{ first: [{ panel: "front", edge: 2 }], second: [{ panel: "band", edge: 0 }] }],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const contourOf = (project: Project) => {
  const { shape } = project.panels[0]!;
  if (shape.kind !== "outline") throw new Error("not drawn");
  return shape.contour;
};

const piecesOf = (project: Project) => {
  const list = cutListOf(project);
  if (!list.ok) throw new Error(JSON.stringify(list.problems));
  return list.value.pieces;
};

function made(project: Project, change: (project: Project) => Project | null): Project {
  const result = edited(project, (now) => change(now) ?? now);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const marks = {
  edges: [{ edge: 2, allowance: 25 }],
  corners: [{ corner: 3, style: "square" }],
  notches: [
    { edge: 2, at: 100 },
    { edge: 2, at: 200 },
  ],
};

test("a corner more or less keeps what stands on the other edges where it stands", () => {
  const before = front(marks);
  const more = made(before, (now) => withOutline(now, "front", addCorner(contourOf(now), 0, 0.5)));
  const panel = more.panels[0]!;
  expect(panel.edges).toEqual([expect.objectContaining({ edge: 3, allowance: 25 })]);
  expect(panel.corners).toEqual([{ corner: 4, style: "square" }]);
  expect(panel.notches.map(({ edge, at }) => [edge, at])).toEqual([
    [3, 100],
    [3, 200],
  ]);
  expect(more.seams![0]!.first).toEqual([{ panel: "front", edge: 3 }]);
  // The piece that is cut is the very same, and so is the one that follows its edge.
  expect(piecesOf(more).map(({ contour }) => contourArea(contour))).toEqual(
    piecesOf(before).map(({ contour }) => expect.closeTo(contourArea(contour), 6)),
  );
  const back = made(more, (now) => withOutline(now, "front", removeCorner(contourOf(now), 1)));
  expect(back.panels).toEqual(before.panels);
  expect(back.seams).toEqual(before.seams);
});

test("an edge that is parted keeps its allowance and its length in seams on both parts, its notch on one", () => {
  const parted = made(front(marks), (now) => withOutline(now, "front", addCorner(contourOf(now), 2, 0.5)));
  const panel = parted.panels[0]!;
  expect(panel.edges?.map(({ edge }) => edge)).toEqual([2, 3]);
  expect(panel.notches.map(({ edge, at }) => [edge, at])).toEqual([
    [2, 100],
    [3, 50],
  ]);
  expect(parted.seams![0]!.first.map(({ edge }) => edge)).toEqual([2, 3]);
  // What follows the edge is as long as both.
  const band = piecesOf(parted).find(({ partId }) => partId === "band")!;
  const box = contourBox(band.contour);
  expect(Math.max(box.maxX - box.minX, box.maxY - box.minY)).toBeCloseTo(300, 6);
});

test.each(HALF_SIDES)(
  "half of a symmetrical panel, %s, is cut as the whole was; whole again it is the same",
  (side) => {
    // Symmetrical both ways, with arcs: what is cut must not change.
    const contour = bowEdge(bowEdge(contourOf(front()), 0, 30), 2, 30);
    const whole = made(front({ notches: [{ edge: 1, at: 100 }] }), (now) => withOutline(now, "front", contour));
    const half = made(whole, (now) => withHalf(now, "front", side));
    expect(half.panels[0]!.foldEdge).not.toBeNull();
    expect(contourArea(contourOf(half))).toBeCloseTo(contourArea(contour) / 2, 6);
    const cut = (project: Project) => piecesOf(project)[0]!;
    expect(contourArea(cut(half).contour)).toBeCloseTo(contourArea(cut(whole).contour), 4);
    expect(contourLength(cut(half).contour)).toBeCloseTo(contourLength(cut(whole).contour), 4);
    expect(cut(half).onFold).toBe(true);
    const again = made(half, (now) => withWhole(now, "front"));
    expect(again.panels[0]!.foldEdge).toBeNull();
    expect(contourArea(cut(again).contour)).toBeCloseTo(contourArea(cut(whole).contour), 4);
    expect(signedArea(flattenContour(contourOf(again)))).toBeGreaterThan(0);
  },
);

test("a mirrored half follows: a corner moved on one side moves both, and the marks of the other side come over", () => {
  const half = made(front(marks), (now) => withHalf(now, "front", "right"));
  // Both notches of the upper edge are mirror images of each other: one stands on the half.
  expect(half.panels[0]!.notches).toHaveLength(1);
  const corner = cornersOf(contourOf(half)).findIndex(({ x, y }) => x === 300 && y === 200);
  const moved = made(half, (now) => withOutline(now, "front", moveCorner(contourOf(now), corner, 280, 200)));
  const whole = made(moved, (now) => withWhole(now, "front"));
  const xs = cornersOf(contourOf(whole))
    .filter(({ y }) => y === 200)
    .map(({ x }) => Math.round(x));
  expect(xs.sort((a, b) => a - b)).toEqual([20, 280]);
  expect(whole.panels[0]!.notches).toHaveLength(2);
});

test("an outline that its middle meets more than twice has no half, and a panel on a fold none again", () => {
  // A U: the level middle passes through both of its legs.
  const u = [
    [0, 0],
    [300, 0],
    [300, 200],
    [200, 200],
    [200, 50],
    [100, 50],
    [100, 200],
    [0, 200],
  ];
  expect(withHalf(front({}, u), "front", "upper")).toBeNull();
  expect(withHalf(front({}, u), "front", "right")).not.toBeNull();
  const half = made(front(), (now) => withHalf(now, "front", "left"));
  expect(withHalf(half, "front", "left")).toBeNull();
  expect(withWhole(front(), "front")).toBeNull();
});

test("names of edges go along with a half and come back in pairs", () => {
  const edges = ["bottom", "right", "top", "left"].map((name, start) => ({ name, start }));
  const shape = {
    kind: "outline",
    points: [
      [0, 0],
      [300, 0],
      [300, 200],
      [0, 200],
    ],
    edges,
  };
  const half = made(front({ shape }), (now) => withHalf(now, "front", "right"));
  const names = (project: Project) => {
    const one = project.panels[0]!.shape;
    return one.kind === "outline" ? one.edges?.map(({ name }) => name).sort() : [];
  };
  expect(names(half)).toEqual(["bottom", "fold", "right", "top"]);
  expect(contourEdges(contourOf(half))).toHaveLength(4);
  const whole = made(half, (now) => withWhole(now, "front"));
  expect(names(whole)).toEqual(["bottom", "right", "right 2", "top"]);
});
