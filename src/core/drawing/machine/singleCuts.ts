import type { Contour } from "../../geometry/contour.ts";
import { type ContourEdge, contourBox, contourEdges, edgeCircle } from "../../geometry/contourArcs.ts";
import type { Drawing, DrawingItem, DrawnLine } from "../list/drawing.ts";

/** Lines this near to each other would be cut twice, mm. */
const NEAR = 0.005;

/** A stretch of a line or circle that has been drawn already. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A straight line or circle that edges lie on, and what of it is taken. Parameters in mm along it. */
interface Carrier {
  readonly taken: Stretch[];
}

/**
 * The drawing with every cut drawn once: where cut lines of neighbours (or of one piece) run on the same line or arc,
 * the later one is left out there. Contours that share nothing stay whole and closed. Cost about O(edges).
 */
export function singleCuts(drawing: Drawing): Drawing {
  const carriers = new Carriers();
  const touching = touchingCuts(drawing);
  const items: DrawingItem[] = [];
  for (const item of drawing.items) {
    if (item.kind !== "line" || !touching.has(item)) {
      items.push(item);
      continue;
    }
    for (const contour of withoutTaken(item.contour, carriers)) items.push({ ...item, contour });
  }
  return { ...drawing, items };
}

/** Cut lines whose boxes come near another's; only they can share anything. Sorted sweep along x. */
function touchingCuts(drawing: Drawing): Set<DrawingItem> {
  const cuts = drawing.items.filter((item): item is DrawnLine => item.kind === "line" && item.role === "cut");
  const boxes = cuts.map((cut) => ({ cut, box: contourBox(cut.contour) })).sort((a, b) => a.box.minX - b.box.minX);
  const touching = new Set<DrawingItem>();
  boxes.forEach((one, i) => {
    for (let j = i + 1; j < boxes.length; j++) {
      const other = boxes[j]!;
      if (other.box.minX > one.box.maxX + NEAR) break;
      if (other.box.minY > one.box.maxY + NEAR || other.box.maxY < one.box.minY - NEAR) continue;
      touching.add(one.cut);
      touching.add(other.cut);
    }
  });
  return touching;
}

/** What is left of a contour once the stretches that are drawn already are taken out of it. */
function withoutTaken(contour: Contour, carriers: Carriers): Contour[] {
  const edges = contourEdges(contour).filter((edge) => edge.x0 !== edge.x1 || edge.y0 !== edge.y1);
  const kept = edges.map((edge) => carriers.take(edge));
  if (kept.every((parts, i) => parts.length === 1 && parts[0] === edges[i])) return [contour];
  const runs: ContourEdge[][] = [];
  for (const edge of kept.flat()) {
    const last = runs.at(-1)?.at(-1);
    if (last && last.x1 === edge.x0 && last.y1 === edge.y0) runs.at(-1)!.push(edge);
    else runs.push([edge]);
  }
  // A closed contour may have been opened elsewhere than at its first vertex: its last run goes on in its first.
  const first = runs[0];
  const end = runs.at(-1)?.at(-1);
  if (contour.closed && runs.length > 1 && first && end && end.x1 === first[0]!.x0 && end.y1 === first[0]!.y0) {
    runs[0] = [...runs.pop()!, ...first];
  }
  return runs.map(openContour);
}

function openContour(edges: readonly ContourEdge[]): Contour {
  const last = edges.at(-1)!;
  const vertices = edges.flatMap((edge) => [edge.x0, edge.y0, edge.bulge]);
  return { vertices: Float64Array.from([...vertices, last.x1, last.y1, 0]), closed: false };
}

/** All lines and circles met so far, found again by their rounded place. */
class Carriers {
  private readonly known = new Map<string, Carrier>();

  /** The parts of an edge that were not drawn before, now taken; the edge itself when it is all new. */
  take(edge: ContourEdge): readonly ContourEdge[] {
    return edge.bulge === 0 ? this.takeLine(edge) : this.takeArc(edge);
  }

