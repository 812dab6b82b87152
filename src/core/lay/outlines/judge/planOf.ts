import { turnCosSin } from "../../../geometry/pose.ts";
import type { Placement } from "../../problem/layProblem.ts";
import type { RegionPlan } from "../../problem/region.ts";
import { type CompiledJob, orientationKey } from "../compile/compileJob.ts";
import { liesOnLattice } from "../compile/gridLattice.ts";
import type { Spots } from "../layout/workLayout.ts";

/** The layout as a plan in mm, pinned pieces included. */
export function planOf(compiled: CompiledJob, spots: Spots): RegionPlan {
  const { job, items, variants, centres, unitsPerMm, window } = compiled;
  const left = job.pieces.map(() => 0);
  const placements: Placement[] = [...job.pinned];
  let far = window.minX;
  items.forEach(({ piece, copy }, i) => {
    const at = spots.variant[i]!;
    if (at < 0) {
      left[piece]!++;
      return;
    }
    const { turnDeg, mirrored, cos, sin, flip, maxX } = variants[at]!;
    const [cx, cy] = centres[piece]!;
    far = Math.max(far, spots.x[i]! + maxX);
    placements.push({
      pieceId: job.pieces[piece]!.id,
      copy,
      turnDeg,
      mirrored,
      x: spots.x[i]! / unitsPerMm - (cos * flip * cx - sin * cy),
      y: spots.y[i]! / unitsPerMm - (sin * flip * cx + cos * cy),
    });
  });
  const inset = job.margin - job.gap / 2;
  let length = placements.length > 0 ? far / unitsPerMm + inset : 0;
  for (const pin of job.pinned) length = Math.max(length, pinnedEnd(compiled, pin) + job.margin);
  return { placements, left, length };
}

/** Far side of a pinned piece, mm. */
function pinnedEnd(compiled: CompiledJob, pin: Placement): number {
  const ring = compiled.job.pieces.find((piece) => piece.id === pin.pieceId)!.outline.outer;
  const [c, s] = turnCosSin(pin.turnDeg);
  const flip = pin.mirrored ? -1 : 1;
  let end = -Infinity;
  for (let i = 0; i < ring.length; i += 2) end = Math.max(end, c * flip * ring[i]! - s * ring[i + 1]! + pin.x);
  return end;
}

/** The spots a plan puts the copies at, or null when it uses a turn this job does not know or lies otherwise on the pattern. */
export function spotsOf(compiled: CompiledJob, plan: RegionPlan, into: Spots): boolean {
  const { job, items, variants, variantFor, centres, unitsPerMm } = compiled;
  const places = new Map(plan.placements.map((place) => [`${place.copy} ${place.pieceId}`, place]));
  into.variant.fill(-1);
  into.maxX = compiled.window.minX;
  for (let i = 0; i < items.length; i++) {
    const { piece, copy, shape } = items[i]!;
    const place = places.get(`${copy} ${job.pieces[piece]!.id}`);
    if (place === undefined) continue;
    const at = variantFor.get(orientationKey(shape, place));
    if (at === undefined) return false;
    const [cos, sin] = turnCosSin(place.turnDeg);
    const flip = place.mirrored ? -1 : 1;
    const [cx, cy] = centres[piece]!;
    into.variant[i] = at;
    into.x[i] = (place.x + (cos * flip * cx - sin * cy)) * unitsPerMm;
    into.y[i] = (place.y + (sin * flip * cx + cos * cy)) * unitsPerMm;
    if (!liesOnLattice(variants[at]!.lattice, into.x[i]!, into.y[i]!)) return false;
    into.maxX = Math.max(into.maxX, into.x[i]! + variants[at]!.maxX);
  }
  return true;
}
