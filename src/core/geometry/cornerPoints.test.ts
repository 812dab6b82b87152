// The points round one corner, by where they lie: beside each edge by its width. No formula of the source is used.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type CornerEnd, cornerEnds, type MovedCorner, type Vector } from "./cornerEnds.ts";

const RIGHT = Math.PI / 180;
/** A corner at (5, 7) that is come to along x and left after a turn of so many degrees, counter-clockwise. */
const corner = (turnDeg: number, before: number, after: number, bent = ""): MovedCorner => ({
  at: [5, 7],
  from: [1, 0],
  to: [Math.cos(turnDeg * RIGHT), Math.sin(turnDeg * RIGHT)],
  before,
  after,
  bentBefore: bent.includes("before"),
  bentAfter: bent.includes("after"),
});
/** How far to the right of each edge's line a point lies, and how far on along it. */
const beside = ({ at, from, to }: MovedCorner, [x, y]: Vector) => {
  const off = ([dx, dy]: Vector): number => (x - at[0]) * dy - (y - at[1]) * dx;
  const on = ([dx, dy]: Vector): number => (x - at[0]) * dx + (y - at[1]) * dy;
  return { before: off(from), after: off(to), onBefore: on(from), onAfter: on(to) };
};
const MITRED: CornerEnd = { kind: "mitred" };

test("a mitre lies beside both edges by their widths, outward and inward, at corners that open and that close", () => {
  for (const turn of [-120, -60, -5, 5, 30, 90, 110])
    for (const [before, after] of [
      [4, 4],
      [4, 7],
      [0, 3],
      [3, 0],
      [-4, -4],
      [-2, -5],
    ] as const) {
      const at = corner(turn, before, after);
      const points = cornerEnds(at, MITRED)!;
      // Half of these are blunted where one width is far wider: there is a test of that below.
      if (points.length === 2) continue;
      expect(points).toHaveLength(1);
      expect(beside(at, points[0]!)).toMatchObject({
        before: expect.closeTo(before, 9),
        after: expect.closeTo(after, 9),
      });
    }
});

test("edges that run straight on have no corner, and a step where their widths differ", () => {
  expect(cornerEnds(corner(0, 4, 4), MITRED)).toEqual([[5, 3]]);
  expect(cornerEnds(corner(0, 4, 6), MITRED)).toEqual([
    [5, 3],
    [5, 1],
  ]);
  expect(cornerEnds(corner(0, 4, 6, "before after"), MITRED)).toHaveLength(2);
  expect(cornerEnds(corner(0.003, 4, 6), MITRED)).toHaveLength(2);
  expect(cornerEnds(corner(-0.003, 4, 4), MITRED)).toHaveLength(1);
});

test("a mitre reaches three widths and no farther; beyond, it is cut across its middle one width out", () => {
  // w / cos(turn / 2) is three widths at a turn of 141.06 degrees.
  const [sharp, sharper] = [corner(141, 2, 2), corner(141.2, 2, 2)];
  const [tip] = cornerEnds(sharp, MITRED)!;
  expect(Math.hypot(tip![0] - 5, tip![1] - 7)).toBeGreaterThan(5.98);
  const points = cornerEnds(sharper, MITRED)!;
  expect(points).toHaveLength(2);
  const middle = [Math.cos((141.2 / 2 - 90) * RIGHT), Math.sin((141.2 / 2 - 90) * RIGHT)] as const;
  for (const [x, y] of points) expect((x - 5) * middle[0] + (y - 7) * middle[1]).toBeCloseTo(2, 9);
  expect([beside(sharper, points[0]!).before, beside(sharper, points[1]!).after]).toEqual([
    expect.closeTo(2, 9),
    expect.closeTo(2, 9),
  ]);
});

