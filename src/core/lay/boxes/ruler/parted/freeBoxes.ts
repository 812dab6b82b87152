import type { Rng } from "../../../search/rng.ts";
import type { CutBox } from "../../cuts/cutTree.ts";
import { largestFreeBox } from "../../cuts/largestFreeBox.ts";

/** A box with a side shorter than this is not worth a cut, mm. */
const LEAST_SIDE = 20;
/** Most boxes that cloth is parted into. */
const MOST = 40;

/** Cloth with places that no piece may touch. Boxes in mm. */
export interface Obstructed {
  readonly box: CutBox;
  /** Flaws, cloth that is not there and pinned pieces, each grown by the distance to keep. */
  readonly blocked: readonly CutBox[];
  /** Pinned pieces as they lie: cuts run past them, not through them. */
  readonly pins: readonly CutBox[];
  /** Distance between pieces. */
  readonly gap: number;
}

/**
 * Free boxes that edge-to-edge cuts part from each other and from everything blocked: the largest one first, with
 * cuts along its sides, then the same with what is left round it. Cuts may run through flaws. Whether crosscuts or
 * rips come first is left to `rng`, but no cut parts a pinned piece.
 */
export function freeBoxes({ box, blocked, pins, gap }: Obstructed, rng: Rng): CutBox[] {
  const found: CutBox[] = [];
  const waiting = [box];
  while (waiting.length > 0 && found.length < MOST) {
    const whole = waiting.pop()!;
    if (whole.dx < LEAST_SIDE || whole.dy < LEAST_SIDE) continue;
    const here = blocked.filter((other) => overlaps(whole, other));
    const free = here.length === 0 ? whole : largestFreeBox(whole, here, LEAST_SIDE);
    if (free === null) continue;
    const crosscutFirst = rng.below(2) === 0;
    const rest = [crosscutFirst, !crosscutFirst]
      .map((first) => around(whole, free, gap, first))
      .find((parts) => isUncut(pins, parts, whole));
    if (rest === undefined) continue;
    found.push(free);
    waiting.push(...rest);
  }
  return found;
}

/** What lies round a box inside another, `gap` away from it, in the order of the cuts. */
function around(whole: CutBox, free: CutBox, gap: number, crosscutFirst: boolean): CutBox[] {
  const x0 = free.x - gap;
  const x1 = free.x + free.dx + gap;
  const y0 = free.y - gap;
  const y1 = free.y + free.dy + gap;
  const [right, top] = [whole.x + whole.dx, whole.y + whole.dy];
  const boxes = crosscutFirst
    ? [
        { ...whole, dx: x0 - whole.x },
        { ...whole, x: x1, dx: right - x1 },
        { ...free, y: whole.y, dy: y0 - whole.y },
        { ...free, y: y1, dy: top - y1 },
      ]
    : [
        { ...whole, dy: y0 - whole.y },
        { ...whole, y: y1, dy: top - y1 },
        { ...free, x: whole.x, dx: x0 - whole.x },
        { ...free, x: x1, dx: right - x1 },
      ];
  return boxes.filter(({ dx, dy }) => dx > 0 && dy > 0);
}

/** Whether every pinned piece of the whole lies in one part, or in none. */
function isUncut(pins: readonly CutBox[], parts: readonly CutBox[], whole: CutBox): boolean {
  return pins
    .filter((pin) => overlaps(pin, whole))
    .every((pin) => parts.some((part) => holds(part, pin)) || !parts.some((part) => overlaps(part, pin)));
}

function overlaps(a: CutBox, b: CutBox): boolean {
  return a.x < b.x + b.dx && b.x < a.x + a.dx && a.y < b.y + b.dy && b.y < a.y + a.dy;
}

function holds(a: CutBox, b: CutBox): boolean {
  const slack = 1e-6;
  return (
    b.x >= a.x - slack && b.y >= a.y - slack && b.x + b.dx <= a.x + a.dx + slack && b.y + b.dy <= a.y + a.dy + slack
  );
}
