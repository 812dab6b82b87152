// Lengths reckoned by hand. What ends take: common practice, no source.
import { expect, test } from "vitest";
import { MATERIALS, strap } from "../../../../tests/tools/strapByHand.ts";
import type { StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";

const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

test("lengths by hand: what each end takes, by style and by cloth", () => {
  const ends = (style: "raw" | "seam" | "tucked" | "fold-back", outer: string) =>
    strap("fourfold", outer, { ends: [{ style }, { style: "raw" }] }).lengths.cut - 700;
  // An inch into a seam, half an inch turned in; cloth 1/4 in and 1 in, what is thicker about 2 in.
  for (const outer of ["vinyl", "cloth", "hide"])
    expect([ends("raw", outer), ends("seam", outer), ends("tucked", outer)]).toEqual(near([0, 25.4, 12.7]));
  expect([ends("fold-back", "cloth"), ends("fold-back", "vinyl"), ends("fold-back", "hide")]).toEqual(
    near([31.75, 50.8, 50.8]),
  );
  const doubled = strap("corded", "hide", { core: { cordDiameter: 10 } });
  expect(doubled.lengths.cut - 700).toBeCloseTo(2 * 101.6, 9);
  // A quarter of a short fold-back is turned under, no more than a quarter of an inch of a long one.
  const steps = (allowance: number) =>
    strap("fourfold", "cloth", { ends: [{ style: "fold-back", allowance }, { style: "raw" }] }).steps.at(-1);
  expect(steps(20)?.lengths).toEqual({ back: 15, under: 5 });
  expect(steps(40)?.lengths).toEqual({ back: 33.65, under: 6.35 });
});

test("an adjustable strap by hand: longest and shortest as worn, in one piece and in two parts, cut and drop", () => {
  const ends = [
    { style: "fold-back", allowance: 40 },
    { style: "fold-back", allowance: 30 },
  ] as const;
  const worn = (more: Partial<StrapWish>) => strap("fourfold", "flat", { ends, ...more }).lengths;
  const one = worn({ adjustment: "one-piece", length: { kind: "worn", mm: 1200 } });
  // 50.8 mm stay doubled at its longest; at its shortest half of it is doubled.
  expect(one).toMatchObject({ finished: 1250.8, cut: 1320.8, longest: 1200, shortest: 625.4, shortPart: null });
  expect(one.items.map(({ code, mm }) => [code, mm])).toEqual([
    ["worn-longest", 1200],
    ["doubled-at-slider", 50.8],
    ["end-fold-back", 40],
    ["end-fold-back", 30],
  ]);
  const two = worn({ adjustment: "two-part", length: { kind: "worn", mm: 1200 } });
  // The short part, 254 mm cut, keeps 184 between its fold-backs.
  expect(two).toMatchObject({ shortPart: 254, longest: 1200, finished: 1250.8, cut: 1250.8 - 184 + 70 });
  expect(two.shortest).toBeCloseTo((1250.8 - 184) / 2 + 184, 9);
  expect(two.items[0]).toEqual({ code: "worn-longest-less-short", mm: 1200 - 184 });
  const finished = worn({ adjustment: "two-part", shortPart: 300, length: { kind: "finished", mm: 1000 } });
  expect(finished).toMatchObject({ finished: 1000, cut: 1000 - 230 + 70 });
  expect(worn({ adjustment: "one-piece", length: { kind: "cut", mm: 1000 } })).toMatchObject({
    cut: 1000,
    finished: 930,
  });
  expect(worn({ adjustment: "one-piece", length: { kind: "drop", mm: 400 } }).longest).toBeCloseTo(850.8, 9);
  expect(worn({ length: { kind: "drop", mm: 400 } })).toMatchObject({ finished: 850.8, cut: 920.8 });
  expect(worn({ length: { kind: "cut", mm: 800 } })).toMatchObject({ finished: 730, cut: 800 });
  expect(strap("tube", "flat", { length: { kind: "cut", mm: 1070 } }).lengths).toMatchObject({
    cut: expect.closeTo(1070, 9),
    finished: expect.closeTo(1000, 9),
  });
});

test("what leaves nothing of the strap is refused, with the length from which on something is left", () => {
  const of2 = (kind: "cut" | "worn" | "finished", mm: number, more: Partial<StrapWish> = {}) => {
    const built = buildStrap(
      {
        ...{ id: "s", name: "s", construction: "fourfold", count: 1, materials: { outer: "flat" } },
        width: { kind: "finished", mm: 40 },
        ends: [
          { style: "fold-back", allowance: 40 },
          { style: "fold-back", allowance: 30 },
        ],
        length: { kind, mm },
        ...more,
      },
      MATERIALS,
    );
    return built.ok ? null : built.problems[0];
  };
  expect(of2("cut", 70.1)).toBeNull();
  expect(of2("cut", 70)).toMatchObject({ code: "strap-too-short", lengthMm: 70, leastMm: 70 });
  expect(of2("cut", 60)).toMatchObject({ code: "strap-too-short", leastMm: 70 });
  expect(of2("cut", 121, { adjustment: "one-piece" })).toBeNull();
  expect(of2("cut", 120, { adjustment: "one-piece" })).toMatchObject({ leastMm: expect.closeTo(120.8, 9) });
  // 20 mm are left between two fold-backs of the short part, at least.
  expect(of2("worn", 1200, { adjustment: "two-part", shortPart: 90 })).toBeNull();
  expect(of2("worn", 1200, { adjustment: "two-part", shortPart: 89.9 })).toMatchObject({
    code: "strap-short-part-short",
    lengthMm: 89.9,
    leastMm: 90,
  });
  // The flat ends of a corded handle are part of its finished length.
  const corded = { construction: "corded", core: { cordDiameter: 8 }, width: undefined, ends: undefined } as const;
  expect(of2("finished", 203.3, corded)).toBeNull();
  expect(of2("finished", 203.2, corded)).toMatchObject({ code: "strap-too-short" });
});
