import { expect, test } from "vitest";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { threadRatio } from "./consumables.ts";

test("5.13: 2 + 2TS at T 0.01 in and 10 stitches per inch is 2.2 (common practice)", () => {
  expect(threadRatio(0.01, 1 / 10)).toBeCloseTo(2.2, 9);
});

// Facts 5.14: the same in mm (exact arithmetic on the stated model).
test.each([
  [4, 3.5, 4.29],
  [1.2, 3.0, 2.8],
  [0.6, 2.5, 2.48],
])("5.14: %s mm of stack at %s mm a stitch take %s of thread", (thickness, stitch, expected) => {
  expect(threadRatio(thickness, stitch)).toBeCloseTo(expected, 2);
});

const fourfold: StrapWish = {
  id: "s",
  name: "s",
  construction: "fourfold",
  count: 1,
  width: { kind: "finished", mm: 25 },
  length: { kind: "finished", mm: 700 },
  materials: { outer: "v" },
};

test("5.16: stitch types 101 and 401 lay three and four threads along the seam (common practice)", () => {
  expect(threadRatio(0.01, 1 / 10, 101)).toBeCloseTo(3.2, 9);
  expect(threadRatio(0.01, 1 / 10, 401)).toBeCloseTo(4.2, 9);
});

// 301: handbook table (common practice, no source); 101 and 401: from memory. The floor ends where 2, 3 or 4 threads
// along the seam and twice the stack a stitch come to as much.
test.each([
  [301, 2.5, 0.875],
  [101, 4, 1.75],
  [401, 5.5, 2.625],
] as const)(
  "24: type %s takes at least %s times its seam, and more from a stack of %s mm on",
  (type, floor, stack) => {
    const perSeam = (thick: number): number => {
      const vinyl: StrapMaterial = {
        ...{ id: "v", name: "v", kind: "vinyl", backing: "woven", fold: {} },
        thickness: thick / 4,
      };
      const built = buildStrap({ ...fourfold, stitch: { type } }, [vinyl]);
      if (!built.ok) throw new Error("no strap");
      return built.value.consumables.find((one) => one.kind === "topstitch-thread")!.mm / 1.15 / 1400;
    };
    expect(perSeam(stack * 0.6)).toBeCloseTo(floor, 9);
    expect(perSeam(stack - 1e-6)).toBeCloseTo(floor, 9);
    // 3.5 mm a stitch on vinyl.
    expect(perSeam(stack + 0.35)).toBeCloseTo(floor + 0.2, 9);
  },
);

test("5.12 and 5.15: a thin seam takes the handbook's 2.5 (ISO 4915 type 301), 220 cm take 550 cm, and 15 % waste (common practice)", () => {
  const cotton: StrapMaterial = { id: "v", name: "v", kind: "woven", thickness: 0.05, backing: "woven", fold: {} };
  const length = { kind: "finished", mm: 1100 } as const;
  const built = buildStrap({ ...fourfold, length }, [cotton]);
  if (!built.ok) throw new Error("no strap");
  // Two rows of 110 cm are 220 cm of seam.
  expect(built.value.consumables.find((one) => one.kind === "topstitch-thread")!.mm / 1.15).toBeCloseTo(5500, 6);
});

test("5.15 and 5.17: two rows of 70 cm at 4.29 are 600 cm, and 15 % waste on top (common practice)", () => {
  const vinyl: StrapMaterial = { id: "v", name: "v", kind: "vinyl", thickness: 1, backing: "woven", fold: {} };
  const built = buildStrap(fourfold, [vinyl]);
  if (!built.ok) throw new Error("no strap");
  const of = (kind: string) => built.value.consumables.find((one) => one.kind === kind)!.mm;
  expect(of("topstitch-thread") / 1.15).toBeCloseTo(6000, 0);
  // 5.18: tape is twice the strap's length for a fourfold strap (common practice).
  expect(of("tape")).toBe(1400);
});
