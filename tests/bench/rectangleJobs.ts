import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";

/** A rectangular strip job in the format of the open data sets (`w` across the roll, `h` along it). */
export interface RectangleInstance {
  readonly name: string;
  readonly kind: "rect-strip";
  readonly source: string;
  readonly stripWidth: number;
  readonly rotate90: boolean;
  readonly items: readonly { readonly w: number; readonly h: number; readonly n: number }[];
  readonly optimum: number | null;
  readonly areaBound: number;
}

const whole = (rng: Rng, from: number, to: number): number => from + rng.below(to - from + 1);

/**
 * A bag job: the panels of one design, on a roll of 44, 45, 54 or 60 in. 4–12 kinds of 2–18 × 3–24 in, in half
 * inches, 1–12 of each, 30–75 pieces in all. Unit: half an inch. Made up; only the ranges are common practice.
 */
export function bagJob(seed: number, rotate90: boolean): RectangleInstance {
  const rng = seededRng(seed);
  const stripWidth = 2 * [44, 45, 54, 60][rng.below(4)]!;
  for (;;) {
    const items = Array.from({ length: whole(rng, 4, 12) }, () => ({
      w: whole(rng, 4, 36),
      h: whole(rng, 6, 48),
      n: whole(rng, 1, 12),
    }));
    const pieces = items.reduce((sum, item) => sum + item.n, 0);
    if (pieces < 30 || pieces > 75) continue;
    return instance(
      `bag-${seed}-${rotate90 ? "turns" : "fixed"}`,
      "generated bag job",
      stripWidth,
      rotate90,
      items,
    );
  }
}

/**
 * A strap job: 1–4 kinds of strips 1–6 × 10–72 in in whole inches, 1–24 of each, on a roll of 44–60 in, both
 * straight grains. Unit: one inch.
 */
export function strapJob(seed: number): RectangleInstance {
  const rng = seededRng(seed ^ 0x5712a9);
  const stripWidth = [44, 45, 54, 60][rng.below(4)]!;
  const items = Array.from({ length: whole(rng, 1, 4) }, () => ({
    w: whole(rng, 1, 6),
    h: whole(rng, 10, 72),
    n: whole(rng, 1, 24),
  }));
  return instance(`strap-${seed}`, "generated strap job", stripWidth, true, items);
}

function instance(
  name: string,
  source: string,
  stripWidth: number,
  rotate90: boolean,
  items: RectangleInstance["items"],
): RectangleInstance {
  const area = items.reduce((sum, item) => sum + item.w * item.h * item.n, 0);
  return {
    name,
    kind: "rect-strip",
    source,
    stripWidth,
    rotate90,
    items,
    optimum: null,
    areaBound: Math.ceil(area / stripWidth),
  };
}
