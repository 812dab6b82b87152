import { quickBoundSteps } from "../../bounds/quickBound.ts";
import { rectangleJobOf } from "../../problem/rectangles/prepare.ts";
import { provenLength } from "../../problem/rectangles/regionPlan.ts";
import { searchTablesOf } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { inOneGo } from "../../search/breath.ts";
import type { Engine, Search, SearchStep } from "../../search/engine.ts";
import { type Rng, seededRng } from "../../search/rng.ts";
import { boxesOf, isLess, type LayingRule, type Standing } from "./layingRule.ts";
import { type MatchedJob, matchedJobOf, matchedPlan } from "./matchedJob.ts";
import { countNarrowStrips, type NarrowWish, narrowWishOf, tollWith } from "./narrowWish.ts";

/** Looks between two turns: some milliseconds. */
const LOOKS_PER_TURN = 2_500;
/** What making an order costs, in looks. */
const LOOKS_PER_ORDER = 8;
/** Orders tried in vain before the search starts again from another one, at most and in the shortest runs. */
const PATIENCE = 400;
const SHORT = 50;
/** Orders drawn of which the best is begun with. */
const DRAWN = 8;
/** A worse order is taken up with this chance at first. */
const HEAT = 0.02;

/** An order of boxes: kinds, one entry a copy, the ways wished for (−1: any) and what the rule heeds besides. */
interface Order {
  readonly kinds: readonly number[];
  readonly ways: readonly number[];
  readonly hints: readonly number[];
}

/** An order laid: how it stood before each of its boxes, and after the last. */
interface Laid<S> {
  readonly order: Order;
  readonly trail: readonly S[];
}

/**
 * Boxes laid by a rule in orders that are improved by small changes; all phases are known. `heeds`: plans whose ruler cuts
 * take off strips narrower than the job's least one count as longer than they are.
 */
export function ordersEngine<S extends Standing>(
  id: string,
  accepts: (job: RegionJob) => boolean,
  rule: LayingRule<S>,
  heeds = false,
): Engine {
  return {
    id,
    heedsStrips: heeds,
    accepts,
    *search(job, budget, seed): Search {
      const prepared = matchedJobOf(job);
      const bound = boundOf(job);
      let evaluations = 0;
      const wish = heeds ? narrowWishOf(prepared, bound) : null;
      let best = null as { standing: S; plan: RegionPlan } | null;
      let fresh = false;
      const offer = (laid: S): void => {
        // What the rule takes for a strip may close up, and what closes up may leave one.
        if (best !== null && !isLess({ ...laid, toll: 0 }, best.standing)) return;
        const boxes = boxesOf(laid);
        const strips = wish === null ? 0 : countNarrowStrips(prepared, boxes, laid.end, wish.least);
        const standing = { ...laid, toll: tollWith(0, strips, wish) };
        if (best !== null && !isLess(standing, best.standing)) return;
        best = { standing, plan: { ...matchedPlan(prepared, boxes), toll: standing.toll } };
        fresh = true;
      };
      const step = (): SearchStep => {
        const plan = fresh ? best!.plan : null;
        fresh = false;
        return { evaluations, plan, bound };
      };
      const bench = new Bench(prepared, rule);
      let start = null as Order | null;
      for (const order of startOrders(prepared, rule.hints)) {
        const laid = bench.lay(order, null, 0, null, wish)!;
        if (best === null || isLess(lastOf(laid), best.standing)) start = order;
        offer(lastOf(laid));
      }
      evaluations = bench.looks;
      yield step();
      if (start!.kinds.length === 0) return best!.plan;
      const rng = seededRng(seed);
      // Minding strips at every box leads past orders that leave none by themselves: every second run does not, and is
      // judged by what it ends with.
      for (let since = evaluations, run = 1; evaluations < budget.evaluations; run++) {
        const begin = run % 2 === 1 ? shuffled(start!, rng) : bestDrawn(bench, rng, wish);
        const runWish = run % 4 < 2 ? wish : null;
        for (const standing of improved(bench, begin, rng, runWish, patienceOf(run))) {
          evaluations = bench.looks;
          if (standing !== null) offer(standing);
          if (evaluations - since < LOOKS_PER_TURN) continue;
          since = evaluations;
          yield step();
          if (evaluations >= budget.evaluations) break;
        }
      }
      if (fresh) yield step();
      return best!.plan;
    },
  };
}

