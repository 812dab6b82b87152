import { polygonArea } from "../../../geometry/ring.ts";
import { settledPhases } from "../../problem/lattice.ts";
import type { LayPlan, LayProblem, LayShade, Stock, StockPlacement, StockUse } from "../../problem/layProblem.ts";
import { type Breath, nextTurn } from "../breath.ts";
import { isBetterPlan } from "../comparePlans.ts";
import type { SearchBudget } from "../engine.ts";
import { type Dealt, dealt, withinBands } from "./dealBags.ts";
import type { Arrangement, Arranger, ArrangeStep } from "./layingDesk.ts";
import { leastEffort } from "./layingDesk.ts";
import { cutFrom } from "./restOfStock.ts";
import { unplacedOf, unplacedReasons } from "./unplacedReasons.ts";

/** Of more pieces than this not all are laid at once, which takes long and is hardly ever shared out in bands. */
const MOST_AT_ONCE = 500;

/** Of many bags a block is tried with this share fewer where it does not fit. */
const FEWER = 0.9;

/** Some bags laid together, one block after the other along a stock. */
interface Block extends Dealt {
  readonly stock: Stock;
  readonly start: number;
  readonly bags: number;
  readonly phases: LayProblem["phases"];
}

/** What a round gave: blocks, the bags that found no place, and whether that was for want of a longer band. */
interface Round {
  readonly blocks: readonly Block[];
  readonly left: number;
  readonly isBandTooShort: boolean;
  readonly bound: number | null;
}

type Steps<T> = Generator<ArrangeStep | Breath, T, LayPlan | undefined>;

/**
 * Lays bags in blocks, one after the other along each stock, each of as many bags as lie within their band; where all
 * bags laid at once can be shared out so that each keeps to its band, that is one block. A bag never lies on two stocks.
 * The bound told is that of the pieces without the bands. With pieces laid by hand everything is laid round them, and of
 * bags that do not keep to their band what is not laid by hand is left out.
 */
export function* arrangeBands(
  problem: LayProblem,
  budget: SearchBudget,
  arranger: Arranger,
  seed: number,
): Arrangement {
  const { shade, ...plain } = problem;
  if (problem.pinned.length > 0) return yield* roundPinned(problem, arranger(plain, budget));
  const reasons = unplacedReasons(problem);
  const isLaid = problem.pieces.map((_, i) => reasons(i) === "stock-used-up");
  const bench: Bench = {
    plain: { ...plain, pieces: plain.pieces.filter((_, i) => isLaid[i]) },
    shade: shade!,
    arranger,
    evaluations: 0,
    isExhausted: true,
    known: new Map(),
  };
  let best: LayPlan | null = null;
  let sizes: readonly number[] = [];
  // For each block of bags; later rounds have twice as many each.
  for (let slice = leastEffort(problem); ; slice *= 2) {
    bench.known.clear();
    bench.isExhausted = true;
    const round = yield* laidInBlocks(bench, slice, sizes);
    sizes = round.blocks.map(({ bags }) => bags);
    const plan = composed(problem, round, (i) =>
      isLaid[i] && round.isBandTooShort ? "band-too-short" : reasons(i),
    );
    const isBetter: boolean = isBetterPlan(problem, plan, best);
    if (isBetter) best = { ...plan, evaluations: bench.evaluations, seed };
    const told: LayPlan | undefined = yield { evaluations: bench.evaluations, plan: isBetter ? best : null };
    if (told && isBetterPlan(problem, told, best)) best = told;
    const isOver = bench.evaluations >= budget.evaluations || bench.isExhausted || round.blocks.length === 0;
    if (isOver) return { ...best!, evaluations: bench.evaluations };
  }
}

/** The plans of a search without bands, of which each keeps what lies within them: a host may stop at any. */
function* roundPinned(problem: LayProblem, search: Arrangement): Arrangement {
  let best: LayPlan | null = null;
  let told: LayPlan | undefined;
  for (;;) {
    const step = yield* nextTurn(search, told);
    const { evaluations } = step.value;
    const found: LayPlan | null = step.done ? step.value : step.value.plan;
    const plan = found === null ? null : withinBands(problem, found);
    const isBetter: boolean = plan !== null && isBetterPlan(problem, plan, best);
    if (isBetter) best = plan;
    if (step.done) return { ...best!, evaluations };
    told = yield { evaluations, plan: isBetter ? best : null };
    if (told && isBetterPlan(problem, told, best)) best = told;
  }
}

interface Bench {
  readonly plain: LayProblem;
  readonly shade: LayShade;
  readonly arranger: Arranger;
  evaluations: number;
  /** Every search of this round ended by itself before its slice was spent: another round would find no more. */
  isExhausted: boolean;
  /** Blocks laid on plain cloth in this round: they look the same wherever they begin. */
  readonly known: Map<string, Dealt | null>;
}

/** One round over all stocks: closed ones first. `sizes` are those of the last round's blocks, tried first. */
function* laidInBlocks(bench: Bench, slice: number, sizes: readonly number[]): Steps<Round> {
  const { plain, shade } = bench;
  const isOpen = (stock: Stock): boolean => stock.kind === "roll" && stock.length === null;
  const stocks = [...plain.stocks.filter((stock) => !isOpen(stock)), ...plain.stocks.filter(isOpen)];
  const blocks: Block[] = [];
  let left = shade.bags;
  let isBandTooShort = false;
  let bound: number | null = null;
  let { phases } = plain;
  for (const stock of stocks) {
    let start = 0;
    while (left > 0) {
      const rest = cutFrom(stock, start, plain.pattern);
      if (rest === null) break;
      const known = sizes[blocks.length];
      const found = yield* largestBlock(bench, rest, phases, { slice, most: left, known });
      if (left === shade.bags && isOpen(stock)) bound = found.bound;
      isBandTooShort ||= found.isBandTooShort;
      if (found.block === null) break;
      blocks.push({ ...found.block, stock, start, phases });
      phases = settledPhases(plain.pieces, patternOn(plain, rest), phases, found.block.placements);
      left -= found.block.bags;
      start += found.block.length - 2 * plain.margin + plain.gap;
      if (stock.kind === "remnant") break;
    }
  }
  return { blocks, left, isBandTooShort, bound };
}

