import { expect, test } from "vitest";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { sideBySide } from "./sideBySide.ts";

const VINYL: StrapMaterial = {
  ...{ id: "vinyl", name: "vinyl", kind: "vinyl", thickness: 1, backing: "woven", fold: {}, usableWidth: 1370 },
};
const WISH: StrapWish = {
  ...{ id: "s", name: "strap", construction: "fourfold", count: 4, materials: { outer: "vinyl" } },
  width: { kind: "finished", mm: 38 },
  length: { kind: "finished", mm: 700 },
  hardware: [{ kind: "slider", innerWidth: 39, opening: 14 }],
};

const METRE = { amount: 20, basis: { kind: "length", mm: 1000 } } as const;

test("constructions side by side have the figures that each has alone", () => {
  const rows = sideBySide(WISH, [VINYL], METRE);
  expect(rows.map(({ construction }) => construction)).toEqual([
    ...[
      "fourfold",
      "three-raw",
      "three-hemmed",
      "two-layer",
      "sewn-turned",
      "tube",
      "bonded",
      "webbing-overlay",
      "webbing-sleeve",
    ],
  ]);
  for (const row of rows) {
    const alone = buildStrap({ ...WISH, construction: row.construction }, [VINYL]);
    if (!alone.ok) throw new Error(row.construction);
    expect(row).toMatchObject({ cutWidth: alone.value.cutWidth, thickness: alone.value.thickness });
    // A cost is that of the thriftier way, at 20 a metre.
    expect(row.cost).toBeCloseTo(Math.min(row.lengthwise!, row.crosswise!) / 50, 9);
  }
  // Four strips of 148.85 x 801.6 mm on 1370 mm: all four side by side along the roll, or one under the other across it.
  const [fourfold, three] = rows;
  expect(fourfold).toMatchObject({ layers: 4, slider: false, rawEdges: 0 });
  expect(fourfold!.lengthwise).toBeCloseTo(801.6, 6);
  expect(fourfold!.crosswise).toBeCloseTo(4 * fourfold!.cutWidth, 6);
  expect(three).toMatchObject({ layers: 3, slider: true, rawEdges: 1 });
});

test("a construction whose webbing or cord is named stands beside the others; no width of cloth, no metres", () => {
  const { usableWidth: _, ...open } = VINYL;
  const rows = sideBySide(
    { ...WISH, core: { webbingWidth: 38, webbingThickness: 1 }, hardware: [] },
    [open],
    METRE,
  );
  const sleeve = rows.find(({ construction }) => construction === "webbing-overlay");
  expect(sleeve).toMatchObject({ lengthwise: null, crosswise: null, cost: null });
});

test("cloth priced by area costs what its strips cover, and a strap that may not lie crosswise has no such metres", () => {
  const skin = { amount: 90, basis: { kind: "area", mm2: 1e6 } } as const;
  for (const row of sideBySide({ ...WISH, grain: "lengthwise" }, [VINYL], skin)) {
    expect(row.cost).toBeCloseTo((90 * row.cloth) / 1e6, 9);
    expect(row.crosswise).toBeNull();
  }
  // Folded in four: four strips of 801.6 mm.
  const [fourfold] = sideBySide(WISH, [VINYL], skin);
  expect(fourfold!.cloth).toBeCloseTo(4 * 801.6 * fourfold!.cutWidth, 3);
});

test("without a price, or with one for a whole piece, nobody knows what the cloth costs", () => {
  for (const price of [null, { amount: 12, basis: { kind: "each" } }] as const)
    expect(sideBySide(WISH, [VINYL], price).map(({ cost }) => cost)).toEqual(Array(9).fill(null));
});