/** Shortest length proven for the same boxes laid anywhere, mm: no plan on the pattern is shorter. */
export function boundOf(job: RegionJob): number | null {
  if (job.goal !== "shortest") return null;
  const prepared = rectangleJobOf(job);
  const tables = searchTablesOf(prepared);
  if (tables.pieces === 0) return null;
  return provenLength(prepared, tables, Math.max(inOneGo(quickBoundSteps(tables)), prepared.pinnedEnd));
}

/** Lays orders, going on from what an order before it has in common. */
class Bench<S extends Standing> {
  readonly job: MatchedJob;
  readonly hints: number;
  /** Places looked at so far. */
  looks = 0;
  readonly #rule: LayingRule<S>;

  constructor(job: MatchedJob, rule: LayingRule<S>) {
    this.job = job;
    this.hints = rule.hints;
    this.#rule = rule;
  }

  /**
   * Lays an order that is like `as` up to the box `from`. Null as soon as it is worse than `least`, where there is one:
   * what is left out and where it ends only ever grow.
   */
  lay(order: Order, as: Laid<S> | null, from: number, least: S | null, wish: NarrowWish | null): Laid<S> | null {
    const trail = as === null ? [this.#rule.start(this.job)] : as.trail.slice(0, from + 1);
    const spend = (looks: number): void => {
      this.looks += looks;
    };
    this.looks += LOOKS_PER_ORDER;
    for (let i = trail.length - 1; i < order.kinds.length; i++) {
      const [kind, way, hint] = [order.kinds[i]!, order.ways[i]!, order.hints[i]!];
      const next = this.#rule.lay(this.job, trail[i]!, kind, way, hint, spend, wish);
      if (least !== null && isLess(least, next)) return null;
      trail.push(next);
    }
    return { order, trail };
  }
}

function lastOf<S>({ trail }: Laid<S>): S {
  return trail[trail.length - 1]!;
}

/** Every copy's kind by falling area, length and width; each hint for all alike. */
function startOrders({ kinds }: MatchedJob, hints: number): Order[] {
  const copies = kinds.flatMap(({ copies: own }, kind) => own.map(() => kind));
  const size = (kind: number, of: "along" | "across"): number =>
    Math.max(0, ...kinds[kind]!.ways.map((way) => way[of]));
  const by = (value: (kind: number) => number): number[] =>
    [...copies].sort((a, b) => value(b) - value(a) || a - b);
  const sorted = [
    by((kind) => kinds[kind]!.area),
    by((kind) => size(kind, "along")),
    by((kind) => size(kind, "across")),
  ];
  const ways = copies.map(() => -1);
  return Array.from({ length: Math.max(1, hints) }, (_, hint) => copies.map(() => hint)).flatMap((own) =>
    sorted.map((order): Order => ({ kinds: order, ways, hints: own })),
  );
}

/** Orders tried in vain in one of many runs: every second one is short, every fourth twice as long, and so on. */
function patienceOf(run: number): number {
  return Math.min(PATIENCE, SHORT * (run & -run));
}

/** An order with some of its copies elsewhere, in any of their ways. */
function shuffled({ kinds: old, hints }: Order, rng: Rng): Order {
  const kinds = [...old];
  for (let i = kinds.length - 1; i > 0; i--) if (rng.unit() < 0.3) swap(kinds, i, rng.below(i + 1));
  return { kinds, ways: kinds.map(() => -1), hints };
}

/** The best of a few orders as a maker would think of them. */
function bestDrawn<S extends Standing>(bench: Bench<S>, rng: Rng, wish: NarrowWish | null): Order {
  let best = null as Laid<S> | null;
  for (let i = 0; i < DRAWN; i++) {
    const laid = bench.lay(drawnOrder(bench, rng), null, 0, null, wish)!;
    if (best === null || isLess(lastOf(laid), lastOf(best))) best = laid;
  }
  return best!.order;
}

/** Kinds in any order, each with one hint: the first ones by themselves, the others evenly mixed as the parts of a bag go together. */
function drawnOrder({ job, hints: most }: Bench<Standing>, rng: Rng): Order {
  const order = job.kinds.map((_, kind) => kind);
  for (let i = order.length - 1; i > 0; i--) swap(order, i, rng.below(i + 1));
  const alone = rng.below(order.length + 1);
  const placed = order.flatMap((kind, i) =>
    job.kinds[kind]!.copies.map((_, nth, { length }) => ({ kind, i, at: i < alone ? i - alone : nth / length })),
  );
  const kinds = placed.sort((a, b) => a.at - b.at || a.i - b.i).map(({ kind }) => kind);
  const hints = job.kinds.map(() => (most > 0 ? rng.below(most) : 0));
  return { kinds, ways: kinds.map(() => -1), hints: kinds.map((kind) => hints[kind]!) };
}

/** Changes an order by small steps until nothing has come of it for long; yields every laying that was finished. */
function* improved<S extends Standing>(
  bench: Bench<S>,
  start: Order,
  rng: Rng,
  wish: NarrowWish | null,
  patience: number,
): Generator<S | null> {
  let now = bench.lay(start, null, 0, null, wish)!;
  yield lastOf(now);
  let best = lastOf(now);
  for (let idle = 0, tries = 0; idle < patience; tries++) {
    const isTakenAnyway = rng.unit() < HEAT / (1 + tries / 500);
    const { order, from } = changed(bench, now.order, rng);
    const next = bench.lay(order, now, from, isTakenAnyway ? null : lastOf(now), wish);
    idle++;
    yield next && lastOf(next);
    if (next === null) continue;
    const [is, was] = [lastOf(next), lastOf(now)];
    if (isLess(is, best)) [best, idle] = [is, 0];
    if (isTakenAnyway || isLess(is, was) || is.moment <= was.moment) now = next;
  }
}

/** An order with one small change, and the first box that it changes. */
function changed<S extends Standing>(
  { job, hints: most }: Bench<S>,
  order: Order,
  rng: Rng,
): { readonly order: Order; readonly from: number } {
  const [kinds, ways, hints] = [[...order.kinds], [...order.ways], [...order.hints]];
  const n = kinds.length;
  const i = rng.below(n);
  const what = rng.below(most > 0 ? 4 : 3);
  const own = job.kinds[kinds[i]!]!.ways.length;
  if (what === 3) {
    hints[i] = rng.below(most);
    return { order: { kinds, ways, hints }, from: i };
  }
  if (what === 0 && own > 1) {
    ways[i] = rng.below(own + 1) - 1;
    return { order: { kinds, ways, hints }, from: i };
  }
  let j = rng.below(n);
  // Copies that are alike change places in vain.
  const isAlike = (): boolean => kinds[i] === kinds[j] && ways[i] === ways[j] && hints[i] === hints[j];
  for (let tries = 0; tries < n && isAlike(); tries++) j = rng.below(n);
  for (const list of [kinds, ways, hints])
    if (what === 1) swap(list, i, j);
    else list.splice(j, 0, ...list.splice(i, 1));
  return { order: { kinds, ways, hints }, from: Math.min(i, j) };
}

function swap(list: number[], i: number, j: number): void {
  const held = list[i]!;
  list[i] = list[j]!;
  list[j] = held;
}
