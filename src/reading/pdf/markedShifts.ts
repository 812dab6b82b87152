import { curveArea, curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternLine } from "../../core/patterns/patternDrawing.ts";
import type { ReadPage } from "./readPage.ts";

type Pair = readonly [number, number];

/** A page with what its joints are found by. */
interface Sheet {
  readonly name: string;
  /** Names of the sheets beside it. */
  readonly right: string | null;
  readonly above: string | null;
  /** Middles of its match marks. */
  readonly marks: readonly Pair[];
  readonly width: number;
  readonly height: number;
}

/** A match mark's ring is about so wide across, mm. */
const RING = { least: 2, most: 6 };

/**
 * How far each page is moved, mm, so that sheets of ours lie edge to edge by their match marks: a ring with a cross in
 * it on both sides of each joint, with the neighbour's name beside it. Null unless every page finds its place.
 */
export function markedShifts(pages: readonly ReadPage[]): readonly Pair[] | null {
  if (pages.length < 2) return null;
  const sheets = pages.map(sheetOf);
  const byName = new Map(sheets.map((sheet, i) => [sheet.name, i]));
  const shifts = new Map<number, Pair>();
  const first = sheets.findIndex(({ marks }) => marks.length > 0);
  if (first < 0) return null;
  const left = [first];
  shifts.set(first, [0, 0]);
  for (let i = left.pop(); i !== undefined; i = left.pop())
    for (const [a, b, isAbove] of joints(sheets, byName)) {
      if ((a !== i && b !== i) || (shifts.has(a) && shifts.has(b))) continue;
      const step = stepBetween(sheets[a]!, sheets[b]!, isAbove);
      if (step === null) continue;
      const other = a === i ? b : a;
      const hand = a === i ? 1 : -1;
      const [x, y] = shifts.get(i)!;
      shifts.set(other, [x + hand * step[0], y + hand * step[1]]);
      left.push(other);
    }
  // A map of all the sheets has no joints of its own.
  const placed = sheets.map((sheet, i) => shifts.get(i) ?? (sheet.marks.length === 0 ? null : undefined));
  if (placed.includes(undefined)) return null;
  return placed.map((at) => at ?? [1e5, 1e5]);
}

function joints(sheets: readonly Sheet[], byName: ReadonlyMap<string, number>): [number, number, boolean][] {
  return sheets.flatMap((sheet, a) => {
    const found: [number, number, boolean][] = [];
    const right = sheet.right === null ? undefined : byName.get(sheet.right);
    const above = sheet.above === null ? undefined : byName.get(sheet.above);
    if (right !== undefined) found.push([a, right, false]);
    if (above !== undefined) found.push([a, above, true]);
    return found;
  });
}

function sheetOf(page: ReadPage): Sheet {
  const largest = page.texts.reduce<(typeof page.texts)[number] | null>(
    (best, text) => (best === null || text.size > best.size ? text : best),
    null,
  );
  const named = (shape: RegExp): string | null =>
    page.texts.map(({ text }) => shape.exec(text)?.[1] ?? null).find((name) => name !== null) ?? null;
  return {
    name: largest?.text ?? "",
    right: named(/^(\S+) ›$/u),
    above: named(/^↑ (\S+)$/u),
    marks: page.lines.flatMap((line) => ringMiddle(line) ?? []).filter((middle) => hasCross(page.lines, middle)),
    width: page.frame.box.maxX,
    height: page.frame.box.maxY,
  };
}

function ringMiddle({ curve }: PatternLine): [Pair] | null {
  if (!curve.closed && curve.parts.length < 2) return null;
  const { minX, minY, maxX, maxY } = curveBox(curve);
  const across = maxX - minX;
  if (across < RING.least || across > RING.most || Math.abs(maxY - minY - across) > 0.05) return null;
  const isRound = Math.abs(Math.abs(curveArea(curve)) / (across * across) - Math.PI / 4) < 0.02;
  return isRound ? [[(minX + maxX) / 2, (minY + maxY) / 2]] : null;
}

/** Whether a level and an upright line have their middles where the ring has its own. */
function hasCross(lines: readonly PatternLine[], [x, y]: Pair): boolean {
  const arms = lines.filter(({ curve }) => {
    const [end] = curve.parts;
    if (end?.kind !== "straight" || curve.parts.length !== 1) return false;
    return Math.abs((curve.x + end.x) / 2 - x) < 0.05 && Math.abs((curve.y + end.y) / 2 - y) < 0.05;
  });
  return arms.length >= 2;
}

/** The move that brings the marks at one side of `b` onto those at the facing side of `a`. */
function stepBetween(a: Sheet, b: Sheet, isAbove: boolean): Pair | null {
  const across = isAbove ? 1 : 0;
  const along = isAbove ? 0 : 1;
  const size = (sheet: Sheet): number => (isAbove ? sheet.height : sheet.width);
  const edge = (marks: readonly Pair[], isFar: boolean): Pair[] => {
    const outer = isFar
      ? Math.max(...marks.map((mark) => mark[across]))
      : Math.min(...marks.map((mark) => mark[across]));
    return marks.filter((mark) => Math.abs(mark[across] - outer) < 0.5).sort((p, q) => p[along] - q[along]);
  };
  const ours = edge(a.marks, true).filter((mark) => mark[across] > size(a) / 2);
  const theirs = edge(b.marks, false).filter((mark) => mark[across] < size(b) / 2);
  if (ours.length !== theirs.length || ours.length === 0) return null;
  const mean = (k: 0 | 1): number => ours.reduce((sum, mark, i) => sum + mark[k] - theirs[i]![k], 0) / ours.length;
  return [mean(0), mean(1)];
}
