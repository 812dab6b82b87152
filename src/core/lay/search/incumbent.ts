/**
 * The best plan so far, shared by the searches of one engine: less area left out, then a nearer end. Areas and ends in
 * the engine's own units.
 */
export class Incumbent<Plan> {
  areaLeft: number;
  end: number;
  plan: Plan;
  private readonly same: number;
  private hasNews = false;

  /** Starts from `plan`, which leaves out `areaLeft` and ends at `end`; areas up to `same` apart are alike. */
  constructor(plan: Plan, areaLeft: number, end: number, same = 0) {
    this.plan = plan;
    this.areaLeft = areaLeft;
    this.end = end;
    this.same = same;
  }

  private isBetter(areaLeft: number, end: number): boolean {
    return areaLeft < this.areaLeft - this.same || (areaLeft <= this.areaLeft + this.same && end < this.end);
  }

  /** Takes the plan when it leaves out less, or ends nearer with as much; it is made only then. Returns whether it did. */
  offer(areaLeft: number, end: number, plan: () => Plan): boolean {
    if (!this.isBetter(areaLeft, end)) return false;
    this.areaLeft = areaLeft;
    this.end = end;
    this.plan = plan();
    this.hasNews = true;
    return true;
  }

  /** A whole plan with this end is known elsewhere: what comes next has to beat it. It is no news. */
  adopt(end: number, plan: Plan = this.plan): void {
    if (!this.isBetter(0, end)) return;
    this.areaLeft = 0;
    this.end = end;
    this.plan = plan;
  }

  /** The plan, once after each improvement, else null. */
  takeNews(): Plan | null {
    if (!this.hasNews) return null;
    this.hasNews = false;
    return this.plan;
  }
}
