import { expect, test } from "vitest";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { roundToRuler } from "./roundToRuler.ts";

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