test("blunted as far out as is said, else one width: both ends on their own edge, square to the way to the tip", () => {
  for (const [before, after, reach] of [
    [4, 4, undefined],
    [4, 6, undefined],
    [6, 4, 6.5],
    [4, 4, 3],
  ] as const) {
    const at = corner(100, before, after);
    const [tip] = cornerEnds(at, MITRED)!;
    const far = Math.hypot(tip![0] - 5, tip![1] - 7);
    const points = cornerEnds(at, { kind: "blunted", ...(reach && { reach }) })!;
    expect(points).toHaveLength(2);
    expect(beside(at, points[0]!).before).toBeCloseTo(before, 9);
    expect(beside(at, points[1]!).after).toBeCloseTo(after, 9);
    for (const [x, y] of points)
      expect(((x - 5) * (tip![0] - 5) + (y - 7) * (tip![1] - 7)) / far).toBeCloseTo(
        reach ?? Math.max(before, after),
        9,
      );
    expect(cornerEnds(at, { kind: "blunted", reach: far + 1 })).toEqual([tip]);
    expect(cornerEnds(at, { kind: "blunted", reach: far })).toEqual([tip]);
  }
  // The tip of a gentle corner from wide to narrow lies behind the corner: a cut would miss one of the edges.
  for (const [before, after] of [
    [10, 5],
    [5, 10],
  ] as const) {
    const gentle = corner(30, before, after);
    expect(cornerEnds(gentle, { kind: "blunted", reach: 8 })).toEqual(cornerEnds(gentle, MITRED));
  }
});

test("square to one edge: as far on as the other's allowance is wide, where the corner turns by more than that", () => {
  for (const [before, after] of [
    [5, 5],
    [5, 8],
    [8, 5],
  ] as const) {
    const at = corner(130, before, after);
    const [first, second] = cornerEnds(at, { kind: "square", to: "before" })!;
    expect(beside(at, first!)).toMatchObject({
      before: expect.closeTo(before, 9),
      onBefore: expect.closeTo(after, 9),
    });
    expect(beside(at, second!)).toMatchObject({
      after: expect.closeTo(after, 9),
      onBefore: expect.closeTo(after, 9),
    });
    const [third, last] = cornerEnds(at, { kind: "square", to: "after" })!;
    expect(beside(at, third!)).toMatchObject({
      before: expect.closeTo(before, 9),
      onAfter: expect.closeTo(-before, 9),
    });
    expect(beside(at, last!)).toMatchObject({
      after: expect.closeTo(after, 9),
      onAfter: expect.closeTo(-before, 9),
    });
  }
  for (const turn of [60, 90])
    for (const to of ["before", "after"] as const)
      expect(cornerEnds(corner(turn, 5, 6), { kind: "square", to })).toEqual(
        cornerEnds(corner(turn, 5, 6), MITRED),
      );
});

test("a folded allowance mirrors the other edge's cut line across its fold; an arc cannot be folded", () => {
  for (const turn of [50, 75, 110, 130]) {
    const at = corner(turn, 6, 5);
    const [outer, inner] = cornerEnds(at, { kind: "folded", over: "before" })!;
    expect(beside(at, outer!).before).toBeCloseTo(6, 9);
    expect(beside(at, inner!)).toMatchObject({ before: expect.closeTo(0, 9), after: expect.closeTo(5, 9) });
    // Mirrored across the fold, which lies along x at 7.
    expect(beside(at, [outer![0], 14 - outer![1]]).after).toBeCloseTo(5, 9);
    expect(cornerEnds(corner(turn, 6, 5, "before"), { kind: "folded", over: "before" })!.slice(1)).toEqual(
      cornerEnds(at, MITRED),
    );
  }
  const square = cornerEnds(corner(90, 6, 3), { kind: "folded", over: "before" })!;
  expect(square).toEqual([[expect.closeTo(8, 9), expect.closeTo(1, 9)]]);
});

