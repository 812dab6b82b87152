import { ringBox } from "../../../geometry/box.ts";
import { poseRing } from "../../../geometry/pose.ts";
import { freePhases, placeOf, wrapped } from "../../problem/lattice.ts";
import type { LayPhase, LayPiece } from "../../problem/layProblem.ts";
import type { RegionJob } from "../../problem/region.ts";

/** Choices of all free phases together at first: each is a search of its own. And values known of each phase. */
const MOST_CHOICES = 24;
const MOST_VALUES = 64;
/** Phases that differ by less are one, and the finest step between two, mm. */
const SAME = 1e-6;
const LEAST_STEP = 0.5;

/** One axis of a group whose phase is free, and the phases to try. */
export interface FreeAxis {
  readonly group: string;
  readonly axis: "along" | "across";
  readonly values: readonly number[];
}

/**
 * Phases to try where the maker leaves them to the search: those at which a piece of the group lies against the start or
 * a side of the cloth, then evenly spaced ones, no finer than the tolerance. Fewer for each group the more are free.
 */
export function phaseChoices(job: RegionJob): readonly Readonly<Record<string, LayPhase>>[] {
  const free = freeAxes(job, 1).length;
  const axes = freeAxes(job, Math.max(2, Math.floor(MOST_CHOICES ** (1 / Math.max(1, free)) + 1e-9)));
  let choices: Readonly<Record<string, LayPhase>>[] = [{ ...job.phases }];
  for (const { group, axis, values } of axes) {
    choices = choices.flatMap((choice) =>
      values.map((value) => {
        const now = choice[group] ?? { along: null, across: null };
        return { ...choice, [group]: { ...now, [axis]: value } };
      }),
    );
    // With many groups free not every pair of choices can be tried; each group's first ones are.
    choices = choices.slice(0, MOST_CHOICES);
  }
  return choices;
}

/** What is free in a job, with at most so many phases to try of each. */
export function freeAxes(job: RegionJob, most: number = MOST_VALUES): readonly FreeAxis[] {
  return freePhases(job.pieces, job.pattern, job.phases).flatMap(({ group, along, across }) => [
    ...(along ? [{ group, axis: "along" as const, values: valuesOf(job, group, "along", most) }] : []),
    ...(across ? [{ group, axis: "across" as const, values: valuesOf(job, group, "across", most) }] : []),
  ]);
}

function valuesOf(job: RegionJob, group: string, axis: "along" | "across", most: number): number[] {
  const period = job.pattern![axis]!;
  const values: number[] = [];
  const add = (value: number): void => {
    const phase = wrapped(value, period);
    if (values.length < most && values.every((other) => Math.abs(other - phase) > SAME)) values.push(phase);
  };
  const members = job.pieces.filter(({ match }) => match?.group === group && match[axis]);
  // Half of the choices at most are flush ones, so that even ones are among them.
  for (const piece of members)
    for (const value of flushPhases(job, piece, axis)) if (values.length < most / 2) add(value);
  const step = Math.max(job.pattern!.tolerance, LEAST_STEP, period / Math.max(1, most - values.length));
  for (let value = 0; value < period - SAME; value += step) add(value);
  return values;
}

/** Phases at which a piece lies against the start of the cloth (along) or one of its sides (across). */
function flushPhases({ pattern, region, margin }: RegionJob, piece: LayPiece, axis: "along" | "across"): number[] {
  return piece.orientations.flatMap((orientation) => {
    const box = ringBox(poseRing(piece.outline.outer, { ...orientation, x: 0, y: 0 }));
    const { x, y, signX, signY } = placeOf(piece.match!, orientation);
    if (axis === "along") return [signX * (margin - box.minX + x - pattern!.firstAlong)];
    const low = margin - box.minY;
    const high = region.width - margin - box.maxY;
    return [low, high].map((at) => signY * (at + y - pattern!.firstAcross));
  });
}
