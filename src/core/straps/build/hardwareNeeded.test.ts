import { expect, test } from "vitest";
import { threadingPicture } from "../../drawing/strap/threadingPicture.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";

const VINYL: StrapMaterial = { id: "v", name: "v", kind: "vinyl", thickness: 1, backing: "woven", fold: {} };
const WISH: StrapWish = {
  ...{ id: "s", name: "strap", construction: "fourfold", count: 2, materials: { outer: "v" } },
  width: { kind: "finished", mm: 38 },
  length: { kind: "worn", mm: 1300 },
};
const build = (more: Partial<StrapWish>) => {
  const built = buildStrap({ ...WISH, ...more }, [VINYL]);
  if (!built.ok) throw new Error("no strap");
  return built.value;
};
const list = (more: Partial<StrapWish>) =>
  build(more).hardware.map(({ kind, count, named }) => [kind, count, named] as const);

const slider = { kind: "slider", innerWidth: 39, opening: 16 } as const;
const ring = { kind: "ring", innerWidth: 39, length: 20 } as const;
const clasp = { kind: "clasp", innerWidth: 39, length: 45 } as const;

// Counted by hand on a strap: one piece at each end, and in two parts the ring between them.
test("hardware to have ready, for two straps", () => {
  expect(list({ adjustment: "two-part", hardware: [slider, clasp, ring] })).toEqual([
    ["slider", 2, true],
    ["clasp", 2, true],
    ["ring", 4, true],
  ]);
  expect(list({ adjustment: "one-piece", hardware: [slider, ring] })).toEqual([
    ["slider", 2, true],
    ["ring", 4, true],
  ]);
  // A clasp at each end is no ring between the halves.
  expect(list({ adjustment: "two-part", hardware: [slider, clasp] })).toEqual([
    ["slider", 2, true],
    ["clasp", 4, true],
    ["ring", 2, false],
  ]);
  expect(list({ hardware: [ring] })).toEqual([["ring", 4, true]]);
  expect(list({ construction: "tab", hardware: [ring], length: { kind: "finished", mm: 80 } })).toEqual([
    ["ring", 2, true],
  ]);
  expect(list({ count: 1, adjustment: "one-piece" })).toEqual([
    ["slider", 1, false],
    ["ring", 2, false],
  ]);
  expect(list({ count: 1, adjustment: "two-part", hardware: [slider, clasp] })).toContainEqual(["ring", 1, false]);
  expect(list({})).toEqual([]);
});

test("what an adjustable strap cannot do without is named, with the opening it needs", () => {
  const { hardware, thickness } = build({ adjustment: "two-part" });
  expect(hardware).toEqual([
    { kind: "slider", count: 2, innerWidth: 38, opening: 4 * thickness, named: false },
    { kind: "ring", count: 6, innerWidth: 38, opening: null, named: false },
  ]);
});

test("the hardware's own lengths are in what is worn, at both ends of the slide", () => {
  const bare = build({ adjustment: "two-part", length: { kind: "cut", mm: 1200 }, hardware: [slider] }).lengths;
  const hung = build({
    adjustment: "two-part",
    length: { kind: "cut", mm: 1200 },
    hardware: [slider, clasp, ring],
  });
  expect(hung.lengths.longest! - bare.longest!).toBeCloseTo(45 + 20 + 20, 9);
  expect(hung.lengths.shortest! - bare.shortest!).toBeCloseTo(45 + 20 + 20, 9);
});

test("threading is drawn in four steps with what is worn, and only for what has a slider", () => {
  for (const words of [STRAP_WORDS.en, STRAP_WORDS.de]) {
    const result = build({ adjustment: "one-piece", hardware: [slider, ring] });
    const drawing = threadingPicture(result, words, 180)!;
    const texts = drawing.items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
    expect(texts.filter((text) => /^[1-4]\. /u.test(text))).toHaveLength(4);
    expect(texts.join(" ")).toContain("1300 mm");
    expect(texts.filter((text) => text === words.picture.threading.slider)).toHaveLength(4);
    for (const item of drawing.items)
      if (item.kind === "area")
        for (const { vertices } of item.contours)
          expect(vertices.every((value) => Number.isFinite(value))).toBe(true);
    expect(threadingPicture(build({}), words, 180)).toBeNull();
  }
});
