import { type Box, boxesOverlap, ringBox } from "../../../geometry/box.ts";
import { differenceOf, offsetOf, ringsOf, sharedArea } from "../../../geometry/clipper.ts";
import { posePolygon } from "../../../geometry/pose.ts";
import { type Polygon, polygonArea } from "../../../geometry/ring.ts";
import { apartOn, latticeOf, type Rungs } from "../../problem/lattice.ts";
import type { Placement } from "../../problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../problem/region.ts";
import { isBareAtEdge } from "../compile/growOutlines.ts";

/** Overlap that counts as touching, as a share of the smaller piece's area. */
const TOUCH_SHARE = 5e-7;

/**
 * How far a piece may reach over a straight edge, as a share of its size: half of what the checker allows. A long thin
 * piece is small beside the grid, whose rounding alone may be a ten-millionth of its size.
 */
const EDGE_SHARE = 5e-7;

/** How far a plan may lie beside the pattern by rounding, mm. */
const ON_PATTERN = 1e-6;

/** Flaws grown between two pauses. */
const FLAWS_PER_TURN = 16;

interface Laid {
  readonly outline: Polygon;
  readonly box: Box;
  readonly area: number;
}

function laid(outline: Polygon): Laid {
  return { outline, box: ringBox(outline.outer), area: polygonArea(outline) };
}

/**
 * Judges plans from the outlines as they were given, not from the search's grid: the search finds every hole
 * in its own arithmetic. Outlines grown by half the gap must not overlap, nor leave the region less the margin, by more
 * than a small share of the smaller piece. Where pieces are held to the edge as they are, so they are judged.
 */
export class PlanVerifier {
  private readonly job: RegionJob;
  private readonly grown = new Map<string, Polygon>();
  /** Where pieces may lie in a shaped region, as they are if `isBareAtEdge`, else grown. */
  private readonly usable: Polygon[] | null;
  private readonly isBareAtEdge: boolean;
  /** Flaws, grown when the first plan is judged: hundreds take a turn by themselves. */
  private readonly fixed: Laid[] = [];

  constructor(job: RegionJob) {
    this.job = job;
    const half = job.gap / 2;
    const { outline } = job.region;
    this.isBareAtEdge = isBareAtEdge(job);
    const inset = this.isBareAtEdge ? job.margin : job.margin - half;
    this.usable = null;
    if (outline !== null)
      this.usable = inset === 0 ? [outline] : offsetOf(ringsOf(outline), -inset, { kind: "miter", limit: 2 });
  }

  private grow(polygon: Polygon): Polygon {
    const { gap } = this.job;
    return gap === 0 ? polygon : offsetOf(ringsOf(polygon), gap / 2, { kind: "round", tolerance: gap / 200 })[0]!;
  }

  private outlineOf(id: string): Polygon {
    return this.job.pieces.find((piece) => piece.id === id)!.outline;
  }

  /** The grown outline of a piece, made when first asked for. */
  private grownOf(id: string): Polygon {
    let grown = this.grown.get(id);
    if (grown === undefined) {
      grown = this.grow(this.outlineOf(id));
      this.grown.set(id, grown);
    }
    return grown;
  }

  /**
   * Whether every placement keeps its distance from all else. Yields after each piece.
   * Cost: one boolean per pair of boxes that meet.
   */
  *passes(plan: RegionPlan): Generator<undefined, boolean> {
    const { flaws } = this.job.region;
    while (this.fixed.length < flaws.length) {
      this.fixed.push(laid(this.grow(flaws[this.fixed.length]!)));
      if (this.fixed.length % FLAWS_PER_TURN === 0) yield;
    }
    const pieces: Laid[] = [];
    for (const place of plan.placements) {
      if (!this.liesOnPattern(place)) return false;
      const a = laid(posePolygon(this.grownOf(place.pieceId), place));
      const atEdge = this.isBareAtEdge ? laid(posePolygon(this.outlineOf(place.pieceId), place)) : a;
      if (!this.isOnFold(place) && !this.staysInside(atEdge)) return false;
      for (const flaw of this.fixed) if (this.overlaps(a, flaw, a.area)) return false;
      for (const b of pieces) if (this.overlaps(a, b, Math.min(a.area, b.area))) return false;
      pieces.push(a);
      yield;
    }
    return true;
  }

  private liesOnPattern(place: Placement): boolean {
    const { pieces, pattern, phases, pinned } = this.job;
    const piece = pieces.find(({ id }) => id === place.pieceId)!;
    // What was put down by hand stays there, on the pattern or not.
    if (piece.match === undefined || pinned.includes(place)) return true;
    const lattice = latticeOf(piece, place, pattern, phases);
    if (lattice === null) return true;
    const { x, y, halfDrop } = lattice;
    const rows = x && y && halfDrop ? Math.round((place.y - y.offset) / y.period) : 0;
    const isOn = (rungs: Rungs | null, at: number): boolean =>
      rungs === null || apartOn(at, rungs.offset, rungs.period) <= ON_PATTERN;
    return isOn(y, place.y) && isOn(x, place.x - (rows * (x?.period ?? 0)) / 2);
  }

  /** Halves on the fold of the cloth lie over no edge there; they are pinned, and the checker looks at them. */
  private isOnFold({ pieceId }: Placement): boolean {
    return this.job.pieces.find(({ id }) => id === pieceId)!.gives?.onFold === true;
  }

  private overlaps(a: Laid, b: Laid, area: number): boolean {
    return boxesOverlap(a.box, b.box) && sharedArea(a.outline, b.outline) > TOUCH_SHARE * area;
  }

  private staysInside({ outline, box, area }: Laid): boolean {
    if (this.usable === null) return this.staysInBox(box, area);
    const outside = differenceOf(ringsOf(outline), this.usable.flatMap(ringsOf));
    return outside.reduce((sum, part) => sum + polygonArea(part), 0) <= TOUCH_SHARE * area;
  }

  private staysInBox(box: Box, area: number): boolean {
    const { region, margin, gap } = this.job;
    const inset = margin - gap / 2;
    const slack = EDGE_SHARE * Math.sqrt(area);
    if (box.minX < inset - slack || box.minY < inset - slack) return false;
    if (box.maxY > region.width - inset + slack) return false;
    return region.length === null || box.maxX <= region.length - inset + slack;
  }
}
