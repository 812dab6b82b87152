// The checker on patterned cloth: places that can be worked out by eye.
import { describe, expect, test } from "vitest";
import {
  laidCopies,
  ROLL,
  type SamplePlace,
  samplePiece,
  sampleProblem,
} from "../../../../tests/tools/checkerSamples.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { LayMatch, LayPattern, LayProblem, Stock } from "../problem/layProblem.ts";
import { checkPattern } from "./checkPattern.ts";

/** Places along the cloth, and along and across it by turns. */
const xs = (...all: readonly number[]): SamplePlace[] => all.map((x) => ({ x }));
const xy = (...all: readonly number[]): SamplePlace[] =>
  all.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: all[i + 1]! }] : []));

describe("on the pattern", () => {
  const MATCH: LayMatch = { group: "g", x: 0, y: 0, senseX: 1, senseY: 1, along: true, across: false };
  const STRIPES: LayPattern = {
    ...{ along: 40, across: null, firstAlong: 0, firstAcross: 0, halfDrop: false, symmetric: false },
    tolerance: 1,
  };
  const found = (
    places: readonly SamplePlace[],
    pattern: Partial<LayPattern> = {},
    match: Partial<LayMatch> = {},
    more: Partial<LayProblem> = {},
  ) => {
    const pieces = [samplePiece("p", { match: { ...MATCH, ...match } }), samplePiece("plain")];
    return checkPattern(
      sampleProblem(pieces, { pattern: { ...STRIPES, ...pattern }, ...more }),
      laidCopies(places),
    );
  };
  const off = (copy: number, other: number | null, offMm: number, axis: "along" | "across" = "along") => ({
    ...{ code: "plan-off-pattern", path: `placements[${copy}]`, pieceId: "p", copy, axis, mostMm: 1 },
    offMm: expect.closeTo(offMm, 9),
    ...(other === null ? {} : { other: { pieceId: "p", copy: other } }),
  });
  const against = (copy: number, other = 0) => ({
    ...{ code: "plan-against-pattern", path: `placements[${copy}]`, pieceId: "p", copy },
    other: { pieceId: "p", copy: other },
  });

  test("two places are whole repeats apart, to the tolerance and its rounding", () => {
    for (const x of [3, 43, -37, 83, 44, 42, 4]) expect(found([{ x: 3 }, { x }]), `${x}`).toEqual([]);
    expect(found(xs(3, 44.1))).toEqual([off(1, 0, 1.1)]);
    expect(found(xs(3, 41.9))).toEqual([off(1, 0, 1.1)]);
    expect(found(xs(3, 23))).toEqual([off(1, 0, 20)]);
    // The last number that is near enough.
    expect(found(xs(0, 1 + 1e-5))).toEqual([]);
    expect(found(xs(0, 1 + 2e-5))).toEqual([off(1, 0, 1.00002)]);
  });

  test("no two farther apart than the tolerance, each told with the outermost before it", () => {
    expect(found(xs(0, 0.8, -0.8))).toEqual([off(2, 1, 1.6)]);
    expect(found(xs(0, -0.8, 0.8))).toEqual([off(2, 1, 1.6)]);
    expect(found(xs(0, 0.9, 0.5, -0.2))).toEqual([off(3, 1, 1.1)]);
    expect(found(xs(0, -0.9, -0.5, 0.2))).toEqual([off(3, 1, 1.1)]);
    // Of several as far out the first is named; what is off itself is no measure for the others.
    expect(found(xs(0, 0.75, 40.75, -0.5))).toEqual([off(3, 1, 1.25)]);
    expect(found(xs(0, -0.75, 39.25, 0.5))).toEqual([off(3, 1, 1.25)]);
    expect(found(xs(0, -0.6, 0.3, -0.75))).toEqual([off(3, 2, 1.05)]);
    expect(found(xs(0, 5, 0.5))).toEqual([off(1, 0, 5)]);
  });

  test("what repeats across is looked at across, where it is matched; the other way is free", () => {
    const checks = { along: 40, across: 30 };
    const both = { along: true, across: true };
    expect(found(xy(3, 2, 43, 32), checks, both)).toEqual([]);
    expect(found(xy(3, 2, 43, 12), checks, both)).toEqual([off(1, 0, 10, "across")]);
    expect(found(xy(3, 2, 43, 12), checks)).toEqual([]);
    expect(found(xy(3, 2, 8, 32), checks, { along: false, across: true })).toEqual([]);
    // Stripes that run the other way, although the match would ask for both.
    expect(found(xy(3, 2, 8, 32), { along: null, across: 30 }, both)).toEqual([]);
    expect(found(xy(3, 2, 43, 7), {}, both)).toEqual([]);
  });

  test("groups do not mind each other, nor what is not matched, nor cloth without a pattern", () => {
    const others = [{ x: 0 }, { x: 7, pieceId: "plain" }, { x: 11, pieceId: "q" }];
    const pieces = [
      samplePiece("p", { match: MATCH }),
      samplePiece("q", { match: { ...MATCH, group: "h" } }),
      samplePiece("plain"),
    ];
    expect(checkPattern(sampleProblem(pieces, { pattern: STRIPES }), laidCopies(others))).toEqual([]);
    const one = [samplePiece("p", { match: MATCH }), samplePiece("q", { match: MATCH })];
    expect(checkPattern(sampleProblem(one, { pattern: STRIPES }), laidCopies(others))).toMatchObject([
      { offMm: 11 },
    ]);
    expect(checkPattern(sampleProblem(one, {}), laidCopies(others))).toEqual([]);
  });

  test("the place that is matched turns and turns over with its piece", () => {
    const match = { x: 4, y: 7, senseX: -1, senseY: -1 } as const;
    // Its places: 4 onward; turned over 4 back; turned half 4 back; turned over and half 4 onward.
    const symmetric = { symmetric: true };
    const at = (x: number, turnDeg: number, mirrored: boolean) =>
      found([{ x: 0 }, { x, turnDeg, mirrored }], symmetric, match);
    // Read backwards, the first lies 36 from a line the other way; one read onward lies as far before the line.
    expect(at(40, 0, false)).toEqual([]);
    expect(at(0, 0, true)).toEqual([]);
    expect(at(0, 180, false)).toEqual([]);
    expect(at(40, 180, true)).toEqual([]);
    expect(at(8, 0, true)).toEqual([off(1, 0, 8)]);
    expect(at(8, 180, false)).toEqual([off(1, 0, 8)]);
    expect(at(8, 180, true)).toEqual([off(1, 0, 8)]);
    const across = { along: null, across: 30, symmetric: true };
    const up = (y: number, turnDeg: number, mirrored: boolean) =>
      found([{}, { y, turnDeg, mirrored }], across, { ...match, along: false, across: true });
    expect(up(30, 0, true)).toEqual([]);
    expect(up(0, 180, false)).toEqual([]);
    expect(up(0, 180, true)).toEqual([]);
    expect(up(5, 0, true)).toEqual([off(1, 0, 5, "across")]);
    expect(up(5, 180, false)).toEqual([off(1, 0, 5, "across")]);
  });

  test("pieces turned a quarter lie on the pattern with the rest that are, by their other side", () => {
    const match = { x: 4, y: 7 };
    // Turned a quarter on, the place lies 7 before the piece and 4 up; a quarter back, 7 behind it and 4 down.
    const quarter = (x: number, turnDeg: number, more: Partial<SamplePlace> = {}) => ({ x, turnDeg, ...more });
    expect(found([quarter(7, 90), quarter(47, 90)], {}, match)).toEqual([]);
    expect(found([quarter(7, 90), quarter(12, 90)], {}, match)).toEqual([off(1, 0, 5)]);
    expect(found([quarter(7, 90), quarter(33, -90)], { symmetric: true }, match)).toEqual([]);
    expect(found([quarter(7, 90), quarter(28, -90)], { symmetric: true }, match)).toEqual([off(1, 0, 5)]);
    expect(found([quarter(7, 90), quarter(33, -90)], {}, match)).toEqual([against(1)]);
    expect(found([{}, quarter(11, 90)], {}, match)).toContainEqual(against(1));
    expect(found([{}, quarter(11, 90)], { symmetric: true }, match)).toContainEqual(against(1));
    // Turned over first, the place lies 7 before the piece and 4 down; which side of the seam counts for across.
    const over = { mirrored: true };
    expect(found([quarter(7, 90), quarter(47, 90, over)], {}, match)).toEqual([]);
    const across = [
      { along: null, across: 30 },
      { ...match, along: false, across: true },
    ] as const;
    expect(found([quarter(0, 90), quarter(0, 90, { y: 30 })], ...across)).toEqual([]);
    expect(found([quarter(0, 90), quarter(0, 90, { y: 5 })], ...across)).toEqual([off(1, 0, 5, "across")]);
    expect(found([quarter(0, 90), quarter(0, 90, { ...over, y: 30 })], ...across)).toEqual([against(1)]);
  });

  test("where the pattern has a top all are read the same way; over a seam the other way is the same", () => {
    expect(found([{ x: 3 }, { x: 37, turnDeg: 180 }])).toEqual([against(1)]);
    expect(found([{ x: 3 }, { x: 37, turnDeg: 180 }], { symmetric: true })).toEqual([]);
    expect(found([{ x: 3 }, { x: 38, turnDeg: 180 }, { x: 5 }], { symmetric: true })).toEqual([off(2, 1, 3)]);
    expect(found([{ x: 3 }, { x: 37, mirrored: true }])).toEqual([against(1)]);
    const across = { along: null, across: 30 };
    // A mirror image in x is as good as the piece for what repeats across.
    expect(found([{ y: 3 }, { y: 33, mirrored: true }], across, { along: false, across: true })).toEqual([]);
    expect(found([{ y: 3 }, { y: 27, turnDeg: 180 }], across, { along: false, across: true })).toEqual([
      against(1),
    ]);
    // Nothing matched that way, or nothing that repeats that way: either will do.
    expect(found([{ y: 3 }, { y: 33, mirrored: true }], { across: 30 }, { along: false, across: true })).toEqual(
      [],
    );
    expect(found([{ y: 3 }, { y: 33, mirrored: true }], across, { along: true, across: true })).toEqual([]);
    const pieces = [samplePiece("p", { match: MATCH }), samplePiece("q", { match: { ...MATCH, senseX: -1 } })];
    const seam = laidCopies([{ x: 3 }, { x: 37, pieceId: "q" }]);
    expect(checkPattern(sampleProblem(pieces, { pattern: STRIPES }), seam)).toMatchObject([
      { code: "plan-against-pattern" },
    ]);
    const turned = laidCopies([{ x: 3 }, { x: 43, pieceId: "q", mirrored: true }]);
    expect(checkPattern(sampleProblem(pieces, { pattern: STRIPES }), turned)).toEqual([]);
  });

  test("the place that is matched lies where its piece puts it, however that is turned", () => {
    // At (4, 7) of its piece, and 4 and 7 lie on either side of it as it turns; read backwards, so does the phase.
    const both = [
      { along: 40, across: 30, symmetric: true },
      { x: 4, y: 7, along: true, across: true },
    ] as const;
    for (const [turnDeg, mirrored, along, across] of [
      [0, false, 14, 27],
      [180, false, -6, -13],
      [0, true, -6, 27],
      [180, true, 14, -13],
      [90, false, -3, 24],
      [270, false, 17, -16],
      [90, true, -3, -16],
      [270, true, 17, 24],
    ] as const) {
      const phases = { g: { along, across } };
      const [isOn] = [found([{ x: 10, y: 20, turnDeg, mirrored }], ...both, { phases })];
      expect(isOn, `${turnDeg} ${mirrored}`).toEqual([]);
    }
  });

  test("motifs dropped by half meet half a repeat along for each column across", () => {
    const dropped = { along: 40, across: 30, halfDrop: true };
    const both = { along: true, across: true };
    for (const [x, y] of [
      [23, 32],
      [-17, 32],
      [3, 62],
      [63, -28],
      [43, 2],
    ] as const)
      expect(
        found(
          [
            { x: 3, y: 2 },
            { x, y },
          ],
          dropped,
          both,
        ),
        `${x} ${y}`,
      ).toEqual([]);
    expect(found(xy(3, 2, 3, 32), dropped, both)).toEqual([off(1, 0, 20)]);
    expect(found(xy(3, 14, 23, 44), dropped, both)).toEqual([]);
    expect(found(xy(3, 2, 23, 62), dropped, both)).toEqual([off(1, 0, 20)]);
    expect(found(xy(3, 2, 23, 27), dropped, both)).toEqual([off(1, 0, 5, "across")]);
    // Both ways count even where a match names one.
    expect(found(xy(3, 2, 23, 27), dropped)).toEqual([off(1, 0, 5, "across")]);
    expect(found(xy(3, 2, 13, 32), dropped, { along: false })).toEqual([off(1, 0, 10)]);
    // Nothing is dropped that does not repeat across, and without a drop a column is as good as the next.
    expect(found(xy(3, 2, 3, 32), { along: 40, halfDrop: true })).toEqual([]);
    expect(found(xy(3, 2, 3, 32), { ...dropped, halfDrop: false }, both)).toEqual([]);
  });

  test("a phase that is fixed holds for every piece by itself", () => {
    const phases = { g: { along: 3, across: null } };
    expect(found(xs(3, 43, 84), {}, {}, { phases })).toEqual([]);
    expect(found(xs(5, 45, 3), {}, {}, { phases })).toEqual([off(0, null, 2), off(1, null, 2)]);
    // Within the tolerance of the phase, each other's distance does not count.
    expect(found(xs(2, 4), {}, {}, { phases })).toEqual([]);
    expect(found(xs(2, 4), {}, {}, { phases: { h: { along: 3, across: null } } })).toEqual([off(1, 0, 2)]);
    expect(found(xs(0, 1 + 1e-5), {}, {}, { phases: { g: { along: 0, across: null } } })).toEqual([]);
    const across = [
      { along: null, across: 30 },
      { along: false, across: true },
    ] as const;
    expect(found([{ y: 32 }], ...across, { phases: { g: { along: null, across: 2 } } })).toEqual([]);
    expect(found([{ y: 35 }], ...across, { phases: { g: { along: null, across: 2 } } })).toEqual([
      off(0, null, 3, "across"),
    ]);
    // Half a repeat counts as met where motifs are dropped only, and dropped they are by columns across.
    const half = { phases };
    expect(found(xs(23), { across: 30 }, {}, half)).toEqual([off(0, null, 20)]);
    expect(found(xs(23), { halfDrop: true }, {}, half)).toEqual([off(0, null, 20)]);
    // Nobody of the group is matched along.
    const none = { along: false, across: true };
    expect(found(xy(9, 2), { across: 30 }, none, { phases: { g: { along: 3, across: 2 } } })).toEqual([]);
    const free = { phases: { g: { along: null, across: null } } };
    expect(found(xs(5, 47), {}, {}, free)).toEqual([off(1, 0, 2)]);
  });

  test("a fixed phase of dropped motifs: by its own column, or by either as long as all agree", () => {
    const dropped = { along: 40, across: 30, halfDrop: true };
    const both = { along: true, across: true };
    const fixed = (places: readonly SamplePlace[], along: number | null, across: number | null) =>
      found(places, dropped, both, { phases: { g: { along, across } } });
    expect(fixed(xy(3, 2, 23, 32), 3, 2)).toEqual([]);
    expect(fixed(xy(3, 32, 23, 2), 3, 2)).toEqual([off(0, null, 20), off(1, null, 20)]);
    for (const y of [2, 32])
      expect(
        fixed(
          [
            { x: 3, y },
            { x: 23, y: y + 30 },
          ],
          3,
          null,
        ),
        `${y}`,
      ).toEqual([]);
    expect(fixed(xy(23, 2, 3, 32), 3, null)).toEqual([]);
    expect(fixed(xy(13, 2, 13, 62), 3, null)).toEqual([off(0, null, 10), off(1, null, 10)]);
    expect(fixed(xy(13, 2), 3, null)).toEqual([off(0, null, 10)]);
    expect(fixed(xy(3, 2, 3, 32), 3, null)).toEqual([off(1, 0, 20)]);
    // Across alone: along they only have to agree.
    expect(fixed(xy(5, 2, 25, 32), null, 2)).toEqual([]);
    expect(fixed(xy(5, 5, 25, 35), null, 2)).toEqual([off(0, null, 3, "across"), off(1, null, 3, "across")]);
  });

  test("lines begin where the pattern says, or the stock; a leftover that does not say takes nothing matched", () => {
    const phases = { g: { along: 3, across: 2 } };
    const checks = { along: 40, across: 30, firstAlong: 10, firstAcross: 20 };
    const both = { along: true, across: true };
    expect(found(xy(13, 22), checks, both, { phases })).toEqual([]);
    expect(found(xy(3, 2), checks, both, { phases })).toEqual([off(0, null, 10), off(0, null, 10, "across")]);
    const other: Stock = { ...ROLL, id: "other", firstLine: [1, 5] };
    expect(found([{ x: 4, y: 7, stock: other }], checks, both, { phases })).toEqual([]);
    const left: Stock = { kind: "remnant", id: "left", outline: solid(rectangleRing(0, 0, 90, 90)), flaws: [] };
    expect(found([{ x: 13, y: 22 }, { stock: left }, { x: 13, y: 22 }], checks, both, { phases })).toEqual([
      { code: "plan-pattern-unknown", path: "placements[1]", pieceId: "p", copy: 1, stockId: "left" },
    ]);
    expect(found([{ x: 4, y: 7, stock: { ...left, firstLine: [1, 5] } }], checks, both, { phases })).toEqual([]);
  });
});
