import { expect, test } from "vitest";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { roundToRuler, rulerOffers } from "./roundToRuler.ts";

const VINYL: StrapMaterial = {
  id: "vinyl",
  name: "vinyl",
  kind: "vinyl",
  thickness: 0.9,
  backing: "woven",
  fold: {},
};
const WISH: StrapWish = {
  ...{ id: "s", name: "strap", construction: "fourfold", count: 1, materials: { outer: "vinyl" } },
  width: { kind: "finished", mm: 38 },
  length: { kind: "finished", mm: 700 },
};

test.each([25.4 / 8, 1, 25.4 / 16])(
  "cut to a ruler of %s mm, the finished width follows within half of it",
  (step) => {
    const rounded = roundToRuler(WISH, [VINYL], step);
    if (!rounded.ok) throw new Error("no strap");
    const { cutWidth, finishedWidth } = rounded.value;
    expect(cutWidth / step).toBeCloseTo(Math.round(cutWidth / step), 9);
    // Four layers share what is rounded.
    expect(Math.abs(finishedWidth - 38)).toBeLessThanOrEqual(step / 8 + 1e-9);
  },
);

test("what cannot be built has no cut on a ruler either", () => {
  const narrow = roundToRuler({ ...WISH, width: { kind: "finished", mm: 1 } }, [VINYL], 1);
  expect(narrow).toMatchObject({ ok: false, problems: [{ code: "strap-too-narrow" }] });
  const webbing: StrapWish = {
    ...WISH,
    construction: "webbing-sleeve",
    width: undefined,
    core: { webbingWidth: 38 },
  };
  expect(roundToRuler(webbing, [VINYL], 1)).toMatchObject({
    problems: [{ code: "strap-choice-unused", choice: "ruler" }],
  });
});

test("offers stand on the ruler, say the width that results, and go down where the plan is laid", () => {
  const built = buildStrap(WISH, [VINYL]);
  if (!built.ok) throw new Error("no strap");
  for (const system of ["metric", "inches"] as const)
    for (const way of ["nearest", "down"] as const) {
      const offers = rulerOffers(built.value, [VINYL], system, way);
      expect(offers.length).toBeGreaterThan(0);
      for (const { step, cutWidth, finishedWidth } of offers) {
        expect(cutWidth / step).toBeCloseTo(Math.round(cutWidth / step), 9);
        if (way === "down") expect(cutWidth).toBeLessThanOrEqual(built.value.cutWidth + 1e-9);
        // Folding back: what is cut so comes out so.
        const again = buildStrap({ ...WISH, width: { kind: "finished", mm: finishedWidth } }, [VINYL]);
        expect(again.ok && again.value.cutWidth).toBeCloseTo(cutWidth, 6);
      }
    }
  const cut = buildStrap({ ...WISH, width: { kind: "cut", mm: 150 } }, [VINYL]);
  expect(cut.ok && rulerOffers(cut.value, [VINYL], "metric")).toEqual([]);
  // A webbing says how wide its sleeve is.
  const core = { webbingWidth: 38, webbingThickness: 2 };
  const sleeve = buildStrap(
    { ...WISH, construction: "webbing-sleeve", width: { kind: "finished", mm: 39.8 }, core },
    [VINYL],
  );
  expect(sleeve.ok && rulerOffers(sleeve.value, [VINYL], "metric")).toEqual([]);
  const rounded = roundToRuler({ ...WISH, width: { kind: "finished", mm: 38 } }, [VINYL], 1);
  expect(rounded.ok && rulerOffers(rounded.value, [VINYL], "metric")).toEqual([]);
  // On paper without thickness 38 mm are cut 152 mm: her ruler has that already.
  const flat = { ...VINYL, thickness: 0 };
  const plain = buildStrap(WISH, [flat]);
  expect(plain.ok && rulerOffers(plain.value, [flat], "metric")).toEqual([]);
  expect(plain.ok && rulerOffers(plain.value, [flat], "inches")).not.toEqual([]);
});
