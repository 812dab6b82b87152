import { expect, test } from "vitest";
import { box, line, understood } from "../../../tests/tools/patternLines.ts";
import type { UnderstoodPattern } from "./patternOutline.ts";

const roles = ({ outlines }: UnderstoodPattern): string[] => outlines.map(({ role }) => role);

test("a cut line, the seam in it, a window, a hole, a notch and a grain arrow are told by where they lie", () => {
  const found = understood([
    box(0, 0, 300, 200),
    box(10, 10, 280, 180),
    box(100, 120, 80, 15),
    box(40, 40, 4, 4),
    line(
      [
        [150, 0],
        [150, 6],
      ],
      false,
    ),
    line(
      [
        [60, 100],
        [240, 100],
      ],
      false,
    ),
    line(
      [
        [235, 96],
        [240, 100],
        [235, 104],
      ],
      false,
    ),
    line(
      [
        [30, 30],
        [70, 60],
      ],
      false,
    ),
  ]);
  expect(roles(found)).toEqual(["cut", "stitch", "cut", "drill", "notch", "grain", "grain", "mark"]);
  expect(found.outlines.map(({ inside }) => inside)).toEqual([null, 0, 1, 1, 0, 1, 1, 1]);
  expect(found.problems).toEqual([]);
});

test("names go before layers, layers before dashes, wishes before all", () => {
  const dashed = { dash: [3, 2] };
  const lines = [
    box(0, 0, 300, 200, { names: ["Schnittlinie"], ...dashed }),
    box(10, 10, 280, 180, { names: ["front", "cut"], layer: "cut", ...dashed }),
    line(
      [
        [20, 20],
        [200, 20],
      ],
      false,
      { dash: [8, 2, 1, 2] },
    ),
    line(
      [
        [20, 30],
        [200, 30],
      ],
      false,
      { ...dashed, color: "#ff0000" },
    ),
    box(400, 0, 100, 80, { names: ["fold-over flap"] }),
  ];
  expect(roles(understood(lines))).toEqual(["cut", "cut", "fold", "stitch", "cut"]);
  const wishes = new Map([
    ["#ff0000", "fold"],
    ["cut", "mark"],
  ] as const);
  expect(roles(understood(lines, { roles: wishes }))).toEqual(["cut", "mark", "fold", "fold", "cut"]);
});

test("open lines whose ends meet become one outline, whichever way they run", () => {
  const sides = [
    line(
      [
        [0, 0],
        [100, 0],
      ],
      false,
    ),
    line(
      [
        [100, 50],
        [100.04, 0.03],
      ],
      false,
    ),
    line(
      [
        [0, 50],
        [0, 0],
      ],
      false,
    ),
    line(
      [
        [0, 50.02],
        [100, 50],
      ],
      false,
    ),
    line(
      [
        [50, 0],
        [50, 8],
      ],
      false,
    ),
  ];
  const found = understood(sides);
  expect(found.outlines.map(({ closed }) => closed).sort()).toEqual([false, true]);
  const outline = found.outlines.find(({ closed }) => closed)!;
  expect(outline.areaMm2).toBeCloseTo(5000, -1);
  expect(outline.contour.vertices).toHaveLength(12);
  expect(roles(found).sort()).toEqual(["cut", "notch"]);
});

test("lines that hang on a corner do not break the chain", () => {
  const sides = [
    line(
      [
        [0, 0],
        [100, 0],
      ],
      false,
    ),
    line(
      [
        [0, 0],
        [-8, -8],
      ],
      false,
    ),
    line(
      [
        [100, 0],
        [100, 50],
      ],
      false,
    ),
    line(
      [
        [100, 50],
        [0, 50],
      ],
      false,
    ),
    line(
      [
        [0, 50],
        [0, 0],
      ],
      false,
    ),
  ];
  expect(understood(sides).outlines.find(({ closed }) => closed)?.areaMm2).toBeCloseTo(5000, 9);
});
