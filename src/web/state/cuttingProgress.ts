/** How far a plan is cut. `plan` tells plans apart: ticks of another plan mean nothing. */
export interface CuttingProgress {
  readonly plan: string;
  readonly at: number;
  readonly done: readonly number[];
}

const PLACE = "laywright-cutting";
/** Lays whose progress is remembered; the oldest are forgotten. */
const MOST = 40;

/** What was cut of a lay of a project, or null. */
export function readProgress(lay: string): CuttingProgress | null {
  return all()[lay] ?? null;
}

/** Remembers on this device how far a lay is cut; without storage it lasts as long as the page. */
export function writeProgress(lay: string, progress: CuttingProgress): void {
  const { [lay]: _, ...others } = all();
  const kept = Object.entries(others).slice(-(MOST - 1));
  try {
    localStorage.setItem(PLACE, JSON.stringify(Object.fromEntries([...kept, [lay, progress]])));
  } catch {
    // No storage: the ticks last as long as the page is open.
  }
}

function all(): Record<string, CuttingProgress> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    return Object.fromEntries(Object.entries(kept).filter(([, progress]) => isProgress(progress)));
  } catch {
    return {};
  }
}

function isProgress(value: unknown): value is CuttingProgress {
  if (typeof value !== "object" || value === null) return false;
  const { plan, at, done } = value as Record<string, unknown>;
  return typeof plan === "string" && Number.isInteger(at) && Array.isArray(done) && done.every(Number.isInteger);
}
