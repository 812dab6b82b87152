import { type Box, ringBox } from "../../geometry/box.ts";
import { intersectionOf, ringsOf } from "../../geometry/clipper.ts";
import type { Contour } from "../../geometry/contour.ts";
import { ringContour } from "../../geometry/contourShapes.ts";
import type { Ring } from "../../geometry/ring.ts";
import type { LayPattern, Stock } from "../../lay/problem/layProblem.ts";

/** Share of a repeat that a stripe takes, and half of a motif. */
const STRIPE = 0.3;
const MOTIF = 0.2;
/** The line beside a stripe that has a top: where it begins and how wide it is, as shares of a repeat. */
const BESIDE = 0.27;
const THIN = 0.07;
/** More stripes or motifs than this only make a grey sheet, and are not drawn. */
const MOST_MARKS = 4_000;

/**
 * The pattern of a cloth as areas over a stock: stripes with their middle on each line, or motifs on each place where two
 * lines meet; the contours of each mark by themselves. A pattern with a top shows which way it is: a thin line after
 * each stripe, motifs that point.
 */
export function patternArt(pattern: LayPattern, stock: Stock, usedLength: number): Contour[][] {
  const box = boxOf(stock, usedLength);
  const marks = marksOf(pattern, stock, box);
  if (marks.length === 0 || marks.length > MOST_MARKS) return [];
  const cloth =
    stock.kind === "roll"
      ? [Float64Array.of(box.minX, box.minY, box.maxX, box.minY, box.maxX, box.maxY, box.minX, box.maxY)]
      : ringsOf(stock.outline);
  return intersectionOf(marks, cloth).map(({ outer, holes }) => [outer, ...holes].map(ringContour));
}

function boxOf(stock: Stock, usedLength: number): Box {
  if (stock.kind === "remnant") return ringBox(stock.outline.outer);
  return { minX: 0, minY: 0, maxX: usedLength, maxY: stock.width };
}

function marksOf(pattern: LayPattern, stock: Stock, box: Box): Ring[] {
  const [firstAlong, firstAcross] = stock.firstLine ?? [pattern.firstAlong, pattern.firstAcross];
  const { along, across, symmetric, halfDrop } = pattern;
  const xs = along === null ? [] : linesOf(firstAlong, along, box.minX, box.maxX);
  const ys = across === null ? [] : linesOf(firstAcross, across, box.minY, box.maxY);
  if (xs.length * Math.max(1, ys.length) > MOST_MARKS) return [];
  if (along !== null && across !== null) {
    const size = MOTIF * Math.min(along, across);
    return ys.flatMap((y) => {
      const row = Math.round((y - firstAcross) / across);
      const drop = halfDrop && row % 2 !== 0 ? along / 2 : 0;
      return xs.map((x) => motif(x + drop, y, size, symmetric));
    });
  }
  if (along !== null)
    return bands(xs, along, symmetric).map(([from, to]) => rectangle(from, box.minY, to, box.maxY));
  return bands(ys, across ?? 0, symmetric).map(([from, to]) => rectangle(box.minX, from, box.maxX, to));
}

/** Lines from one repeat before a box to one after it. */
function linesOf(first: number, repeat: number, from: number, to: number): number[] {
  const start = Math.floor((from - first) / repeat) - 1;
  const count = Math.min(MOST_MARKS + 1, Math.ceil((to - from) / repeat) + 3);
  return Array.from({ length: count }, (_, i) => first + (start + i) * repeat);
}

function bands(lines: readonly number[], repeat: number, symmetric: boolean): (readonly [number, number])[] {
  const half = (STRIPE * repeat) / 2;
  return lines.flatMap((at) => [
    [at - half, at + half] as const,
    ...(symmetric ? [] : [[at + BESIDE * repeat, at + (BESIDE + THIN) * repeat] as const]),
  ]);
}

/** A diamond, or one with its far corner drawn out where motifs have a top. */
function motif(x: number, y: number, size: number, symmetric: boolean): Ring {
  const tip = symmetric ? size : 1.8 * size;
  return Float64Array.of(x - size, y, x, y - size, x + tip, y, x, y + size);
}

function rectangle(fromX: number, fromY: number, toX: number, toY: number): Ring {
  return Float64Array.of(fromX, fromY, toX, fromY, toX, toY, fromX, toY);
}
