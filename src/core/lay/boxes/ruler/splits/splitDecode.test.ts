import { expect, test } from "vitest";
import { randomOrder } from "../../../../../../tests/tools/randomOrder.ts";
import type { SearchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { ANY_STRIP, decodeSplits, type NarrowRule, splitBuffers } from "./splitDecode.kernel.ts";

interface Space {
  readonly across: number;
  readonly along: number;
  readonly w: number;
  readonly h: number;
}

/** The slow twin: free rectangles as objects, every piece left looked at in list order. Way, along, across of each. */
function slowSplits(
  tables: SearchTables,
  order: readonly number[],
  splits: readonly number[],
  cap: number,
  strips: NarrowRule,
) {
  const entries = order.map((size, at) => ({ size, split: splits[at]! }));
  const free: Space[] = [{ across: 0, along: 0, w: tables.width, h: cap }];
  const laid: number[][] = [];
  for (let space = free.pop(); space; space = free.pop()) {
    const { across, along, w, h } = space;
    const isLoose = {
      side: strips.sideLoose && across + w === tables.width,
      end: strips.endLoose && along + h === cap,
    };
    const isWide = (rest: number, loose: boolean): boolean => rest === 0 || loose || rest >= strips.least;
    const fits = entries.flatMap((entry) =>
      [tables.sizeFirstWay[entry.size]!, tables.sizeSecondWay[entry.size]!]
        .filter((way) => way >= 0 && tables.wayAcross[way]! <= w && tables.wayAlong[way]! <= h)
        .filter((way) => isWide(w - tables.wayAcross[way]!, isLoose.side))
        .filter((way) => isWide(h - tables.wayAlong[way]!, isLoose.end))
        .map((way) => {
          const sides = [tables.wayAcross[way] === w, tables.wayAlong[way] === h].filter(Boolean).length;
          return { entry, way, sides };
        }),
    );
    // The earliest of those that match most sides.
    const best = fits.find(({ sides }) => sides === Math.max(...fits.map((fit) => fit.sides)));
    if (best === undefined) continue;
    entries.splice(entries.indexOf(best.entry), 1);
    laid.push([best.way, along, across]);
    const [pw, ph] = [tables.wayAcross[best.way]!, tables.wayAlong[best.way]!];
    const besideIsSmaller = (w - pw) * ph <= pw * (h - ph);
    const cutAcross = best.entry.split === 0 || (best.entry.split === 2 && besideIsSmaller);
    const beside = { across: across + pw, along, w: w - pw, h: cutAcross ? ph : h };
    const beyond = { across, along: along + ph, w: cutAcross ? w : pw, h: h - ph };
    const area = (s: Space): number => s.w * s.h;
    const [later, sooner] = area(beside) > area(beyond) ? [beside, beyond] : [beyond, beside];
    free.push(...[later, sooner].filter((s) => area(s) > 0));
  }
  return laid;
}

test("the split decode lays pieces as its slow twin does", () => {
  let complete = 0;
  for (let seed = 1; seed <= 300; seed++) {
    const rng = seededRng(seed);
    const { tables, order } = randomOrder(rng);
    const splits = order.map(() => rng.below(3));
    const cap = rng.below(2) === 0 ? 200 : 15;
    const out = splitBuffers(tables);
    const isAny = seed % 3 !== 0;
    const loose = { sideLoose: seed % 2 === 0, endLoose: seed % 4 < 2 };
    const strips = isAny ? ANY_STRIP : { least: 1 + rng.below(4), ...loose };
    const left = decodeSplits(tables, Int32Array.from(order), Uint8Array.from(splits), cap, out, strips);
    const laid = slowSplits(tables, order, splits, cap, strips);
    const found = laid.map((_, i) => [out.outWay[i], out.outAlong[i], out.outAcross[i]]);
    expect(out.result[0], `seed ${seed}`).toBe(laid.length);
    expect(found, `seed ${seed}`).toEqual(laid);
    const placedArea = laid.reduce((sum, [way]) => sum + tables.sizeArea[tables.waySize[way!]!]!, 0);
    expect(left).toBe(tables.area - placedArea);
    expect(out.result[1]).toBe(Math.max(0, ...laid.map(([way, along]) => along! + tables.wayAlong[way!]!)));
    if (left === 0) complete++;
  }
  expect(Math.min(complete, 300 - complete)).toBeGreaterThan(20);
});
