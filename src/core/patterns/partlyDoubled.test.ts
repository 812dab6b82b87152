import { expect, test } from "vitest";
import { box, line, understood } from "../../../tests/tools/patternLines.ts";
import type { Curve } from "./curve.ts";
import type { PatternLine } from "./patternDrawing.ts";

test("a stretch that lies on another line is told with its length and taken out when asked; folds may lie there", () => {
  const lower: [number, number][] = [
    [20, 0],
    [70, 0],
  ];
  // Half of it along the lower edge, then away from it; the last 3 mm are back on the right edge.
  const bent: [number, number][] = [
    [60, 0],
    [90, 0],
    [90, 20],
    [100, 20],
    [100, 23],
  ];
  const lines = [
    box(0, 0, 100, 50, { name: "Front" }),
    line(lower, false, { name: "again" }),
    line(bent, false, { name: "tab" }),
    line(
      [
        [25, 0],
        [65, 0],
      ],
      false,
      { name: "fold", names: ["fold"] },
    ),
    line(
      [
        [50, -10],
        [50, 10],
      ],
      false,
      { name: "notched" },
    ),
  ];
  const told = understood(lines);
  expect(told.problems).toMatchObject([
    { code: "pattern-partly-doubled", path: "again", other: "Front", mended: false },
    { code: "pattern-partly-doubled", path: "tab", other: "Front", mended: false },
  ]);
  const lengths = told.problems.map((problem) => ("doubledMm" in problem ? problem.doubledMm : 0));
  expect(lengths[0]).toBeCloseTo(50, 6);
  expect(lengths[1]).toBeCloseTo(33, 6);
  const mended = understood(lines, { mend: ["doubles"] });
  expect(mended.outlines.map(({ name }) => name)).toEqual(["Front", "tab", "fold", "notched"]);
  const { curve } = mended.outlines[1]!;
  expect([curve.x, curve.y, ...curve.parts.flatMap(({ x, y }) => [x, y])].map((v) => Number(v.toFixed(6)))).toEqual(
    [90, 0, 90, 20, 100, 20],
  );
});

test("two arcs of one circle: what both run along is the sum of their angles less the whole, times the radius", () => {
  const arc = (from: number, sweep: number, name: string): PatternLine => {
    const point = (t: number) => [100 * Math.cos(t), 100 * Math.sin(t)] as const;
    const [x, y] = point(from);
    const [endX, endY] = point(from + sweep);
    const curve: Curve = {
      x,
      y,
      parts: [
        { kind: "arc", centreX: 0, centreY: 0, ux: 100, uy: 0, vx: 0, vy: 100, from, sweep, x: endX, y: endY },
      ],
      closed: false,
    };
    return { name, layer: "", names: [], color: "#000000", dash: [], curve };
  };
  const [problem] = understood([arc(0, 2, "long"), arc(1.5, 1.2, "short")]).problems;
  expect(problem).toMatchObject({ code: "pattern-partly-doubled", path: "short", other: "long" });
  // Closed form: 100 mm · (2 − 1.5).
  expect(Math.abs((problem as { doubledMm: number }).doubledMm - 50)).toBeLessThan(0.5);
});
