import type { Contour } from "../../geometry/contour.ts";
import type {
  SolvedBend,
  SolvedCorner,
  SolvedRun,
  SolvedSection,
  SolvedStrip,
} from "../../straps/section/foldSection.ts";
import { runThickness } from "../../straps/section/skiving.ts";
import type { LevelHeight } from "./sectionHeights.ts";

/** Bulge of a quarter turn, tan(90° / 4). */
const QUARTER = Math.tan(Math.PI / 8);
/** Steps in which a run that rises or sinks is drawn. */
export const SAMPLES = 96;

/** A vertex with the bulge of the edge that leaves it. */
type Vertex = readonly [x: number, y: number, bulge: number];

/** Both faces of a strip in walking order: `left` of the way from its lower edge, and `right`. */
interface Faces {
  readonly left: Vertex[];
  readonly right: Vertex[];
}

function addRun(faces: Faces, run: SolvedRun, thickness: number, height: LevelHeight, curved: boolean): void {
  const steps = curved ? SAMPLES : 1;
  for (let i = 0; i <= steps; i++) {
    const x = run.fromX + ((run.toX - run.fromX) * i) / steps;
    const low = height(run.level, x);
    const [left, right] = run.toX >= run.fromX ? [low + thickness, low] : [low, low + thickness];
    faces.left.push([x, left, 0]);
    faces.right.push([x, right, 0]);
  }
}

/** Arc of one face round a bend: half a circle, or two quarters with a straight rise between. */
function bendFace(axisX: number, from: number, to: number, out: number, radius: number, rise: number): Vertex[] {
  if (radius < 1e-9)
    return [
      [axisX, from, 0],
      [axisX, to, 0],
    ];
  const up = to > from ? 1 : -1;
  // Walking outward to the right and turning up is counter-clockwise.
  const turn = out * up;
  if (rise < 1e-9)
    return [
      [axisX, from, turn],
      [axisX, to, 0],
    ];
  const x = axisX + out * radius;
  return [
    [axisX, from, turn * QUARTER],
    [x, from + up * radius, 0],
    [x, to - up * radius, turn * QUARTER],
    [axisX, to, 0],
  ];
}

/** By how much the runs before and after a fold are thicker than it, mm. */
interface Steps {
  readonly from: number;
  readonly to: number;
}

function addBend(faces: Faces, bend: SolvedBend, height: LevelHeight, steps: Steps): void {
  const { thickness } = bend;
  const out = bend.side === "right" ? 1 : -1;
  const rising = bend.toLevel > bend.fromLevel;
  // Of a run that is thicker than the fold the outer face goes on: the lower face below, the upper face above.
  const from = height(bend.fromLevel, bend.axisX) + (rising ? 0 : steps.from);
  const to = height(bend.toLevel, bend.axisX) + (rising ? steps.to : 0);
  const inner = rising ? [from + thickness, to] : [from, to + thickness];
  const outer = rising ? [from, to + thickness] : [from + thickness, to];
  const gap = Math.abs(inner[1]! - inner[0]!);
  // Where levels have not settled the fold is higher than it is round: it rises straight, and stays within the width.
  const radius = Math.max(0, Math.min((gap - bend.rise) / 2, bend.insideRadius));
  const rise = gap - 2 * radius;
  const inside = bendFace(bend.axisX, inner[0]!, inner[1]!, out, radius, rise);
  const outside = bendFace(bend.axisX, outer[0]!, outer[1]!, out, radius + thickness, rise);
  const insideIsLeft = out > 0 === rising;
  faces.left.push(...(insideIsLeft ? inside : outside));
  faces.right.push(...(insideIsLeft ? outside : inside));
}

/** The turned end of a strip round a square core; `leaving` when the walk ends there, else it starts there. */
function addCorner(
  faces: Faces,
  corner: SolvedCorner,
  thickness: number,
  height: LevelHeight,
  leaving: boolean,
): void {
  const out = corner.side === "right" ? 1 : -1;
  const up = corner.up ? 1 : -1;
  const low = height(corner.level, corner.axisX);
  const inner = corner.up ? low + thickness : low;
  const outer = corner.up ? low : low + thickness;
  const end = inner + up * corner.rise;
  const x = corner.axisX + out * thickness;
  const turn = out * up * QUARTER;
  const insideWalk: Vertex[] = [
    [corner.axisX, inner, 0],
    [corner.axisX, end, 0],
  ];
  const outsideWalk: Vertex[] = [
    [corner.axisX, outer, turn],
    [x, outer + up * thickness, 0],
    [x, end, 0],
  ];
  if (leaving) {
    const insideIsLeft = out * up > 0;
    faces.left.push(...(insideIsLeft ? insideWalk : outsideWalk));
    faces.right.push(...(insideIsLeft ? outsideWalk : insideWalk));
    return;
  }
  // Walked from the raw edge back to the run: the same faces the other way round, arcs turning back.
  const back: Vertex[] = [
    [x, end, 0],
    [x, outer + up * thickness, -turn],
    [corner.axisX, outer, 0],
  ];
  const insideBack: Vertex[] = [
    [corner.axisX, end, 0],
    [corner.axisX, inner, 0],
  ];
  const insideIsLeft = out * up < 0;
  faces.left.push(...(insideIsLeft ? insideBack : back));
  faces.right.push(...(insideIsLeft ? back : insideBack));
}

/** One face walked backwards: each edge's bulge belongs to its other end, turned round. */
function reversedFace(face: readonly Vertex[]): Vertex[] {
  return face.map((_, i) => {
    const at = face[face.length - 1 - i]!;
    const before = face[face.length - 2 - i];
    return [at[0], at[1], before ? -before[2] : 0];
  });
}

/** A strip's outline in the section, and its two raw edges as points on the middle of its thickness. */
export interface StripOutline {
  readonly contour: Contour;
  /** Segments x0, y0, x1, y1 across the thickness at both raw edges. */
  readonly rawEdges: readonly (readonly [number, number, number, number])[];
}

/** Closed outline of a folded strip, folds as true arcs. mm, y up from the table. */
export function stripOutline(section: SolvedSection, strip: SolvedStrip, height: LevelHeight): StripOutline {
  const { thickness, leastRadius } = strip.plan.ply;
  const curved = section.plan.settles || leastRadius > 0;
  const faces: Faces = { left: [], right: [] };
  let run = -1;
  strip.segments.forEach((segment, i) => {
    if (segment.kind === "run") addRun(faces, segment, runThickness(strip.plan, ++run), height, curved);
    else if (segment.kind === "bend")
      addBend(faces, segment, height, {
        from: runThickness(strip.plan, run) - segment.thickness,
        to: runThickness(strip.plan, run + 1) - segment.thickness,
      });
    else addCorner(faces, segment, thickness, height, i > 0);
  });
  const all = [...faces.left, ...reversedFace(faces.right)];
  const edge = (a: Vertex, b: Vertex): [number, number, number, number] => [a[0], a[1], b[0], b[1]];
  return {
    contour: { vertices: Float64Array.from(all.flat()), closed: true },
    rawEdges: [edge(faces.left[0]!, faces.right[0]!), edge(faces.left.at(-1)!, faces.right.at(-1)!)],
  };
}
