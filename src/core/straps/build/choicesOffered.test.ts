// What is offered in place of a strap, how it comes through a slider and off the roll: each held against the strap itself.
import { expect, test } from "vitest";
import { of, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import type { ConstructionId, StrapMaterial } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { passes, rollLengthFor } from "./limits.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { StrapResult } from "./strapResult.ts";
import { thicknessAlong } from "./thicknessAlong.ts";

const VINYL = of("v", "vinyl", 0.8, { usableWidth: 1370 });
function strap(construction: ConstructionId, more: Wish = {}, material: StrapMaterial = VINYL): StrapResult {
  const built = buildStrap(wish(construction, material.id, more), [material]);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value;
}

test("each alternative is the strap that building it gives, those needing least cloth first, all within the limits", () => {
  for (const machine of [{ maxThickness: 2.5 }, { maxLayers: 3 }]) {
    const { alternatives } = strap("fourfold", { machine, count: 3, length: 900 } as Wish);
    expect(alternatives.length).toBeGreaterThan(1);
    expect(alternatives.map(({ construction }) => construction)).not.toContain("fourfold");
    for (const { construction, ...one } of alternatives) {
      const alone = strap(construction, { machine, count: 3, length: 900 } as Wish);
      expect(one.thickness, construction).toBeCloseTo(
        Math.max(...(alone.across ?? []).map(({ thickness }) => thickness)),
        9,
      );
      expect(one.layers).toBe(alone.layers);
      expect(one.cutWidth).toBeCloseTo(alone.cutWidth, 9);
      if ("maxThickness" in machine) expect(one.thickness).toBeLessThanOrEqual(machine.maxThickness);
    }
    const order = alternatives.map(({ rollLength, thickness }) => [rollLength!, thickness] as const);
    expect(order).toEqual([...order].sort((a, b) => a[0] - b[0] || a[1] - b[1]));
  }
  // Ten of each, all side by side: as long as each other, so the thinner come first.
  const alike = strap("fourfold", { machine: { maxLayers: 3 }, count: 10, length: 760 } as Wish).alternatives;
  expect(new Set(alike.map(({ rollLength }) => rollLength))).toEqual(new Set([760]));
  expect(alike.map(({ construction }) => construction)).toEqual(["bonded", "three-raw"]);
  const open = strap("fourfold", { machine: { maxLayers: 3 } }, of("v", "vinyl", 0.8)).alternatives;
  expect(open.length).toBeGreaterThan(1);
  expect(open.every(({ rollLength }) => rollLength === null)).toBe(true);
  expect(open.map(({ cutWidth }) => cutWidth)).toEqual(open.map(({ cutWidth }) => cutWidth).sort((a, b) => a - b));
});

test("nothing is offered that its material is too thick or too narrow for, or that frays, or where the strap itself passes", () => {
  const offered = (from: ConstructionId, maxLayers: number, material: StrapMaterial) =>
    strap(from, { machine: { maxLayers, maxThickness: 50 } }, material).alternatives.map(
      ({ construction }) => construction,
    );
  const leather = (thickness: number) => of("l", "leather", thickness);
  expect(offered("fourfold", 4, leather(1))).toEqual([]);
  // Padding alone makes this one too thick: what is offered goes without.
  const padded = (thickness: number, width: number, maxThickness: number) => {
    const materials = { outer: "l", padding: "foam" };
    const asked = wish("sewn-turned", "l", {
      materials,
      width,
      machine: { maxThickness },
      folds: { seamAllowance: 2 },
    });
    const built = buildStrap(asked, [leather(thickness), of("foam", "padding", 6)]);
    if (!built.ok) throw new Error(JSON.stringify(built.problems));
    return built.value.alternatives.map(({ construction }) => construction);
  };
  expect(padded(1.2, 38, 5)).toContain("tube");
  expect(padded(1.21, 38, 5)).not.toContain("tube");
  expect(padded(1.21, 38, 5)).toContain("fourfold");
  // A narrow tube has no room for its usual seam.
  expect(padded(0.4, 12, 2)).toContain("tube");
  expect(padded(0.4, 6, 2)).not.toContain("tube");
  expect(padded(0.4, 6, 2)).toContain("fourfold");
  expect(offered("three-raw", 2, leather(2.5))).toEqual(["bonded"]);
  expect(offered("fourfold", 3, leather(0.5))).toContain("three-raw");
  expect(offered("fourfold", 3, of("c", "woven", 0.5))).not.toContain("three-raw");
});

test("through a slider that is too small for the strap goes what is offered in its place; the smallest slider counts", () => {
  const slider = (opening?: number) => ({ kind: "slider", innerWidth: 38, ...(opening && { opening }) }) as const;
  const through = (...openings: (number | undefined)[]) => strap("fourfold", { hardware: openings.map(slider) });
  // Four layers of 0.8 mm need 12.8 mm.
  expect(through(12.8).alternatives).toEqual([]);
  expect(through(undefined).alternatives).toEqual([]);
  for (const result of [through(10), through(40, 10, undefined)]) {
    expect(result.alternatives.length).toBeGreaterThan(0);
    for (const { thickness } of result.alternatives) expect(4 * thickness).toBeLessThanOrEqual(10);
  }
});

test("a strap passes its limits to the last hair: thickness, layers, four thicknesses through the slider", () => {
  const needle = [
    { where: "along", layers: 4, thickness: 3 },
    { where: "tucked", layers: 8, thickness: 6 },
  ] as const;
  const of3 = (thickness: number, layers: number, sliderOpening: number) =>
    passes({ thickness, layers, sliderOpening }, needle, 3);
  expect(of3(6, 8, 12)).toBe(true);
  expect([of3(5.9, 8, 12), of3(6, 7, 12), of3(6, 8, 11.9)]).toEqual([false, false, false]);
});

test("roll length: side by side along or across the roll, whichever needs less; null where neither goes", () => {
  // Nine strips of 150 x 800 mm stand side by side on 1370 mm: 800 for up to nine, or each across.
  expect(rollLengthFor(9, 150, 800, 1370)).toBe(800);
  expect(rollLengthFor(5, 150, 800, 1370)).toBe(750);
  expect(rollLengthFor(10, 150, 800, 1370)).toBe(1500);
  expect(rollLengthFor(19, 150, 800, 1370)).toBe(2400);
  expect(rollLengthFor(2, 150, 1500, 1370)).toBe(1500);
  expect(rollLengthFor(10, 137, 2000, 1370)).toBe(2000);
  expect(rollLengthFor(1, 1400, 1500, 1370)).toBeNull();
});

test("along a strap: raw ends lie single, others double, three times where the end is turned under", () => {
  const flat = { layers: 2, thickness: 3 };
  const end = (style: StrapEnd["style"], allowance: number, under = 0): StrapEnd => ({ style, allowance, under });
  const spans = (first: StrapEnd, last: StrapEnd, finished = 100, thin?: number) =>
    thicknessAlong(finished, [first, last], flat, thin).map(({ from, to, layers, thickness }) => [
      ...[from, to, layers, thickness],
    ]);
  expect(spans(end("raw", 0), end("seam", 25))).toEqual([[0, 100, 2, 3]]);
  expect(spans(end("tucked", 10), end("fold-back", 30, 6))).toEqual([
    [0, 10, 4, 6],
    [10, 76, 2, 3],
    [76, 82, 6, 9],
    [82, 100, 4, 6],
  ]);
  // Ends never reach past the middle, and what is turned under no farther than what lies on it.
  expect(spans(end("tucked", 80), end("fold-back", 80))).toEqual([
    [0, 50, 4, 6],
    [50, 100, 4, 6],
  ]);
  expect(spans(end("fold-back", 10, 8), end("raw", 0))).toEqual([
    [0, 2, 6, 9],
    [2, 100, 2, 3],
  ]);
  // Less than a millimetre counts as well.
  expect(spans(end("fold-back", 0.8, 0.3), end("raw", 0))).toEqual([
    [0, 0.2, 4, 6].map((mm) => expect.closeTo(mm, 9)),
    [0.2, 0.5, 6, 9].map((mm) => expect.closeTo(mm, 9)),
    [0.5, 100, 2, 3],
  ]);
  // Ends skived to 1 mm; thicker than the strap they are not.
  expect(spans(end("tucked", 10), end("fold-back", 30, 6), 100, 1).map(([, , , thickness]) => thickness)).toEqual([
    4, 3, 5, 4,
  ]);
  expect(spans(end("tucked", 10), end("raw", 0), 100, 7)[0]![3]).toBe(6);
});
