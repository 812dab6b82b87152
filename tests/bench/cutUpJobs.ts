import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";
import type { RectangleInstance } from "./rectangleJobs.ts";

/** A part of the sheet, in whole units. */
interface Part {
  readonly w: number;
  readonly h: number;
}

/** Sides below this are not cut again. */
const LEAST_SIDE = 2;
/** How often a part large enough for it is cut into a pinwheel of five, which no straight cut parts. */
const PINWHEELS = 0.4;

/**
 * Cuts a `width` × `length` sheet without waste into `pieces` pieces (one to four more when the last cut is a
 * pinwheel), always the largest part next: edge to edge, or with pinwheels among the cuts. `length` is the optimum.
 */
function cutUp(rng: Rng, width: number, length: number, pieces: number, pinwheels: boolean): readonly Part[] {
  const parts: Part[] = [{ w: width, h: length }];
  while (parts.length < pieces) {
    let largest = 0;
    for (let i = 1; i < parts.length; i++)
      if (parts[i]!.w * parts[i]!.h > parts[largest]!.w * parts[largest]!.h) largest = i;
    const { w, h } = parts[largest]!;
    const isPinwheel = pinwheels && Math.min(w, h) >= 3 * LEAST_SIDE && rng.unit() < PINWHEELS;
    parts.splice(largest, 1, ...(isPinwheel ? pinwheel(rng, w, h) : halves(rng, w, h)));
  }
  return parts;
}

function halves(rng: Rng, w: number, h: number): Part[] {
  const across = w === h ? rng.below(2) === 0 : w > h;
  const side = across ? w : h;
  const cut = Math.min(side - 1, Math.max(1, Math.round(side * (0.2 + 0.6 * rng.unit()))));
  return across
    ? [
        { w: cut, h },
        { w: w - cut, h },
      ]
    : [
        { w, h: cut },
        { w, h: h - cut },
      ];
}

/** Four parts round a fifth: their inner edges at two places across and two along. */
function pinwheel(rng: Rng, w: number, h: number): Part[] {
  const [x1, x2] = twoBetween(rng, w);
  const [y1, y2] = twoBetween(rng, h);
  return [
    { w: x2, h: y1 },
    { w: w - x2, h: y2 },
    { w: w - x1, h: h - y2 },
    { w: x1, h: h - y1 },
    { w: x2 - x1, h: y2 - y1 },
  ];
}

/** Two different whole numbers between 0 and `end`, the lower first. */
function twoBetween(rng: Rng, end: number): readonly [number, number] {
  const one = 1 + rng.below(end - 2);
  const other = one + 1 + rng.below(end - 1 - one);
  return [one, other];
}

/** Width, length and pieces of the sheets; each is cut up edge to edge and with pinwheels. */
const SHEETS = [
  [60, 60, 30],
  [100, 80, 80],
  [60, 90, 75],
  [120, 160, 100],
  [50, 150, 150],
  [160, 240, 200],
  [200, 300, 500],
  [640, 960, 3000],
] as const;

const rng = seededRng(707);

/** Sheets cut up without waste, to be laid together again without turns: optimum known, pieces mostly different. */
const jobs: readonly RectangleInstance[] = SHEETS.flatMap(([width, length, pieces]) =>
  [false, true].map((pinwheels) => {
    const counts = new Map<string, { w: number; h: number; n: number }>();
    for (const { w, h } of cutUp(rng, width, length, pieces, pinwheels)) {
      const alike = counts.get(`${w}x${h}`);
      if (alike) alike.n++;
      else counts.set(`${w}x${h}`, { w, h, n: 1 });
    }
    return {
      name: `${pinwheels ? "pinwheels" : "straight"}-${pieces}`,
      kind: "rect-strip",
      source: "generated sheet cut up",
      stripWidth: width,
      rotate90: false,
      items: [...counts.values()],
      optimum: length,
      areaBound: length,
    };
  }),
);
export default jobs;
