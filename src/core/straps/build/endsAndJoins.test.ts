// The steps, places under the needle and pieces that ends, tabs and joins bring with them, by hand.
import { expect, test } from "vitest";
import { of, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import { ringBox } from "../../geometry/box.ts";
import {
  CONSTRUCTION_IDS,
  type ConstructionId,
  type EndWish,
  STITCH_TYPES,
  type StrapWish,
} from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

const MATERIALS = [
  of("vinyl", "vinyl", 1, { usableWidth: 1370, longestPiece: 1000 }),
  of("cotton", "woven", 0.3, { usableWidth: 1100, longestPiece: 2000 }),
  of("short", "woven", 0.3, { longestPiece: 600 }),
  of("narrow", "woven", 0.3, { usableWidth: 600 }),
  of("foam", "padding", 5),
];
function strap(
  construction: ConstructionId,
  outer: string,
  more: Wish = {},
  also: Partial<StrapWish> = {},
): StrapResult {
  const built = buildStrap({ ...wish(construction, outer, more), ...also }, MATERIALS);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value;
}
const step = (result: StrapResult, code: string) =>
  result.steps.filter(({ parts }) => (parts as readonly string[]).includes(code)).map(({ lengths }) => lengths);
const note = (result: StrapResult, code: string) => result.warnings.find((one) => one.code === code);

test("ends alike are one step, ends unlike are two, each with its own length", () => {
  const ends = (first: EndWish, second: EndWish) => strap("fourfold", "vinyl", { ends: [first, second] });
  for (const [style, code, name] of [
    ["tucked", "end-tucked", "tucked"],
    ["fold-back", "end-fold-back", "back"],
    ["seam", "end-seam", "seam"],
  ] as const) {
    const of = (allowance: number): EndWish => ({ style, allowance });
    expect(step(ends(of(20), of(20)), code)).toEqual([{ [name]: 20 }]);
    expect(step(ends(of(20), of(30)), code)).toEqual([{ [name]: 20 }, { [name]: 30 }]);
    expect(step(ends(of(20), { style: "raw" }), code)).toEqual([{ [name]: 20 }]);
    expect(step(ends({ style: "raw" }, of(30)), code)).toEqual([{ [name]: 30 }]);
    expect(step(ends({ style: "raw" }, { style: "raw" }), code)).toEqual([]);
  }
});

test("an adjustable strap is threaded, its short part made, a tube's spare trimmed; a fixed one has none of that", () => {
  const codes = (more: Partial<StrapWish>, construction: ConstructionId = "fourfold") =>
    ["end-thread", "end-short-part", "end-spare"].filter(
      (code) => step(strap(construction, "cotton", { length: 1500 }, more), code).length > 0,
    );
  expect(codes({})).toEqual([]);
  expect(codes({ adjustment: "one-piece" })).toEqual(["end-thread"]);
  expect(codes({ adjustment: "two-part" })).toEqual(["end-thread", "end-short-part"]);
  expect(codes({}, "tube")).toEqual(["end-spare"]);
});

test("a tab's legs: what is left of its length once it has gone round the bar, halved; shorter than 19 mm is said", () => {
  // Four layers of 1 mm round a bar of 3 mm, at mid-depth: π (1.5 + 2).
  const tab = (length: number, bar?: number) =>
    strap("tab", "vinyl", { length, ...(bar && { hardware: [{ kind: "ring", innerWidth: 38, bar }] }) });
  expect(step(tab(80), "end-tab")).toEqual([{ leg: expect.closeTo((80 - Math.PI * 3.5) / 2, 9) }]);
  expect(step(tab(80, 6), "end-tab")).toEqual([{ leg: expect.closeTo((80 - Math.PI * 5) / 2, 9) }]);
  const least = 38 + Math.PI * 3.5;
  expect(note(tab(least + 1e-6), "tab-short")).toBeUndefined();
  expect(note(tab(least - 0.1), "tab-short")?.lengths).toEqual({ leg: expect.closeTo(18.95, 9), least: 19 });
  expect(tab(80).needle).toContainEqual({ where: "tab-ring", layers: 8, thickness: 8 });
  const seam = strap("tab", "vinyl", { length: 80, ends: [{ style: "seam" }, { style: "seam" }] });
  expect(step(seam, "end-seam")).toEqual([{ seam: 25.4 }]);
  for (const id of CONSTRUCTION_IDS) {
    if (id === "tab" || id === "corded") continue;
    expect(note(strap(id, "cotton", { length: 30, width: 30 }), "tab-short")).toBeUndefined();
  }
});

test("as long as the stock goes, along the roll or across it, by how its grain may lie", () => {
  const longer = (outer: string, length: number, grain?: "lengthwise" | "crosswise") =>
    note(strap("fourfold", outer, { length, ...(grain && { grain }) }), "longer-than-stock")?.lengths;
  expect(longer("vinyl", 1370)).toBeUndefined();
  expect(longer("vinyl", 1371)).toEqual({ cut: 1371, longest: 1370 });
  expect(longer("vinyl", 1000, "lengthwise")).toBeUndefined();
  expect(longer("vinyl", 1001, "lengthwise")).toEqual({ cut: 1001, longest: 1000 });
  expect(longer("vinyl", 1371, "crosswise")).toEqual({ cut: 1371, longest: 1370 });
  expect(longer("cotton", 2000)).toBeUndefined();
  expect(longer("cotton", 1101, "crosswise")).toEqual({ cut: 1101, longest: 1100 });
  expect(longer("short", 601)).toEqual({ cut: 601, longest: 600 });
  expect(longer("short", 5000, "crosswise")).toBeUndefined();
  // How long the roll is nobody knows: along it there is no end.
  expect(longer("narrow", 5000)).toBeUndefined();
  expect(longer("narrow", 5000, "crosswise")).toEqual({ cut: 5000, longest: 600 });
  const parted = strap("fourfold", "vinyl", { length: 3000, adjustment: "two-part" });
  expect(note(parted, "longer-than-stock-parts")).toBeDefined();
  expect(note(strap("tab", "vinyl", { length: 3000 }), "longer-than-stock-parts")).toBeDefined();
});

test("joins by seam: what each takes, its step, its place under the needle", () => {
  const joined = (outer: string, joins: Omit<NonNullable<StrapWish["joins"]>, "allowed"> = {}) =>
    strap("fourfold", outer, { length: 1800, grain: "lengthwise", joins: { allowed: true, ...joins } });
  const total = (result: StrapResult) =>
    result.pieces.reduce((sum, { outline }) => sum + ringBox(outline.outer).maxX, 0) - 1800;
  const vinyl = joined("vinyl");
  expect([total(vinyl), step(vinyl, "join-lapped").length]).toEqual([expect.closeTo(15, 9), 1]);
  expect(vinyl.steps[1]!.parts).toEqual(["join-lapped"]);
  const straight = joined("vinyl", { seam: "straight", seamAllowance: 8 });
  expect([total(straight), step(straight, "join-straight").length]).toEqual([expect.closeTo(16, 9), 1]);
  expect(straight.needle).toContainEqual({ where: "straight-join", layers: 8, thickness: 8 });
  expect(vinyl.needle.some(({ where }) => where === "straight-join")).toBe(false);
  expect(total(joined("vinyl", { seam: "straight" }))).toBeCloseTo(12.7, 9);
  // Joined at 45° the strip's width is lost; cut so beforehand 2 √2 allowances.
  const diagonal = joined("short", {});
  expect(total(diagonal)).toBeCloseTo((diagonal.pieces.length - 1) * diagonal.cutWidth, 6);
  expect(note(diagonal, "join-loss")?.lengths).toEqual({
    loss: expect.closeTo(diagonal.cutWidth, 9),
    preCut: expect.closeTo(2 * Math.SQRT2 * 6.35, 9),
  });
  expect([note(diagonal, "joined"), note(vinyl, "joined")].every((one) => one !== undefined)).toBe(true);
  expect(note(vinyl, "join-loss")).toBeUndefined();
  expect(diagonal.pieces.map(({ name }) => name)[1]).toBe(`strap, length 2 of ${diagonal.pieces.length}`);
});

test("the roll that a faced strap takes is its outer strips' alone, unless both are of one cloth", () => {
  const roll = (construction: ConstructionId, facing?: string) =>
    strap(construction, "vinyl", { count: 6, length: 900, materials: { outer: "vinyl", facing } }).rollLength!;
  const width = (construction: ConstructionId) => strap(construction, "vinyl", {}).cutWidth;
  // Laid crosswise, one under the other: six strips of the outer cloth, or twelve of one cloth for both.
  expect(roll("two-layer", "cotton")).toBeCloseTo(Math.min(900, 6 * width("two-layer")), 9);
  expect(roll("two-layer")).toBeCloseTo(Math.min(900, 12 * width("two-layer")), 9);
  // A cord's cover is one strip.
  const corded = strap("corded", "vinyl", { width: null, core: { cordDiameter: 8 }, count: 5, length: 700 });
  expect(corded.rollLength).toBeCloseTo(5 * corded.cutWidth, 9);
  expect(roll("bonded", "cotton")).toBeCloseTo(6 * 38, 9);
  expect(roll("bonded")).toBeCloseTo(12 * 38, 9);
});

test("an end of cloth folded back has three thicknesses, however little of it is turned under; vinyl has two", () => {
  const back = (outer: string, allowance: number) =>
    strap("fourfold", outer, { ends: [{ style: "fold-back", allowance }, { style: "raw" }] }).needle.find(
      ({ where }) => where === "fold-back",
    )?.layers;
  expect([back("cotton", 40), back("cotton", 2), back("vinyl", 40)]).toEqual([12, 12, 8]);
});

test("padding is cut once for each strap, as much narrower as the construction says; all pieces lie as their outline", () => {
  const padded = (construction: "three-hemmed" | "sewn-turned") => {
    const result = strap(construction, "vinyl", { count: 3, materials: { outer: "vinyl", padding: "foam" } });
    const piece = result.pieces.find(({ id }) => id === "s-padding")!;
    return [piece.count, ringBox(piece.outline.outer).maxY, piece.lines.length];
  };
  expect(padded("three-hemmed")).toEqual([3, 36.5, 0]);
  expect(padded("sewn-turned")).toEqual([3, 38, 0]);
  for (const { contour, outline } of strap("two-layer", "vinyl", { count: 2 }).pieces) {
    const corners = [...contour.vertices].filter((_, i) => i % 3 !== 2);
    expect(corners).toEqual([...outline.outer]);
    expect(contour.closed).toBe(true);
  }
});

test("a strap too narrow for any seam is told from which width on there is room", () => {
  const problemOf = (construction: ConstructionId, width: number) => {
    const built = buildStrap(wish(construction, "cotton", { width }), MATERIALS);
    return built.ok ? null : built.problems[0]!;
  };
  for (const construction of ["tube", "sewn-turned"] as const) {
    const narrow = problemOf(construction, 2);
    if (narrow?.code !== "strap-too-narrow") throw new Error(`${construction}: ${narrow?.code}`);
    expect(narrow.widthMm).toBe(2);
    expect(problemOf(construction, narrow.leastMm + 1e-3)).toBeNull();
    expect(problemOf(construction, narrow.leastMm - 1e-3)).not.toBeNull();
  }
});

// ISO 4915 names them: class 100 chain stitches of one thread, 300 lockstitches, 400 chain stitches of several.
test("stitch types are those of the standard whose thread we know", () => {
  expect([...STITCH_TYPES].sort()).toEqual([101, 301, 401]);
});
