import type { LayProblem, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import type { LayFinding } from "../../../core/problems/layProblems.ts";
import type { LayState } from "../../state/layBoard.ts";
import { createStore, type Store } from "../../state/store.ts";
import { type Frame, shiftToTable, toTable } from "./frame.ts";
import { lieOfPlan, lyingNear } from "./lieOfPlan.ts";
import { keyOf, neighbourOf, pinnedKeys, placedBox, placeTroubles, snapped, turned } from "./moves.ts";
import type { PlanCanvas } from "./planCanvas.ts";
import { type StockOnTable, stockAt } from "./stockLayout.ts";

/** Snapping reach on the screen, px. */
const REACH = 10;
/** Steps of the arrow keys, mm. */
const STEP = { usual: 10, fine: 1 };
/** While a piece is carried its place is told in words this often, ms; a new reason why it may not lie there, at once. */
const TELL_EVERY = 200;

/** A piece in hand. */
export interface Held {
  readonly from: StockPlacement;
  readonly now: StockPlacement;
  readonly troubles: readonly LayFinding[];
}

/** What the hand has. */
export interface HandState {
  readonly selected: string | null;
  readonly held: Held | null;
}

/** What the hand works on, as it is now. */
export interface HandTable {
  lay(): LayState;
  stocks(): readonly StockOnTable[];
  canvas(): PlanCanvas | null;
  frame(): Frame;
  /** Makes a place the piece's own, pinned. */
  putDown(placement: StockPlacement): void;
  unpin(key: string): void;
}

/** The hand that selects, moves, turns and pins pieces. */
export interface PieceHand {
  readonly state: Store<HandState>;
  select(key: string | null): void;
  take(key: string): boolean;
  carry(dx: number, dy: number): void;
  drop(moved: boolean): void;
  turn(): void;
  pin(): void;
  unpin(): void;
  /** Shows the piece in hand where it is, after the plan under it was drawn anew. */
  show(): void;
  /** True when the key was for a piece. */
  onKey(event: KeyboardEvent): boolean;
}

/** The selected piece where it is now, or null. */
export function placementOf({ selected, held }: HandState, lay: LayState): StockPlacement | null {
  if (held !== null) return held.now;
  return selected === null ? null : (lieOfPlan(lay.job.problem, lay.plan).byKey.get(selected)?.placement ?? null);
}

/** True when a piece is pinned down in a problem. */
export function isPinned(problem: LayProblem, key: string | null): boolean {
  return key !== null && pinnedKeys(problem).has(key);
}

/** A hand over a plan. While a piece is carried, nothing is drawn but that piece, once a frame. */
export function createPieceHand(table: HandTable): PieceHand {
  const state = createStore<HandState>({ selected: null, held: null });
  let live: Held | null = null;
  let carried: readonly [number, number] | null = null;
  let frameAsked = 0;
  let toldAt = 0;

  const lie = () => lieOfPlan(table.lay().job.problem, table.lay().plan);
  const show = () => {
    if (live === null) return;
    table.canvas()?.place(live.now);
    table.canvas()?.mark(keyOf(live.now), live.troubles.length > 0);
  };
  const hold = (next: Held | null) => {
    const before = live;
    live = next;
    carried = null;
    if (before !== null && next === null) {
      const key = keyOf(before.now);
      const own = lie().byKey.get(key)?.placement;
      if (own !== undefined) table.canvas()?.place(own);
      table.canvas()?.mark(key, false);
      table.canvas()?.lower(key);
    }
    show();
    state.update((now) => ({ ...now, held: next }));
  };
  const select = (selected: string | null) => state.update((now) => ({ ...now, selected }));
  const troublesAt = (now: StockPlacement) => {
    const { problem } = table.lay().job;
    const near = lyingNear(lie(), now.stockId, placedBox(problem, now), problem.gap + 0.01, keyOf(now));
    return placeTroubles(
      problem,
      now,
      near.map(({ placement }) => placement),
    );
  };
  /** Shifted on the table by mm, taken to the stock under it, and drawn to the edges nearby. */
  const shifted = (from: StockPlacement, dx: number, dy: number, reach: number): StockPlacement => {
    const { problem } = table.lay().job;
    const stocks = table.stocks();
    const old = stocks.find(({ stock }) => stock.id === from.stockId);
    const box = placedBox(problem, from);
    const along = (box.minX + box.maxX) / 2 + (old?.offsetX ?? 0) + dx;
    const across = (box.minY + box.maxY) / 2 + (old?.offsetY ?? 0) + dy;
    const next = stockAt(stocks, along, across) ?? old;
    if (next === undefined || old === undefined) return from;
    const moved = {
      ...{ ...from, stockId: next.stock.id },
      x: from.x + dx + old.offsetX - next.offsetX,
      y: from.y + dy + old.offsetY - next.offsetY,
    };
    if (reach <= 0) return moved;
    const near = lyingNear(lie(), next.stock.id, placedBox(problem, moved), reach + problem.gap, keyOf(from));
    return snapped(
      problem,
      next.stock,
      moved,
      near.map((each) => each.box),
      reach,
    );
  };
  const moveCarried = () => {
    if (live === null || carried === null) return;
    const [dx, dy] = shiftToTable(table.frame(), ...carried);
    carried = null;
    const now = shifted(live.from, dx, dy, REACH / table.frame().scale);
    const troubles = troublesAt(now);
    const isNew = codesOf(troubles) !== codesOf(live.troubles);
    live = { from: live.from, now, troubles };
    show();
    const time = performance.now();
    if (!isNew && time - toldAt < TELL_EVERY) return;
    toldAt = time;
    state.update((before) => ({ ...before, held: live }));
  };
  const putDown = (placement: StockPlacement) => {
    const own = live;
    live = null;
    if (own !== null) table.canvas()?.lower(keyOf(own.now));
    state.update((now) => ({ ...now, held: null }));
    table.putDown(placement);
  };
  const step = (key: string, direction: readonly [number, number], isFine: boolean) => {
    const mm = isFine ? STEP.fine : STEP.usual;
    if (live !== null) {
      const now = shifted(live.now, ...onTable(table.frame(), direction, mm), 0);
      hold({ ...live, now, troubles: troublesAt(now) });
      return;
    }
    const next = neighbourOf(key, tableBoxes(lie(), table.stocks()), onTable(table.frame(), direction, 1));
    if (next !== null) pickOut(next);
  };
  const pickOut = (key: string) => {
    select(key);
    requestAnimationFrame(() => table.canvas()?.focus(key));
  };
  const enter = (placement: StockPlacement | null): boolean => {
    const first = lie().byKey.keys().next().value;
    if (placement === null) {
      if (first === undefined) return false;
      pickOut(first);
    } else if (live === null) {
      table.canvas()?.raise(keyOf(placement));
      hold({ from: placement, now: placement, troubles: [] });
    } else if (live.troubles.length === 0) putDown(live.now);
    return true;
  };

  const hand: PieceHand = {
    state,
    show,
    select: (key) => {
      hold(null);
      select(key);
    },
    take: (key) => {
      const from = lie().byKey.get(key)?.placement;
      if (from === undefined) return false;
      if (live !== null) hold(null);
      select(key);
      live = { from, now: from, troubles: [] };
      return true;
    },
    carry: (dx, dy) => {
      if (live === null) return;
      if (state.get().held === null) {
        table.canvas()?.raise(keyOf(live.now));
        state.update((now) => ({ ...now, held: live }));
      }
      carried = [dx, dy];
      cancelAnimationFrame(frameAsked);
      frameAsked = requestAnimationFrame(moveCarried);
    },
    drop: (moved) => {
      cancelAnimationFrame(frameAsked);
      if (live === null) return;
      if (!moved) {
        hold(null);
        return;
      }
      moveCarried();
      // An illegal place is not taken: the piece stays in hand there, with the reason, until it is moved or put back.
      if (live.troubles.length > 0) hold(live);
      else putDown(live.now);
    },
    turn: () => {
      const placement = placementOf(state.get(), table.lay());
      if (placement === null) return;
      const next = turned(table.lay().job.problem, placement);
      const troubles = troublesAt(next);
      if (live === null && troubles.length === 0) putDown(next);
      else hold({ from: live?.from ?? placement, now: next, troubles });
    },
    pin: () => {
      const placement = placementOf(state.get(), table.lay());
      if (placement !== null) putDown(placement);
    },
    unpin: () => {
      const { selected } = state.get();
      if (selected !== null) table.unpin(selected);
    },
    onKey: (event) => {
      const { selected } = state.get();
      const placement = placementOf(state.get(), table.lay());
      const direction = DIRECTIONS[event.key];
      if (event.key === "Enter" || event.key === " ") {
        if (!enter(placement)) return false;
      } else if (selected === null || placement === null) return false;
      else if (direction !== undefined) step(selected, direction, event.shiftKey);
      else if (event.key === "r" || event.key === "R") hand.turn();
      else if (event.key === "p" || event.key === "P")
        isPinned(table.lay().job.problem, selected) ? hand.unpin() : hand.pin();
      else if (event.key === "Escape") live === null ? select(null) : hold(null);
      else return false;
      event.preventDefault();
      event.stopPropagation();
      return true;
    },
  };
  return hand;
}

const DIRECTIONS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function codesOf(troubles: readonly LayFinding[]): string {
  return troubles.map(({ code }) => code).join(" ");
}

/** A direction on the screen (x right, y down) as a shift on the table. */
function onTable(frame: Frame, [dx, dy]: readonly [number, number], mm: number): readonly [number, number] {
  const [x0, y0] = toTable(frame, 0, 0);
  const [x1, y1] = toTable(frame, dx, dy);
  return [Math.sign(Math.round((x1 - x0) * 1e6)) * mm, Math.sign(Math.round((y1 - y0) * 1e6)) * mm];
}

/** Boxes of all pieces on the table, in the table's frame. */
function tableBoxes({ byKey }: ReturnType<typeof lieOfPlan>, stocks: readonly StockOnTable[]) {
  const offsets = new Map(stocks.map((laid) => [laid.stock.id, laid]));
  return new Map(
    [...byKey.values()].map(({ key, box, placement }) => {
      const { offsetX: by = 0, offsetY: up = 0 } = offsets.get(placement.stockId) ?? {};
      return [key, { minX: box.minX + by, maxX: box.maxX + by, minY: box.minY + up, maxY: box.maxY + up }];
    }),
  );
}
