import { MM_PER_UNIT } from "../../units/lengthWords.ts";
import type { Adjustment, LengthWish, StrapWish } from "./strapWish.ts";

/** Straps of common bags; each has its words. */
export const PRESET_IDS = [
  "wristlet",
  "shoulder-small",
  "shoulder-large",
  "tote-hand",
  "tote-shoulder",
  "backpack",
  "crossbody",
] as const;

export type PresetId = (typeof PRESET_IDS)[number];

/** Finished width, and length as `lengthKind` says: round in mm, and round in inches; the two are not the same strap. */
interface Preset {
  readonly count: number;
  readonly adjustment: Adjustment;
  readonly lengthKind: LengthWish["kind"];
  readonly metric: readonly [widthMm: number, lengthMm: number];
  readonly inches: readonly [width: number, length: number];
}

/** Common practice, no source. */
export const PRESETS: Readonly<Record<PresetId, Preset>> = {
  wristlet: fixed(1, [20, 300], [0.75, 12]),
  "shoulder-small": fixed(1, [25, 500], [1, 20]),
  "shoulder-large": fixed(1, [30, 660], [1.25, 26]),
  "tote-hand": fixed(2, [25, 450], [1, 18]),
  "tote-shoulder": fixed(2, [30, 640], [1.25, 25]),
  backpack: fixed(2, [38, 800], [1.5, 32]),
  crossbody: {
    ...{ count: 1, adjustment: "one-piece", lengthKind: "worn" },
    ...{ metric: [25, 1300], inches: [1, 52] },
  },
};

function fixed(count: number, metric: Preset["metric"], inches: Preset["inches"]): Preset {
  return { count, adjustment: "fixed", lengthKind: "finished", metric, inches };
}

/** What a preset says of a strap: width, length, how many, and whether it is adjustable. mm. */
export function presetWish(
  id: PresetId,
  system: "metric" | "inches",
): Pick<StrapWish, "count" | "length"> & {
  readonly width: NonNullable<StrapWish["width"]>;
  readonly adjustment: Adjustment;
} {
  const { count, adjustment, lengthKind, metric, inches } = PRESETS[id];
  const [width, length] = system === "metric" ? metric : inches.map((inch) => inch * MM_PER_UNIT.in);
  return {
    ...{ count, adjustment },
    width: { kind: "finished", mm: width! },
    length: { kind: lengthKind, mm: length! },
  };
}
