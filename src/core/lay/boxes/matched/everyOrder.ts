import type { FreeAxis } from "../../search/phases/phaseChoices.ts";
import { type Hold, type LaidBox, type MatchedJob, ROUNDING } from "./matchedJob.ts";

/** Boxes for which every order is tried. */
export const MOST_BOXES = 8;
/** Places looked at before that is given up, and between two pauses. */
const MOST_LOOKS = 6_000_000;
const LOOKS_PER_PAUSE = 20_000;

/** A phase that is free, and the values to try. */
const FREE = NaN;

/** A way with what it takes to know its rungs once the phases are known: slots of phases along and across, or −1. */
interface Form {
  readonly way: number;
  readonly along: number;
  readonly across: number;
  readonly x: Hold | null;
  readonly y: Hold | null;
  readonly slotX: number;
  readonly slotY: number;
  readonly halfDrop: boolean;
}

/**
 * The shortest laying of a few boxes on open cloth, shorter than `shorterThan`, told through `offer`; true when none
 * shorter is left. Each box goes right of or above every box before it, as far left as it then can: any plan of
 * rectangles can be built up that way (Martello, Pisinger & Vigo 2000, Operations Research 48, from memory), and pushing
 * boxes left and down to their rungs makes none longer. Free phases are chosen with the first box of their group, from
 * `axes`. Yields the looks of each turn.
 */
export function* everyOrder(
  job: MatchedJob,
  axes: readonly FreeAxis[],
  shorterThan: number,
  offer: (end: number, laid: readonly LaidBox[]) => void,
): Generator<number, boolean> {
  const { kinds, fromX, fromY, toY } = job;
  const { phases, values, forms } = phaseSlots(job, axes);
  const rest = kinds.map(({ copies }) => copies.length);
  const width = toY - fromY;
  const gross = kinds.map(({ ways }) => Math.min(...ways.map(({ along, across }) => along * across)));
  const stack: LaidBox[] = [];
  const right: number[] = [];
  const top: number[] = [];
  let areaToCome = kinds.reduce((sum, _, kind) => sum + gross[kind]! * rest[kind]!, 0);
  let best = shorterThan;
  let looks = 0;
  let told = 0;

  /** Area under the steps of what is laid: nothing more comes to lie there. */
  const hidden = (): number => {
    let area = 0;
    let high = fromY;
    for (;;) {
      // The furthest of the boxes that reach above what is counted.
      let far = -1;
      for (let i = 0; i < top.length; i++)
        if (
          top[i]! > high &&
          (far < 0 || right[i]! > right[far]! || (right[i] === right[far] && top[i]! > top[far]!))
        )
          far = i;
      if (far < 0) return area;
      area += (top[far]! - high) * (right[far]! - fromX);
      high = top[far]!;
    }
  };

  function* place(kind: number, form: Form, end: number): Generator<number, boolean> {
    const { x: holdX, y: holdY, slotX, slotY, along, across } = form;
    const seen: number[] = [];
    for (let s = -1; s < top.length; s++) {
      const y =
        holdY === null ? (s < 0 ? fromY : top[s]!) : rungFrom(holdY, phases[slotY]!, s < 0 ? fromY : top[s]!);
      if (y + across > toY + ROUNDING || seen.some((other) => Math.abs(other - y) < ROUNDING)) continue;
      seen.push(y);
      if (++looks >= MOST_LOOKS) return false;
      if (looks - told >= LOOKS_PER_PAUSE) {
        yield looks - told;
        told = looks;
      }
      let from = fromX;
      for (let i = 0; i < top.length; i++) if (top[i]! > y + ROUNDING && right[i]! > from) from = right[i]!;
      let x = from;
      if (holdX !== null) {
        const row = form.halfDrop ? Math.round((y - offsetOf(holdY!, phases[slotY]!)) / holdY!.period) : 0;
        x = rungFrom(holdX, phases[slotX]!, from, row % 2 === 0 ? 0 : holdX.period / 2);
      }
      if (x + along >= best) continue;
      stack.push({ kind, way: form.way, x, y });
      right.push(x + along);
      top.push(y + across);
      rest[kind]!--;
      areaToCome -= gross[kind]!;
      const done = yield* extend(Math.max(end, x + along));
      areaToCome += gross[kind]!;
      rest[kind]!++;
      top.pop();
      right.pop();
      stack.pop();
      if (!done) return false;
    }
    return true;
  }

  /** A box in each phase of the slots that are free. */
  function* choose(kind: number, form: Form, end: number, slot: number): Generator<number, boolean> {
    if (slot < 0 || !Number.isNaN(phases[slot])) {
      if (slot !== form.slotY && form.slotY >= 0) return yield* choose(kind, form, end, form.slotY);
      return yield* place(kind, form, end);
    }
    for (const value of values[slot]!) {
      phases[slot] = value;
      const done = yield* choose(kind, form, end, slot);
      if (!done) return false;
    }
    phases[slot] = FREE;
    return true;
  }

  function* extend(end: number): Generator<number, boolean> {
    if (stack.length > 0 && areAll(rest)) {
      best = end - ROUNDING;
      offer(end, [...stack]);
      return true;
    }
    if (hidden() + areaToCome > width * (best - fromX)) return true;
    for (let kind = 0; kind < kinds.length; kind++) {
      if (rest[kind] === 0) continue;
      for (const form of forms[kind]!) if (!(yield* choose(kind, form, end, form.slotX))) return false;
    }
    return true;
  }

  const done = yield* extend(fromX);
  yield looks - told;
  return done;
}

function areAll(rest: readonly number[]): boolean {
  for (const count of rest) if (count > 0) return false;
  return true;
}

function offsetOf({ base, sign }: Hold, phase: number): number {
  return base + sign * phase;
}

/** The first rung at or above a value; rungs moved on by `shift`. */
function rungFrom(hold: Hold, phase: number, value: number, shift = 0): number {
  const offset = offsetOf(hold, phase) + shift;
  return offset + hold.period * Math.ceil((value - offset - ROUNDING) / hold.period);
}

/** Phases in slots, one for each group and axis; those to be tried for each that is free; and every way with its slots. */
function phaseSlots(
  { kinds, job }: MatchedJob,
  axes: readonly FreeAxis[],
): { phases: Float64Array; values: (readonly number[])[]; forms: Form[][] } {
  const names = new Map<string, number>();
  const slotOf = (group: string, axis: "along" | "across"): number => {
    const name = `${axis} ${group}`;
    if (!names.has(name)) names.set(name, names.size);
    return names.get(name)!;
  };
  const forms = kinds.map(({ ways }) =>
    ways.map(({ along, across, holdX, holdY, halfDrop, group }, way): Form => {
      const slotX = holdX === null ? -1 : slotOf(group!, "along");
      const slotY = holdY === null ? -1 : slotOf(group!, "across");
      return { way, along, across, x: holdX, y: holdY, slotX, slotY, halfDrop };
    }),
  );
  const phases = new Float64Array(names.size).fill(FREE);
  const values: (readonly number[])[] = Array.from(names, () => []);
  for (const [name, slot] of names) {
    const [axis, ...group] = name.split(" ") as ["along" | "across", ...string[]];
    phases[slot] = job.phases?.[group.join(" ")]?.[axis] ?? FREE;
  }
  for (const { group, axis, values: tried } of axes) {
    const slot = names.get(`${axis} ${group}`);
    if (slot !== undefined) values[slot] = tried;
  }
  return { phases, values, forms };
}