test("arcs end beside their corner, and a straight run goes on from there to the tip", () => {
  const both = corner(70, 4, 4, "before after");
  const [first, tip, last] = cornerEnds(both, MITRED)!;
  expect(first).toEqual([5, 3]);
  expect(beside(both, tip!)).toMatchObject({ before: expect.closeTo(4, 9), after: expect.closeTo(4, 9) });
  expect(beside(both, last!)).toMatchObject({ after: expect.closeTo(4, 9), onAfter: expect.closeTo(0, 9) });
  expect(cornerEnds(corner(70, 4, 4, "before"), MITRED)).toHaveLength(2);
  expect(cornerEnds(corner(70, 4, 4, "after"), MITRED)).toHaveLength(2);
  // From wide to narrow the arc has passed the tip: it steps back square to itself, to where the other side passes.
  const wide = corner(30, 10, 4, "before");
  const [end, step] = cornerEnds(wide, MITRED)!;
  expect(end).toEqual([5, -3]);
  expect(beside(wide, step!)).toMatchObject({ onBefore: expect.closeTo(0, 9), after: expect.closeTo(4, 9) });
  const narrow = corner(30, 4, 10, "after");
  const points = cornerEnds(narrow, MITRED)!;
  expect(points).toHaveLength(2);
  expect(beside(narrow, points[0]!)).toMatchObject({ onAfter: expect.closeTo(0, 9), before: expect.closeTo(4, 9) });
  // A corner that closes would cut arcs back; inward too, from one width to a far smaller one.
  for (const bent of ["before", "after", "before after"]) {
    expect(cornerEnds(corner(-40, 4, 4, bent), MITRED)).toBeNull();
    expect(cornerEnds(corner(40, -4, -4, bent), MITRED)).toBeNull();
    expect(cornerEnds(corner(-40, 0, 0, bent), MITRED)).toEqual([[5, 7]]);
    expect(cornerEnds(corner(-40, -4, -4, bent), MITRED)).not.toBeNull();
  }
  expect(cornerEnds(corner(-30, -10, -4, "before"), MITRED)).toBeNull();
  expect(cornerEnds(corner(-30, -4, -10, "after"), MITRED)).toBeNull();
});

test("inward and where a corner closes, every end is a plain mitre", () => {
  const ends: CornerEnd[] = [
    { kind: "blunted" },
    { kind: "square", to: "before" },
    { kind: "square", to: "after" },
    { kind: "folded", over: "before" },
    { kind: "folded", over: "after" },
  ];
  for (const end of ends)
    for (const at of [corner(-130, 5, 4), corner(-60, 5, 4), corner(130, -5, -4), corner(-130, -5, -4)])
      expect(cornerEnds(at, end), end.kind).toEqual(cornerEnds(at, MITRED));
});

const kinds = fc.constantFrom<CornerEnd>(
  MITRED,
  { kind: "blunted" },
  { kind: "blunted", reach: 3 },
  { kind: "square", to: "before" },
  { kind: "square", to: "after" },
  { kind: "folded", over: "before" },
  { kind: "folded", over: "after" },
);
const widths = fc.constantFrom(0, 2, 4, 9);

test("walked the other way in a mirror, and at a hundredth of the size, a corner has the same ends", () => {
  const close = (points: readonly Vector[] | null, scale = 1) =>
    points?.map(([x, y]) => [expect.closeTo(x * scale, 9), expect.closeTo(y * scale, 9)]) ?? null;
  fc.assert(
    fc.property(
      fc.integer({ min: -170, max: 170 }),
      widths,
      widths,
      fc.constantFrom("", "before", "after", "before after"),
      kinds,
      (turn, before, after, bent, end) => {
        fc.pre(before + after > 0 && turn !== 0);
        const one = { ...corner(turn, before, after, bent), at: [0, 0] as Vector };
        const points = cornerEnds(one, end);
        const small = end.kind === "blunted" && end.reach ? { ...end, reach: end.reach / 100 } : end;
        const tiny = cornerEnds({ ...one, before: before / 100, after: after / 100 }, small);
        expect(tiny?.map(([x, y]) => [100 * x, 100 * y]) ?? null).toEqual(close(points));
        const other = (side: "before" | "after") => (side === "before" ? "after" : "before");
        const turned: CornerEnd =
          end.kind === "square"
            ? { ...end, to: other(end.to) }
            : end.kind === "folded"
              ? { ...end, over: other(end.over) }
              : end;
        const mirrored = cornerEnds(
          {
            at: [0, 0],
            from: [-one.to[0], one.to[1]],
            to: [-one.from[0], one.from[1]],
            before: after,
            after: before,
            bentBefore: one.bentAfter,
            bentAfter: one.bentBefore,
          },
          turned,
        );
        const back = mirrored?.map(([x, y]): Vector => [x, -y]).reverse() ?? null;
        expect(back).toEqual(close(points));
      },
    ),
    { numRuns: 400, endOnFailure: true },
  );
});
