import type { PlacedRectangle, RectangleJob } from "../../problem/rectangles/rectangleJob.ts";
import { regionPlanOf } from "../../problem/rectangles/regionPlan.ts";
import type { RegionPlan } from "../../problem/region.ts";
import { Incumbent } from "../../search/incumbent.ts";

/** The best plan of rectangles so far; starts with nothing placed. */
export class RectangleIncumbent extends Incumbent<RegionPlan> {
  private readonly prepared: RectangleJob;

  constructor(prepared: RectangleJob, area: number) {
    super(regionPlanOf(prepared, []), area, 0, 1e-9 * area);
    this.prepared = prepared;
  }

  /** As `offer`, from rectangles as they lie. */
  offerLaid(areaLeft: number, end: number, rectangles: () => readonly PlacedRectangle[]): boolean {
    return this.offer(areaLeft, end, () => regionPlanOf(this.prepared, rectangles()));
  }

  /** Takes a plan found elsewhere, if it leaves out nothing that could lie here and is better. */
  adoptPlan(plan: RegionPlan | undefined): void {
    if (plan === undefined || plan === this.plan) return;
    const { unit, originX, job, impossible } = this.prepared;
    if (plan.left.some((count, piece) => count > impossible[piece]! && job.pieces[piece]!.count > 0)) return;
    this.adopt(Math.ceil((plan.length - originX - job.margin + job.gap) / unit - 1e-6), plan);
  }
}
