import { type Box, ringBox } from "../geometry/box.ts";
import { poseRing } from "../geometry/pose.ts";
import type { LayPiece, RollStock, StockPlacement } from "../lay/problem/layProblem.ts";

interface RowWish {
  readonly gap: number;
  readonly margin: number;
  /** Where the maker has put pieces down. */
  readonly byHand: readonly StockPlacement[];
  /** Pieces that lie beside the fold. */
  readonly beside: readonly LayPiece[];
}

/** How near to the fold a half piece put down by hand is meant to lie on it, mm. */
const NEAR_FOLD = 20;

interface Span {
  readonly from: number;
  readonly to: number;
  /** How far from the fold the cloth is taken. */
  readonly depth: number;
  /** Where what takes it begins, from the fold. */
  readonly start: number;
}

/**
 * Half pieces along the fold, each as often as its count if there is room, one behind the other, the deepest first; halves that the maker has put near the fold
 * stay where they are along it, and flaws and pieces put down elsewhere are kept clear of. What a limited roll does
 * not take goes on the next one; what none takes is not in the row.
 *
 * One row is not always the shortest: halves that taper could be set into each other. Units: mm.
 */
export function foldRow(
  onFold: readonly LayPiece[],
  stocks: readonly RollStock[],
  wish: RowWish,
): StockPlacement[] {
  const halves = new Map(onFold.map((piece) => [piece.id, piece]));
  const row: StockPlacement[] = [];
  const taken = new Map(stocks.map((stock) => [stock.id, spansTaken(stock, wish)]));
  for (const pin of wish.byHand) {
    const piece = halves.get(pin.pieceId);
    const stock = stocks.find(({ id }) => id === pin.stockId);
    if (piece === undefined || stock === undefined || pin.copy >= piece.count || !isOnFold(pin)) continue;
    const box = ringBox(piece.outline.outer);
    const span = { from: pin.x + box.minX, to: pin.x + box.maxX, depth: box.maxY, start: 0 };
    if (!fits(span, stock, taken.get(stock.id)!, wish)) continue;
    taken.get(stock.id)!.push(span);
    row.push({ ...pin, y: 0, turnDeg: 0, mirrored: false });
  }
  const deepestFirst = [...halves.values()].sort((a, b) => depthOf(b) - depthOf(a) || (a.id < b.id ? -1 : 1));
  for (const piece of deepestFirst) {
    const byHand = new Set(row.filter(({ pieceId }) => pieceId === piece.id).map(({ copy }) => copy));
    const left = Array.from({ length: piece.count }, (_, copy) => copy).filter((copy) => !byHand.has(copy));
    const placed = placedInRow(piece, left.length, stocks, taken, wish);
    row.push(...placed.map((place, i) => ({ ...place, copy: left[i]! })));
  }
  return renumbered(row);
}

function placedInRow(
  piece: LayPiece,
  count: number,
  stocks: readonly RollStock[],
  taken: ReadonlyMap<string, Span[]>,
  wish: RowWish,
): Omit<StockPlacement, "copy">[] {
  const box = ringBox(piece.outline.outer);
  const placed: Omit<StockPlacement, "copy">[] = [];
  for (const stock of stocks) {
    const spans = taken.get(stock.id)!;
    let from = wish.margin;
    while (placed.length < count) {
      const span = firstRoom({ from, to: from + box.maxX - box.minX, depth: box.maxY, start: 0 }, spans, wish.gap);
      if (!fits(span, stock, spans, wish)) break;
      spans.push(span);
      from = span.to + wish.gap;
      const pose = { x: span.from - box.minX, y: 0, turnDeg: 0, mirrored: false };
      placed.push({ pieceId: piece.id, stockId: stock.id, ...pose });
    }
  }
  return placed;
}

/** The span moved along the fold until nothing is in its way. */
function firstRoom(span: Span, spans: readonly Span[], gap: number): Span {
  let now = span;
  for (;;) {
    const inWay = spans.filter((other) => meets(now, other, gap));
    if (inWay.length === 0) return now;
    const from = Math.max(...inWay.map(({ to }) => to)) + gap;
    now = { ...now, from, to: from + span.to - span.from };
  }
}

/** Rounding that keeps nothing from lying side by side, mm. */
const TOUCH = 1e-9;

function meets(a: Span, b: Span, gap: number): boolean {
  return a.from < b.to + gap - TOUCH && b.from < a.to + gap - TOUCH && b.start < a.depth + gap - TOUCH;
}

function fits(span: Span, stock: RollStock, spans: readonly Span[], { gap, margin }: RowWish): boolean {
  const slack = 1e-9 * stock.width;
  return (
    span.from >= margin - slack &&
    span.to <= (stock.length ?? Infinity) - margin + slack &&
    span.depth <= stock.width - margin + slack &&
    !spans.some((other) => meets(span, other, gap))
  );
}

/** What takes cloth along the fold before any half lies there: flaws, and whole pieces that were put down by hand. */
function spansTaken(stock: RollStock, { byHand, beside }: RowWish): Span[] {
  const whole = new Map(beside.map((piece) => [piece.id, piece]));
  const spanOf = ({ minX, maxX, minY, maxY }: Box): Span => ({ from: minX, to: maxX, depth: maxY, start: minY });
  return [
    ...stock.flaws.map(({ outer }) => ringBox(outer)).filter(({ maxY }) => maxY > 0),
    ...byHand
      .filter(({ stockId }) => stockId === stock.id)
      .flatMap((pin) => {
        const piece = whole.get(pin.pieceId);
        return piece === undefined ? [] : [ringBox(poseRing(piece.outline.outer, pin))];
      }),
  ].map(spanOf);
}

function isOnFold({ y, turnDeg, mirrored }: StockPlacement): boolean {
  return Math.abs(y) <= NEAR_FOLD && !mirrored && turnDeg % 360 === 0;
}

function depthOf({ outline }: LayPiece): number {
  return ringBox(outline.outer).maxY;
}

/** Copies numbered from 0 by piece: those that found no place leave no hole. */
function renumbered(row: readonly StockPlacement[]): StockPlacement[] {
  const next = new Map<string, number>();
  const kept = [...row].sort((a, b) => (a.pieceId === b.pieceId ? a.copy - b.copy : 0));
  return kept.map((placement) => {
    const copy = next.get(placement.pieceId) ?? 0;
    next.set(placement.pieceId, copy + 1);
    return { ...placement, copy };
  });
}

/** What `withoutSpare` has to know of a piece: its half, if it may lie on the fold, and how many are asked for. */
interface RowPart {
  readonly half: { readonly id: string } | null;
  readonly asked: { readonly asDrawn: number };
}

/** The row without a half that is one too many: where it has no room for all, whole ones make up for it two by two. */
export function withoutSpare(laid: readonly RowPart[], row: readonly StockPlacement[]): StockPlacement[] {
  const spare = laid.flatMap(({ half, asked }) => {
    const there = row.filter(({ pieceId }) => pieceId === half?.id).length;
    return there > 0 && (asked.asDrawn - there) % 2 !== 0 ? [{ id: half!.id, copy: there - 1 }] : [];
  });
  return row.filter(({ pieceId, copy }) => !spare.some((one) => one.id === pieceId && one.copy === copy));
}
