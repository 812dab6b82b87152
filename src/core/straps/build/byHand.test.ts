// Straps reckoned by hand, without thickness where that makes it plain: lines, lengths, pieces, what is bought.
import { expect, test } from "vitest";
import { MATERIALS, of, strap } from "../../../../tests/tools/strapByHand.ts";
import { ringBox } from "../../geometry/box.ts";
import type { ConstructionId, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

const linesOf = (result: StrapResult, role: string, piece = 0): number[] =>
  result.pieces[piece]!.lines.filter((line) => line.role === role)
    .map(({ contour }) => contour.vertices[1]!)
    .sort((a, b) => a - b);
const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

test("on the flat strip of a strap in four: folds at the quarters, tape in from its edges, stitches on its face", () => {
  const result = strap("fourfold", "flat", {});
  expect(linesOf(result, "fold")).toEqual(near([40, 80, 120]));
  expect(linesOf(result, "tape")).toEqual(near([3.175, 160 - 3.175]));
  // The face is the second quarter.
  expect(linesOf(result, "stitch")).toEqual(near([40 + 3.175, 80 - 3.175]));
  for (const { contour } of result.pieces[0]!.lines)
    expect([contour.vertices[0], contour.vertices[3], contour.vertices[4]]).toEqual([0, 700, contour.vertices[1]]);
  expect(ringBox(result.pieces[0]!.outline.outer)).toEqual({
    minX: 0,
    minY: 0,
    maxX: 700,
    maxY: expect.closeTo(160, 9),
  });
  // A strip no wider than four such margins is not taped on paper.
  expect(linesOf(strap("fourfold", "flat", { width: { kind: "finished", mm: 3.2 } }), "tape")).toHaveLength(2);
  expect(linesOf(strap("fourfold", "flat", { width: { kind: "finished", mm: 3.1 } }), "tape")).toEqual([]);
  expect(linesOf(strap("fourfold", "cloth", {}), "tape")).toEqual([]);
});

test("in three, with the visible edge held back: both rows lie on the face, the left one past that edge", () => {
  const result = strap("three-raw", "flat", { folds: { setback: 5 } });
  expect(result.cutWidth).toBeCloseTo(3 * 40 - 5, 9);
  expect(linesOf(result, "fold")).toEqual(near([40, 80]));
  expect(linesOf(result, "stitch")).toEqual(near([40 + 5 + 3.175, 80 - 3.175]));
});

test("a tube's seam runs along both raw edges; rows of topstitching keep to its face", () => {
  const result = strap("tube", "flat", { folds: { seamAllowance: 6 } });
  expect(result.cutWidth).toBeCloseTo(92, 9);
  expect(linesOf(result, "stitch")).toEqual([
    ...near([6]),
    expect.closeTo(86 - 40 + 3.175, 6),
    expect.closeTo(86 - 3.175, 6),
    ...near([86]),
  ]);
});

test("layers bonded oversize: what is trimmed is marked, and everything is drawn that much farther in", () => {
  const result = strap("bonded", "flat", { folds: { trim: 3, layers: 1 } });
  expect(result.cutWidth).toBeCloseTo(46, 9);
  expect(linesOf(result, "mark")).toEqual(near([3, 43]));
  expect(ringBox(result.pieces[0]!.outline.outer).maxY).toBeCloseTo(46, 9);
  expect(linesOf(result, "stitch")).toEqual(near([6.175, 39.825]));
  expect(linesOf(strap("bonded", "flat", {}), "mark")).toEqual([]);
  expect(result.nominalWidth).toBeCloseTo(46, 9);
  // Cut no wider than what is trimmed, nothing is left.
  const none = buildStrap(
    {
      ...{ id: "s", name: "s", construction: "bonded", count: 1, materials: { outer: "flat" } },
      ...{ width: { kind: "cut", mm: 5 }, length: { kind: "finished", mm: 700 }, folds: { trim: 3 } },
    },
    MATERIALS,
  );
  expect(none.ok ? [] : none.problems).toMatchObject([{ code: "strap-strip-too-narrow", cutMm: 5, leastMm: 6 }]);
});

test("a row of stitches that lies in a fold is not drawn on the flat strip", () => {
  // Hard creases of 1 mm: the face is flat from 1 mm in on its left, and from 2 mm in where it goes round both flaps.
  const rows = (fromEdge: number) => linesOf(strap("fourfold", "vinyl", { stitch: { fromEdge } }), "stitch").length;
  expect([rows(0.6), rows(0.9), rows(1.1), rows(1.9), rows(2.1)]).toEqual([0, 0, 1, 1, 2]);
});

test("a cord's cover is stitched as far in from both edges as its allowance", () => {
  const result = strap("corded", "flat", { core: { cordDiameter: 10 }, folds: { seamAllowance: 7 } });
  expect(result.cutWidth).toBeCloseTo(10 * Math.PI + 14, 9);
  expect(linesOf(result, "stitch")).toEqual(near([7, 10 * Math.PI + 7]));
  for (const { contour } of result.pieces[0]!.lines) {
    const [x0, y0, , x1, y1] = contour.vertices;
    expect([x0, x1, y1]).toEqual([0, result.lengths.cut, y0]);
  }
  expect(result).toMatchObject({ setback: 0, foldLines: [], thickness: 10, across: null });
  // Cut to a width, what is left over goes to both allowances; by the trade's rule the cloth's own thickness is missing.
  const cut = strap("corded", "hide", { core: { cordDiameter: 10 }, width: { kind: "cut", mm: 60 } });
  expect(linesOf(cut, "stitch")[0]).toBeCloseTo((60 - Math.PI * 11.5) / 2, 9);
  const trade = strap("corded", "hide", {
    core: { cordDiameter: 10 },
    folds: { seamAllowance: 7 },
    cutBy: "trade",
  });
  expect(trade.cutWidth).toBeCloseTo(10 * Math.PI + 14, 9);
  expect(trade.nominalWidth).toBeCloseTo(10 * Math.PI + 14, 9);
  expect(strap("corded", "hide", { core: { cordDiameter: 10 } }).finishedWidth).toBe(13);
});

test("a cord's cover with less than 1 mm beside its seam is refused, and told from which width on it is not", () => {
  const least = 10 * Math.PI + 2;
  const cut = (mm: number) =>
    buildStrap(
      {
        ...{ id: "s", name: "s", construction: "corded", count: 1, materials: { outer: "flat" } },
        ...{ core: { cordDiameter: 10 }, width: { kind: "cut", mm }, length: { kind: "finished", mm: 700 } },
      },
      MATERIALS,
    );
  expect(cut(least + 1e-6).ok).toBe(true);
  const narrow = cut(least - 1e-3);
  expect(narrow.ok ? [] : narrow.problems).toMatchObject([
    { code: "strap-strip-too-narrow", cutMm: expect.closeTo(least - 1e-3, 9), leastMm: expect.closeTo(least, 9) },
  ]);
});

test("its finished width may be a cord's to within a millimetre, a webbing's to a millimetre and the cloth", () => {
  const codes = (wish: Partial<StrapWish>, construction: ConstructionId, outer: string) => {
    const built = buildStrap(
      {
        ...{ id: "s", name: "s", construction, count: 1, materials: { outer } },
        length: { kind: "finished", mm: 700 },
        ...wish,
      },
      MATERIALS,
    );
    return built.ok ? [] : built.problems.map(({ code }) => code);
  };
  const cord = (mm: number) =>
    codes({ core: { cordDiameter: 10 }, width: { kind: "finished", mm } }, "corded", "flat");
  expect([...cord(9), ...cord(11)]).toEqual([]);
  expect([cord(8.9), cord(11.1)]).toEqual([["strap-width-conflict"], ["strap-width-conflict"]]);
  const webbing = (mm: number) =>
    codes({ core: { webbingWidth: 38 }, width: { kind: "finished", mm } }, "webbing-overlay", "cloth");
  expect([...webbing(36), ...webbing(40)]).toEqual([]);
  expect([webbing(35.9), webbing(40.1)]).toEqual([["strap-width-conflict"], ["strap-width-conflict"]]);
});

test("tape, paint, webbing, cord and thread for three straps, both parts of each", () => {
  const three = { count: 3, length: { kind: "finished", mm: 1000 } } as const;
  const bought = (result: StrapResult) => new Map(result.consumables.map(({ kind, mm }) => [kind, mm]));
  expect(bought(strap("fourfold", "vinyl", three)).get("tape")).toBeCloseTo(2 * 3000, 9);
  expect(bought(strap("two-layer", "vinyl", three)).get("tape")).toBeCloseTo(6 * 3000, 9);
  expect(bought(strap("webbing-overlay", "vinyl", three)).get("tape")).toBeCloseTo(4 * 3000, 9);
  expect(bought(strap("three-raw", "vinyl", { ...three, edgeFinish: "paint" })).get("edge-paint")).toBeCloseTo(
    3000,
    9,
  );
  expect(bought(strap("bonded", "vinyl", { ...three, edgeFinish: "paint" })).get("edge-paint")).toBeCloseTo(
    6000,
    9,
  );
  expect(bought(strap("bonded", "vinyl", { ...three, edgeFinish: "burnish" })).has("edge-paint")).toBe(false);
  expect(bought(strap("webbing-overlay", "vinyl", three)).get("webbing")).toBeCloseTo(3000 + 3 * 50.8, 9);
  const handle = { ...three, core: { cordDiameter: 8 } };
  expect(bought(strap("corded", "hide", handle)).get("cord")).toBeCloseTo(3 * (1000 - 203.2), 9);
  const parts = strap("fourfold", "vinyl", { ...three, adjustment: "two-part", shortPart: 200 });
  expect(bought(parts).get("tape")).toBeCloseTo(2 * 3 * (200 + parts.lengths.cut), 9);
  // Seam of a tube: two layers of 1 mm at 2.5 mm a stitch, 2 + 2 · 2 / 2.5 times its length, and 15 % (common practice).
  const tube = strap("tube", "vinyl", three);
  expect(bought(tube).get("construction-thread")).toBeCloseTo(3 * 1070 * (2 + 4 / 2.5) * 1.15, 6);
  // Topstitching of thick cloth is 3.5 mm a stitch, of woven cloth and felt 3 mm.
  expect(bought(strap("fourfold", "vinyl", three)).get("topstitch-thread")).toBeCloseTo(
    6000 * (2 + 8 / 3.5) * 1.15,
    6,
  );
  expect(bought(strap("fourfold", "cloth", three)).get("topstitch-thread")).toBeCloseTo(
    6000 * (2 + 4 / 3) * 1.15,
    6,
  );
  const felt = [of("felt", "felt", 0.5)];
  expect(bought(strap("fourfold", "felt", three, felt)).get("topstitch-thread")).toBeCloseTo(
    6000 * (2 + 4 / 3) * 1.15,
    6,
  );
  const codes = (type: 301 | 101) =>
    strap("tube", "vinyl", { stitch: { type } }).consumables.map(({ code }) => code);
  expect(codes(301)).toEqual(["topstitch-thread-bobbin", "construction-thread-bobbin"]);
  expect(codes(101)).toEqual(["topstitch-thread", "construction-thread"]);
});

test("rows of stitching move in where a strap is too narrow for the usual eighth of an inch, 2 mm apart at least", () => {
  const rows = (mm: number, stitch: StrapWish["stitch"] = {}) => {
    const built = buildStrap(
      {
        ...{ id: "s", name: "s", construction: "fourfold", count: 1, materials: { outer: "flat" } },
        ...{ width: { kind: "finished", mm }, length: { kind: "finished", mm: 700 }, stitch },
      },
      MATERIALS,
    );
    return built.ok ? built.value.rows.map((row) => row.mm) : built.problems[0];
  };
  expect(rows(8.35)).toEqual([3.175, 3.175]);
  expect(rows(8.3)).toEqual(near([2.075, 2.075]));
  expect(rows(20, { fromEdge: 9 })).toEqual([9, 9]);
  expect(rows(20, { fromEdge: 9.1 })).toMatchObject({ code: "strap-stitch-off", fromEdgeMm: 9.1, mostMm: 9 });
  expect(rows(20, { fromEdge: 4, extraRows: 2 })).toEqual([4, 4, 8, 12]);
  expect(rows(20, { fromEdge: 4, extraRows: 5 })).toEqual([4, 4, 6, 8, 10, 12, 14]);
  expect(rows(20, { fromEdge: 4, extraRows: 6 })).toMatchObject({
    code: "strap-choice-out-of-range",
    value: 6,
    least: 0,
    most: 5,
  });
});

test("ids and names of pieces tell role, part and number", () => {
  const stock = [of("vinyl", "vinyl", 1, { longestPiece: 900, usableWidth: 700 }), ...MATERIALS.slice(2)];
  const said = (more: Partial<StrapWish>) =>
    strap("two-layer", "vinyl", more, stock).pieces.map(({ id, name, count }) => `${id}: ${name} × ${count}`);
  expect(said({})).toEqual(["s-outer: Strap, outer × 1", "s-facing: Strap, facing × 1"]);
  const parts = strap("fourfold", "vinyl", { adjustment: "two-part", length: { kind: "worn", mm: 1000 } }, stock);
  expect(parts.pieces.map(({ id }) => id)).toEqual(["s-outer-short", "s-outer-long"]);
  const joined = strap(
    "fourfold",
    "vinyl",
    { count: 2, length: { kind: "finished", mm: 1500 }, grain: "lengthwise", joins: { allowed: true } },
    stock,
  );
  expect(joined.pieces.map(({ id, count, joined: isJoined }) => [id, count, isJoined])).toEqual([
    ["s-outer-1", 2, true],
    ["s-outer-2", 2, true],
  ]);
  const lengths = joined.pieces.map(({ outline }) => ringBox(outline.outer).maxX);
  // Vinyl is skived and lapped by 15 mm.
  expect(lengths[0]! + lengths[1]!).toBeCloseTo(1515, 9);
  expect(
    strap("fourfold", "vinyl", { length: { kind: "finished", mm: 900 } }, stock).pieces[0]!.joined,
  ).toBeUndefined();
});
