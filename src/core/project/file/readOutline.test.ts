import { expect, test } from "vitest";
import { codes, panel, read } from "../../../../tests/tools/smallProject.ts";

const outline = (points: unknown) => ({ panels: [{ ...panel, shape: { kind: "outline", points } }] });

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