  private takeLine(edge: ContourEdge): readonly ContourEdge[] {
    const length = Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    let ux = (edge.x1 - edge.x0) / length;
    let uy = (edge.y1 - edge.y0) / length;
    // The same line whichever way it is walked.
    const back = ux < -1e-9 || (Math.abs(ux) <= 1e-9 && uy < 0);
    if (back) [ux, uy] = [-ux, -uy];
    const offset = ux * edge.y0 - uy * edge.x0;
    const a = ux * edge.x0 + uy * edge.y0;
    const b = ux * edge.x1 + uy * edge.y1;
    const carrier = this.carrierAt(["l", Math.atan2(uy, ux) * 1e6, offset / NEAR]);
    const free = freeStretches(carrier, Math.min(a, b), Math.max(a, b));
    if (isWhole(free, Math.min(a, b), Math.max(a, b))) return [edge];
    const at = (t: number): readonly [number, number] =>
      t === a ? [edge.x0, edge.y0] : t === b ? [edge.x1, edge.y1] : [ux * t - uy * offset, uy * t + ux * offset];
    const parts = free.map(({ from, to }) => {
      const [x0, y0] = at(back ? to : from);
      const [x1, y1] = at(back ? from : to);
      return { x0, y0, x1, y1, bulge: 0 };
    });
    return back ? parts.reverse() : parts;
  }

  private takeArc(edge: ContourEdge): readonly ContourEdge[] {
    const { x, y, radius, start, sweep } = edgeCircle(edge);
    const carrier = this.carrierAt(["c", x / NEAR, y / NEAR, radius / NEAR]);
    const full = 2 * Math.PI * radius;
    const low = ((((Math.min(start, start + sweep) * radius) % full) + full) % full) as number;
    const high = low + Math.abs(sweep) * radius;
    // An arc over the seam at angle 0 lies on the circle once more, a turn lower.
    const free = freeStretches(carrier, low, high, full);
    if (isWhole(free, low, high)) return [edge];
    const first = Math.min(start, start + sweep);
    const parts = free.map(({ from, to }) => {
      const a = first + (from - low) / radius;
      const b = first + (to - low) / radius;
      const bulge = Math.tan((b - a) / 4);
      const point = (angle: number): readonly [number, number] => [
        x + radius * Math.cos(angle),
        y + radius * Math.sin(angle),
      ];
      const [[x0, y0], [x1, y1]] = sweep > 0 ? [point(a), point(b)] : [point(b), point(a)];
      return { x0, y0, x1, y1, bulge: sweep > 0 ? bulge : -bulge };
    });
    return sweep > 0 ? parts : parts.reverse();
  }

  /** The carrier whose rounded numbers are these or next to them; a new one when there is none. */
  private carrierAt(place: readonly (string | number)[]): Carrier {
    const kind = String(place[0]);
    const cells = place.slice(1).map((value) => Math.round(value as number));
    for (const near of neighbours(cells)) {
      const known = this.known.get(`${kind} ${near.join(" ")}`);
      if (known) return known;
    }
    const carrier: Carrier = { taken: [] };
    this.known.set(`${kind} ${cells.join(" ")}`, carrier);
    return carrier;
  }
}

function neighbours(cells: readonly number[]): number[][] {
  let out: number[][] = [[]];
  for (const cell of cells) out = out.flatMap((head) => [cell, cell - 1, cell + 1].map((near) => [...head, near]));
  return out;
}

function isWhole(free: readonly Stretch[], from: number, to: number): boolean {
  return free.length === 1 && free[0]!.from === from && free[0]!.to === to;
}

/** Stretches of from … to that are not taken yet, longer than `NEAR`; the whole of it is taken now. */
function freeStretches(carrier: Carrier, from: number, to: number, full = 0): Stretch[] {
  let free: Stretch[] = [{ from, to }];
  for (const taken of carrier.taken) {
    for (const turn of full > 0 ? [-full, 0, full] : [0]) {
      free = free.flatMap((stretch) => less(stretch, { from: taken.from + turn, to: taken.to + turn }));
    }
  }
  carrier.taken.push({ from, to });
  return free;
}

function less(stretch: Stretch, taken: Stretch): Stretch[] {
  if (taken.to <= stretch.from + NEAR || taken.from >= stretch.to - NEAR) return [stretch];
  const parts = [
    { from: stretch.from, to: taken.from },
    { from: taken.to, to: stretch.to },
  ];
  return parts.filter(({ from, to }) => to - from > NEAR);
}
