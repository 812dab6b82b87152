import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";
import type { RectangleInstance } from "./rectangleJobs.ts";

type Items = RectangleInstance["items"];

const whole = (rng: Rng, from: number, to: number): number => from + rng.below(to - from + 1);

function kinds(count: number, each: () => Items[number]): Items {
  return Array.from({ length: count }, each);
}

/** A `width` × `length` sheet cut edge to edge, without waste, into `pieces` pieces: `length` is the optimum. */
function cutUp(rng: Rng, width: number, length: number, pieces: number): Items {
  const parts = [{ w: width, h: length, n: 1 }];
  while (parts.length < pieces) {
    let largest = 0;
    for (let i = 1; i < parts.length; i++)
      if (parts[i]!.w * parts[i]!.h > parts[largest]!.w * parts[largest]!.h) largest = i;
    const { w, h } = parts[largest]!;
    const share = 0.2 + 0.6 * rng.unit();
    if (w >= h) {
      const cut = Math.max(1, Math.round(w * share));
      parts[largest] = { w: cut, h, n: 1 };
      parts.push({ w: w - cut, h, n: 1 });
    } else {
      const cut = Math.max(1, Math.round(h * share));
      parts[largest] = { w, h: cut, n: 1 };
      parts.push({ w, h: h - cut, n: 1 });
    }
  }
  return parts;
}

function family(name: string, stripWidth: number, items: Items, optimum: number | null = null): RectangleInstance {
  const area = items.reduce((sum, { w, h, n }) => sum + w * h * n, 0);
  return {
    name,
    kind: "rect-strip",
    source: "generated family",
    stripWidth,
    rotate90: false,
    items,
    optimum,
    areaBound: Math.ceil(area / stripWidth),
  };
}

const rng = seededRng(4101);

/** Made-up families unlike bag jobs, to find where the engine is weak. No turns. */
const jobs: readonly RectangleInstance[] = [
  ...[20, 100, 500, 2000].map((n) => family(`cut-up-${n}`, 1000, cutUp(rng, 1000, 1500, n), 1500)),
  family(
    "narrow",
    2000,
    kinds(300, () => ({ w: whole(rng, 10, 60), h: whole(rng, 20, 400), n: 1 })),
  ),
  family("wide-and-thin", 1000, [
    ...kinds(40, () => ({ w: whole(rng, 501, 950), h: whole(rng, 20, 200), n: 1 })),
    ...kinds(80, () => ({ w: whole(rng, 10, 80), h: whole(rng, 50, 600), n: 1 })),
  ]),
  family(
    "near-squares",
    1000,
    kinds(120, () => {
      const w = whole(rng, 80, 220);
      return { w, h: w + whole(rng, -5, 5), n: 1 };
    }),
  ),
  family(
    "few-kinds",
    1370,
    kinds(4, () => ({ w: whole(rng, 60, 400), h: whole(rng, 60, 400), n: 500 })),
  ),
  family(
    "aspects",
    1000,
    kinds(150, () => {
      const size = whole(rng, 40, 140);
      const stretch = 6 ** (2 * rng.unit() - 1);
      return { w: Math.min(1000, Math.round(size * stretch)), h: Math.max(1, Math.round(size / stretch)), n: 1 };
    }),
  ),
  family(
    "pieces-5000",
    1500,
    kinds(5000, () => ({ w: whole(rng, 20, 200), h: whole(rng, 20, 200), n: 1 })),
  ),
];
export default jobs;
