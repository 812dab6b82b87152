import { MM_PER_UNIT } from "../../../core/units/lengthWords.ts";

/** One mark of a tape measure: where, how long, and the number beside the long ones. */
export interface TapeTick {
  readonly mm: number;
  readonly rank: "long" | "middle" | "short";
  readonly text: string | null;
}

/** Steps between numbers, in the unit of the tape, with how each is divided. */
const STEPS = {
  metric: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].map((step) => ({ step, unit: MM_PER_UNIT.cm })),
  inches: [0.5, 1, 2, 4, 6, 12, 36, 72, 180].map((step) => ({ step, unit: MM_PER_UNIT.in })),
} as const;

/**
 * Marks of a tape from `from` to `to` mm seen at `scale` px per mm: a number about every 70 px, and only as many
 * marks between as can be told apart. At most a few hundred.
 */
export function tapeTicks(
  system: "metric" | "inches",
  from: number,
  to: number,
  scale: number,
): readonly TapeTick[] {
  const wanted = 64 / scale;
  const steps = STEPS[system];
  const chosen = steps.find(({ step, unit }) => step * unit >= wanted) ?? steps.at(-1)!;
  const long = chosen.step * chosen.unit;
  const parts = [10, 5, 4, 2].find((n) => (long / n) * scale >= 6 && isWhole(chosen.step, n, system)) ?? 1;
  const ticks: TapeTick[] = [];
  const start = Math.max(0, Math.ceil((from / long) * parts - 1e-9));
  for (let i = start; (i * long) / parts <= to + 1e-9 && ticks.length < 500; i++) {
    const isLong = i % parts === 0;
    const isMiddle = parts % 2 === 0 && i % (parts / 2) === 0;
    const number = (i / parts) * chosen.step;
    ticks.push({
      mm: (i * long) / parts,
      rank: isLong ? "long" : isMiddle ? "middle" : "short",
      text: isLong ? String(Math.round(number * 1000) / 1000) : null,
    });
  }
  return ticks;
}

/** Metric marks fall on whole millimetres, inch marks on halves, quarters, eighths and sixteenths. */
function isWhole(step: number, parts: number, system: "metric" | "inches"): boolean {
  const share = step / parts;
  return system === "metric" ? Number.isInteger(Math.round(share * 1e6) / 1e5) : Number.isInteger(share * 16);
}
