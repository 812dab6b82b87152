import type { LaidBox, MatchedJob } from "./matchedJob.ts";
import type { NarrowWish } from "./narrowWish.ts";

/** Boxes laid one after another, as far as it has come. Nothing in it is changed later, so one can go on from any. */
export interface Standing {
  readonly laid: LaidChain | null;
  /** Far side of the furthest box with its gap, mm. */
  readonly end: number;
  /** Area of the boxes that found no place, mm². */
  readonly areaLeft: number;
  /** Ends weighed with areas: tells layings of one length apart. */
  readonly moment: number;
  /** What it counts as longer for the narrow strips that its cuts take off, mm. */
  readonly toll: number;
}

/** The last box laid, and those before it. */
export interface LaidChain {
  readonly box: LaidBox;
  readonly before: LaidChain | null;
}

/** How the next box of an order is laid on what lies already. */
export interface LayingRule<S extends Standing> {
  /** Each copy has a number below this that the rule heeds besides its way. */
  readonly hints: number;
  start(job: MatchedJob): S;
  /** `way` −1: whichever ends first. Tells the places it has looked at through `spend`. */
  lay(
    job: MatchedJob,
    before: S,
    kind: number,
    way: number,
    hint: number,
    spend: (looks: number) => void,
    wish: NarrowWish | null,
  ): S;
}

export const NOTHING: Standing = { laid: null, end: 0, areaLeft: 0, moment: 0, toll: 0 };

/** One box more. */
export function laidOn({ kinds }: MatchedJob, before: Standing, box: LaidBox): Standing {
  const { area, ways } = kinds[box.kind]!;
  const ends = box.x + ways[box.way]!.along;
  return {
    laid: { box, before: before.laid },
    end: Math.max(before.end, ends),
    areaLeft: before.areaLeft,
    moment: before.moment + ends * area,
    toll: before.toll,
  };
}

/** A box that has no place. */
export function leftOutOf({ kinds }: MatchedJob, before: Standing, kind: number): Standing {
  const { laid, end, areaLeft, moment, toll } = before;
  return { laid, end, moment, toll, areaLeft: areaLeft + kinds[kind]!.area };
}

/** Less area left out, then a nearer end, narrow strips counted as length. */
export function isLess(a: Weighed, b: Weighed): boolean {
  if (Math.abs(a.areaLeft - b.areaLeft) > 1e-6 * Math.max(1, b.areaLeft)) return a.areaLeft < b.areaLeft;
  return a.end + a.toll < b.end + b.toll - 1e-6;
}

type Weighed = Pick<Standing, "end" | "areaLeft" | "toll">;

/** The boxes in the order in which they were laid. */
export function boxesOf({ laid }: Standing): readonly LaidBox[] {
  const boxes: LaidBox[] = [];
  for (let chain = laid; chain !== null; chain = chain.before) boxes.push(chain.box);
  return boxes.reverse();
}
