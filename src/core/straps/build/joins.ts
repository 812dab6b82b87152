import { LEAST_DOUBLED } from "./strapLengths.ts";

/** How two strips are joined end to end. */
export type JoinSeam = "diagonal" | "straight" | "lapped";

/** Overlap of a skived lap join of leather or vinyl, mm (from memory). */
const LAP = 15;
/** No join within this of an anchored end, mm (common practice, no source). */
const ANCHOR_ZONE = 100;
/** Nor within this of the middle of a fixed strap, where it lies on the shoulder, mm (from memory). */
const SHOULDER_ZONE = 50;
/** Step in which join places are tried, mm. */
const STEP = 5;

/**
 * Length lost in one join: `diagonal` sews two square ends laid at right angles, so the strip's width is lost;
 * `straight` loses both allowances; `lapped` the overlap. mm.
 */
export function joinLoss(seam: JoinSeam, stripWidth: number, seamAllowance: number): number {
  if (seam === "diagonal") return stripWidth;
  return seam === "straight" ? 2 * seamAllowance : LAP;
}

/** Length lost along the centre line when both ends are cut at 45° beforehand, mm. */
export function preCutDiagonalLoss(seamAllowance: number): number {
  return 2 * Math.SQRT2 * seamAllowance;
}

/** A stretch of the strip, from its start, where no join may lie. mm. */
export interface ForbiddenZone {
  readonly from: number;
  readonly to: number;
  readonly why: "anchor" | "shoulder" | "ring" | "slider";
}

/**
 * Where joins may not lie on a strip of this cut length: near its ends (with what they fold back), at the shoulder
 * of a fixed strap, and where the ring and the slider of an adjustable one travel.
 */
export function forbiddenZones(
  cut: number,
  endAllowances: readonly [number, number],
  adjusts: boolean,
): readonly ForbiddenZone[] {
  const zones: ForbiddenZone[] = [
    { from: 0, to: endAllowances[0] + ANCHOR_ZONE, why: "anchor" },
    { from: cut - endAllowances[1] - ANCHOR_ZONE, to: cut, why: "anchor" },
  ];
  if (adjusts) {
    const effective = cut - endAllowances[0] - endAllowances[1];
    // Doubled over d, the strap passes its ring at d and its slider at 2 d: d runs from the least to half of it.
    zones.push({ from: endAllowances[0] + LEAST_DOUBLED, to: endAllowances[0] + effective / 2, why: "ring" });
    zones.push({ from: endAllowances[0] + 2 * LEAST_DOUBLED, to: endAllowances[0] + effective, why: "slider" });
  } else zones.push({ from: cut / 2 - SHOULDER_ZONE, to: cut / 2 + SHOULDER_ZONE, why: "shoulder" });
  return zones;
}

/** A joined strip: the pieces to cut in order, and where their seams lie. mm. */
export interface JoinPlan {
  readonly pieces: readonly number[];
  readonly joints: readonly number[];
}

/**
 * Fewest pieces no longer than `longest` that make a strip of `cut`, their joins outside the zones and as even as
 * that allows; null when no place is free or `loss` eats whole pieces.
 *
 * Cost: O(joints × length / 5 mm).
 */
export function planJoins(
  cut: number,
  longest: number,
  loss: number,
  zones: readonly ForbiddenZone[],
): JoinPlan | null {
  if (cut <= longest) return { pieces: [cut], joints: [] };
  if (longest <= loss) return null;
  // n pieces with n − 1 joins reach at most n·longest − (n − 1)·loss; spare pieces help to dodge the zones.
  const fewest = Math.ceil((cut - loss) / (longest - loss));
  for (let count = fewest; count <= fewest + 3; count++) {
    const joints = evenJoints(cut, longest, loss, count, zones);
    if (!joints) continue;
    const stops = [0, ...joints, cut];
    const pieces = stops.slice(1).map((stop, i) => {
      const ends = (i > 0 ? loss / 2 : 0) + (i < joints.length ? loss / 2 : 0);
      return stop - stops[i]! + ends;
    });
    return { pieces, joints };
  }
  return null;
}

/** Joints one after another, each at the free place nearest to an even share that the pieces can still reach. */
function evenJoints(
  cut: number,
  longest: number,
  loss: number,
  count: number,
  zones: readonly ForbiddenZone[],
): number[] | null {
  const borders = zones.flatMap((zone) => [zone.from, zone.to]);
  const joints: number[] = [];
  let from = 0;
  for (let i = 1; i < count; i++) {
    const piecesLeft = count - i;
    const most = from + longest - (i > 1 ? loss : loss / 2);
    const least = Math.max(from + loss, cut - piecesLeft * (longest - loss) - loss / 2);
    const wanted = Math.min(most, Math.max(least, (cut * i) / count));
    const isGood = (x: number): boolean =>
      x >= least && x <= most && zones.every((zone) => x <= zone.from || x >= zone.to);
    let best: number | undefined;
    for (let offset = 0; offset <= cut && best === undefined; offset += STEP)
      best = [wanted - offset, wanted + offset].find(isGood);
    // A place narrower than a step begins or ends where a zone does.
    best ??= borders.filter(isGood).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0];
    if (best === undefined) return null;
    joints.push(best);
    from = best;
  }
  return cut - from + loss / 2 <= longest ? joints : null;
}
