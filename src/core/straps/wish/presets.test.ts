import { expect, test } from "vitest";
import { buildStrap } from "../build/buildStrap.ts";
import { PRESET_IDS, PRESETS, type PresetId, presetWish } from "./presets.ts";

const INCH = 25.4;

// Ranges in inches: common practice, no source; backpack width from memory.
const RANGES: Readonly<Record<PresetId, readonly [least: number, most: number]>> = {
  wristlet: [11, 13],
  "shoulder-small": [18, 22],
  "shoulder-large": [24, 28],
  "tote-hand": [16, 20],
  "tote-shoulder": [24, 26],
  backpack: [28, 36],
  crossbody: [45, 60],
};

test.each(PRESET_IDS)("%s lies in the trade's range, round in mm and in inches, and can be made", (id) => {
  const [least, most] = RANGES[id];
  for (const system of ["metric", "inches"] as const) {
    const wish = presetWish(id, system);
    expect(wish.length.mm / INCH).toBeGreaterThanOrEqual(least);
    expect(wish.length.mm / INCH).toBeLessThanOrEqual(most);
    const vinyl = { id: "v", name: "v", kind: "vinyl", thickness: 0.9, backing: "woven", fold: {} } as const;
    const built = buildStrap({ ...wish, id: "s", name: "s", construction: "fourfold", materials: { outer: "v" } }, [
      vinyl,
    ]);
    expect(built.ok).toBe(true);
  }
  const { metric, inches } = PRESETS[id];
  // Sizes of webbing and hardware in the shops, and lengths to a centimetre and an inch.
  expect([20, 25, 30, 38]).toContain(metric[0]);
  expect(metric[1] % 10).toBe(0);
  expect(inches[0] % 0.25).toBe(0);
  expect(inches[1] % 1).toBe(0);
  // The inch strap is the metric one to the next size: 3/4 in for 20 mm, 12 in for 300 mm.
  expect(Math.abs(inches[0] * INCH - metric[0])).toBeLessThanOrEqual(2);
  expect(Math.abs(inches[1] * INCH - metric[1])).toBeLessThanOrEqual(21);
});

test("hand-held totes and backpacks have two straps, the others one; only a crossbody strap is let out and worn", () => {
  const pairs = PRESET_IDS.filter((id) => PRESETS[id].count === 2);
  expect(pairs).toEqual(["tote-hand", "tote-shoulder", "backpack"]);
  expect(PRESET_IDS.filter((id) => PRESETS[id].count === 1)).toHaveLength(PRESET_IDS.length - pairs.length);
  for (const id of PRESET_IDS)
    expect([PRESETS[id].adjustment, PRESETS[id].lengthKind]).toEqual(
      id === "crossbody" ? ["one-piece", "worn"] : ["fixed", "finished"],
    );
});
