import type { PlacedRectangle, RectangleJob } from "../../problem/rectangles/rectangleJob.ts";
import { regionPlanOf } from "../../problem/rectangles/regionPlan.ts";
import type { RegionPlan } from "../../problem/region.ts";

/** The best plan so far, shared by the searches of one engine. */
export interface Incumbent {
  /** Area left out, square units. */
  readonly areaLeft: number;
  /** Furthest end, units. */
  readonly end: number;
  readonly plan: RegionPlan;
  /** Takes the plan when it leaves out less, or ends earlier with as much. Returns whether it did. */
  offer(areaLeft: number, end: number, rectangles: () => readonly PlacedRectangle[]): boolean;
  /** Takes a plan found elsewhere, if better. */
  adopt(plan: RegionPlan | undefined): void;
  /** The plan, once after each improvement, else null. */
  takeNews(): RegionPlan | null;
}

/** Starts with nothing placed. */
export function emptyIncumbent(prepared: RectangleJob, area: number): Incumbent {
  let news = false;
  const best = { areaLeft: area, end: 0, plan: regionPlanOf(prepared, []) };
  const isBetter = (areaLeft: number, end: number): boolean =>
    areaLeft < best.areaLeft - 1e-9 * area || (areaLeft <= best.areaLeft + 1e-9 * area && end < best.end);
  const { pieces } = prepared.job;
  const { unit, originX, job } = prepared;
  return {
    get areaLeft() {
      return best.areaLeft;
    },
    get end() {
      return best.end;
    },
    get plan() {
      return best.plan;
    },
    offer(areaLeft, end, rectangles) {
      if (!isBetter(areaLeft, end)) return false;
      best.areaLeft = areaLeft;
      best.end = end;
      best.plan = regionPlanOf(prepared, rectangles());
      news = true;
      return true;
    },
    adopt(plan) {
      if (plan === undefined || plan === best.plan) return;
      if (plan.left.some((count, piece) => count > prepared.impossible[piece]! && pieces[piece]!.count > 0)) return;
      const end = Math.ceil((plan.length - originX - job.margin + job.gap) / unit - 1e-6);
      if (!isBetter(0, end)) return;
      best.areaLeft = 0;
      best.end = end;
      best.plan = plan;
    },
    takeNews() {
      if (!news) return null;
      news = false;
      return best.plan;
    },
  };
}
