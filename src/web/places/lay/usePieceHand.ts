import type { RefObject } from "preact";
import { useMemo, useRef, useState } from "preact/hooks";
import type { Box } from "../../../core/geometry/ring.ts";
import type { StockPlacement } from "../../../core/lay/types.ts";
import type { LayFinding } from "../../../core/problems/layProblems.ts";
import type { LayState } from "../../state/lays.ts";
import { useChange, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { type Frame, shiftToTable, toTable } from "./frame.ts";
import { keyOf, neighbourOf, placedBox, placeTroubles, snapped, turned, withPlacement } from "./moves.ts";
import type { PlanCanvas } from "./planCanvas.ts";
import { type LaidStock, stockAt } from "./stockLayout.ts";

/** Snapping reach on the screen, px. */
const REACH = 10;
/** Steps of the arrow keys, mm. */
const STEP = { usual: 10, fine: 1 };

/** The hand that selects, moves, turns and pins pieces. */
export interface PieceHand {
  readonly placements: readonly StockPlacement[];
  readonly selected: string | null;
  /** The selected piece where it is now. */
  readonly placement: StockPlacement | null;
  readonly isHeld: boolean;
  readonly isPinned: boolean;
  readonly wrong: ReadonlySet<string>;
  readonly troubles: readonly LayFinding[];
  select(key: string | null): void;
  take(key: string): boolean;
  carry(dx: number, dy: number): void;
  drop(moved: boolean): void;
  turn(): void;
  pin(): void;
  unpin(): void;
  /** True when the key was for a piece. */
  onKey(event: KeyboardEvent): boolean;
}

interface Held {
  readonly from: StockPlacement;
  readonly now: StockPlacement;
  readonly troubles: readonly LayFinding[];
}

/** The state of the hand over a plan. */
export function usePieceHand(
  lay: LayState,
  stocks: readonly LaidStock[],
  canvas: RefObject<PlanCanvas | null>,
  frame: RefObject<Frame>,
): PieceHand {
  const { problem, material } = lay.job;
  const { board } = useWorkbench();
  const change = useChange();
  const texts = useTexts();
  const [selected, select] = useState<string | null>(null);
  const [held, setHeld] = useState<Held | null>(null);
  const live = useRef<Held | null>(null);
  const checking = useRef(0);
  const placed = lay.plan?.placements ?? [];
  const boxes = useMemo(
    () => new Map(placed.map((each) => [keyOf(each), placedBox(problem, each)])),
    [problem, placed],
  );
  const placements =
    held === null ? placed : placed.map((each) => (keyOf(each) === keyOf(held.now) ? held.now : each));
  const placement = selected === null ? null : (placements.find((each) => keyOf(each) === selected) ?? null);

  const hold = (next: Held | null) => {
    live.current = next;
    setHeld(next);
  };
  const troublesAt = (now: StockPlacement) => placeTroubles(problem, now, placed, boxes);
  const putDown = (now: StockPlacement) => {
    const plan = lay.plan;
    if (plan === null) return;
    board.showMoved(material.id, withPlacement(plan, now));
    const pin = { materialId: material.id, ...now };
    change(
      (project) => ({
        ...project,
        pins: [
          ...project.pins.filter((other) => other.materialId !== material.id || keyOf(other) !== keyOf(now)),
          pin,
        ],
      }),
      texts.lay.moved,
    );
  };
  const unpin = () =>
    change(
      (project) => ({
        ...project,
        pins: project.pins.filter((pin) => pin.materialId !== material.id || keyOf(pin) !== selected),
      }),
      texts.lay.unpinned,
    );
  /** Shifted on the table by mm, taken to the stock under it, and drawn to the edges nearby. */
  const shifted = (from: StockPlacement, dx: number, dy: number, reach: number): StockPlacement => {
    const old = stocks.find(({ stock }) => stock.id === from.stockId);
    const box = placedBox(problem, from);
    const middle = (box.minY + box.maxY) / 2 + (old?.offsetY ?? 0) + dy;
    const next = stockAt(stocks, middle) ?? old;
    if (next === undefined || old === undefined) return from;
    const moved = { ...from, stockId: next.stock.id, x: from.x + dx, y: from.y + dy + old.offsetY - next.offsetY };
    const others = placed.flatMap((each) =>
      each.stockId === next.stock.id && keyOf(each) !== keyOf(from) ? [boxes.get(keyOf(each))!] : [],
    );
    return reach > 0 ? snapped(problem, next.stock, moved, others as Box[], reach) : moved;
  };
  const checkSoon = () => {
    cancelAnimationFrame(checking.current);
    checking.current = requestAnimationFrame(() => {
      const now = live.current;
      if (now === null) return;
      const troubles = troublesAt(now.now);
      canvas.current?.mark(keyOf(now.now), troubles.length > 0);
      hold({ ...now, troubles });
    });
  };

  const hand: PieceHand = {
    placements,
    selected,
    placement,
    isHeld: held !== null,
    isPinned: problem.pinned.some((pin) => keyOf(pin) === selected),
    wrong: new Set(held !== null && held.troubles.length > 0 ? [keyOf(held.now)] : []),
    troubles: held?.troubles ?? [],
    select: (key) => {
      hold(null);
      select(key);
    },
    take: (key) => {
      const from = placed.find((each) => keyOf(each) === key);
      if (from === undefined) return false;
      select(key);
      live.current = { from, now: from, troubles: [] };
      canvas.current?.raise(key);
      return true;
    },
    carry: (dx, dy) => {
      const now = live.current;
      if (now === null) return;
      const next = shifted(now.from, ...shiftToTable(frame.current, dx, dy), REACH / frame.current.scale);
      live.current = { ...now, now: next };
      canvas.current?.place(next);
      checkSoon();
    },
    drop: (moved) => {
      cancelAnimationFrame(checking.current);
      const now = live.current;
      if (now === null) return;
      if (!moved) {
        hold(null);
        return;
      }
      const troubles = troublesAt(now.now);
      // An illegal place is not taken: the piece stays in hand there, with the reason, until it is moved or put back.
      if (troubles.length > 0) hold({ from: now.from, now: now.now, troubles });
      else {
        hold(null);
        putDown(now.now);
      }
    },
    turn: () => {
      if (placement === null) return;
      const next = turned(problem, placement);
      const troubles = troublesAt(next);
      if (held === null && troubles.length === 0) putDown(next);
      else hold({ from: held?.from ?? placement, now: next, troubles });
    },
    pin: () => placement !== null && putDown(placement),
    unpin,
    onKey: (event) => {
      const directions: Record<string, readonly [number, number]> = {
        ArrowLeft: [-1, 0],
        ArrowRight: [1, 0],
        ArrowUp: [0, -1],
        ArrowDown: [0, 1],
      };
      const direction = directions[event.key];
      const key = selected;
      if (event.key === "Enter" || event.key === " ") {
        if (placement === null) {
          const first = placed[0];
          if (first === undefined) return false;
          select(keyOf(first));
          requestAnimationFrame(() => canvas.current?.focus(keyOf(first)));
        } else if (held === null) hold({ from: placement, now: placement, troubles: [] });
        else if (held.troubles.length === 0) {
          hold(null);
          putDown(held.now);
        }
      } else if (key === null || placement === null) return false;
      else if (direction !== undefined && held !== null) {
        const step = event.shiftKey ? STEP.fine : STEP.usual;
        const now = shifted(held.now, ...onTable(frame.current, direction, step), 0);
        hold({ ...held, now, troubles: troublesAt(now) });
      } else if (direction !== undefined) {
        const onTableBoxes = tableBoxes(placed, boxes, stocks);
        const next = neighbourOf(key, onTableBoxes, onTable(frame.current, direction, 1));
        if (next !== null) {
          select(next);
          requestAnimationFrame(() => canvas.current?.focus(next));
        }
      } else if (event.key === "r" || event.key === "R") hand.turn();
      else if (event.key === "p" || event.key === "P") hand.isPinned ? unpin() : hand.pin();
      else if (event.key === "Escape") held === null ? select(null) : hold(null);
      else return false;
      event.preventDefault();
      event.stopPropagation();
      return true;
    },
  };
  return hand;
}

/** A direction on the screen (x right, y down) as a shift on the table. */
function onTable(frame: Frame, [dx, dy]: readonly [number, number], mm: number): readonly [number, number] {
  const [x0, y0] = toTable(frame, 0, 0);
  const [x1, y1] = toTable(frame, dx, dy);
  return [Math.sign(Math.round((x1 - x0) * 1e6)) * mm, Math.sign(Math.round((y1 - y0) * 1e6)) * mm];
}

function tableBoxes(
  placements: readonly StockPlacement[],
  boxes: ReadonlyMap<string, Box>,
  stocks: readonly LaidStock[],
): ReadonlyMap<string, Box> {
  const offsets = new Map(stocks.map(({ stock, offsetY }) => [stock.id, offsetY]));
  return new Map(
    placements.map((each) => {
      const box = boxes.get(keyOf(each))!;
      const up = offsets.get(each.stockId) ?? 0;
      return [keyOf(each), { ...box, minY: box.minY + up, maxY: box.maxY + up }];
    }),
  );
}