function patternOn({ pattern }: LayProblem, { firstLine }: Stock): LayProblem["pattern"] {
  if (pattern === undefined || firstLine === undefined) return pattern;
  return { ...pattern, firstAlong: firstLine[0], firstAcross: firstLine[1] };
}

interface Found {
  readonly block: (Dealt & { readonly bags: number }) | null;
  readonly bound: number | null;
  readonly isBandTooShort: boolean;
}

/** As many bags as lie within their bands at the start of what is left of a stock. */
function* largestBlock(
  bench: Bench,
  stock: Stock,
  phases: LayProblem["phases"],
  { slice, most, known }: { slice: number; most: number; known: number | undefined },
): Steps<Found> {
  const { plain, shade } = bench;
  const perBag =
    plain.pieces.reduce((sum, { outline, count }) => sum + count * polygonArea(outline), 0) / shade.bags;
  const cloth =
    stock.kind === "remnant"
      ? polygonArea(stock.outline)
      : stock.width * Math.min(shade.band, stock.length ?? shade.band);
  const byArea = Math.max(1, Math.min(most, Math.floor(cloth / perBag)));
  let bound: number | null = null;
  // All at once first, unless they are many, which more than one band may part; then as many as a band's area takes, and
  // fewer.
  const pieces = plain.pieces.reduce((sum, { count }) => sum + count, 0) * (most / shade.bags);
  const first = pieces <= MOST_AT_ONCE || most <= byArea ? most : byArea;
  const sizes: number[] = known === undefined ? [first] : [Math.min(known, most)];
  for (let bags = byArea; bags >= 1; bags = bags > 10 ? Math.floor(bags * FEWER) : bags - 1) sizes.push(bags);
  for (const [i, bags] of sizes.entries()) {
    if (i > 0 && bags >= sizes[0]!) continue;
    const laid = yield* laidBags(bench, stock, phases, bags, slice);
    if (bags === most) bound = laid?.bound ?? null;
    if (laid !== null && laid.widest <= shade.band)
      return { block: { ...laid, bags }, bound, isBandTooShort: false };
    if (bags === 1) return { block: null, bound, isBandTooShort: laid !== null };
  }
  return { block: null, bound, isBandTooShort: false };
}

/** Some bags laid on a stock and shared out; null where not all of them find a place. */
function* laidBags(
  bench: Bench,
  stock: Stock,
  phases: LayProblem["phases"],
  bags: number,
  slice: number,
): Steps<Dealt | null> {
  const { plain, shade, arranger, known } = bench;
  const isPlain = stock.kind === "roll" && stock.flaws.length === 0 && plain.pattern === undefined;
  const key = isPlain && stock.length === null ? `${stock.id} ${bags}` : null;
  if (key !== null && known.has(key)) return known.get(key)!;
  const pieces = plain.pieces.map((piece) => ({ ...piece, count: (piece.count / shade.bags) * bags }));
  const problem: LayProblem = { ...plain, pieces, stocks: [stock], phases };
  const search = arranger(problem, { evaluations: slice });
  const before = bench.evaluations;
  for (;;) {
    const step = yield* nextTurn(search);
    bench.evaluations = before + step.value.evaluations;
    if (step.done) {
      if (step.value.evaluations >= slice) bench.isExhausted = false;
      const laid = step.value.unplaced.length > 0 ? null : dealt(problem, step.value, bags);
      if (key !== null) known.set(key, laid);
      return laid;
    }
    yield { evaluations: bench.evaluations, plan: null };
  }
}

function composed(
  problem: LayProblem,
  { blocks, left, bound }: Round,
  reason: Parameters<typeof unplacedOf>[2],
): LayPlan {
  const { pieces, stocks, shade } = problem;
  const each = new Map(pieces.map(({ id, count }) => [id, count / shade!.bags]));
  const placements: StockPlacement[] = [];
  const lengths = new Map<string, number>();
  let first = 0;
  for (const { stock, start, bags, length, placements: own } of blocks) {
    for (const one of own)
      placements.push({ ...one, x: one.x + start, copy: one.copy + first * each.get(one.pieceId)! });
    lengths.set(stock.id, start + length);
    first += bags;
  }
  const laid = new Set(placements.map(({ pieceId }) => pieceId));
  const missing = pieces.map(({ id, count }) =>
    first > 0 && !laid.has(id) ? count : (count / shade!.bags) * left,
  );
  const isWhole = missing.every((count) => count === 0);
  const uses = stocks.map((stock): StockUse => {
    const usedLength = lengths.get(stock.id) ?? 0;
    return { stockId: stock.id, usedLength, bound: usedLength > 0 && isWhole && lengths.size === 1 ? bound : null };
  });
  const unplaced = unplacedOf(problem, missing, reason);
  return { materialId: problem.materialId, placements, unplaced, uses, evaluations: 0, seed: 0 };
}
