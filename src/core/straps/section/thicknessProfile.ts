import { levelThicknesses, type SolvedSection, type SolvedStrip } from "./foldSection.ts";
import { runThickness } from "./skiving.ts";

/** A stretch across the strap over which the same layers lie on each other. mm. */
export interface ProfileSpan {
  readonly from: number;
  readonly to: number;
  /** Layers of cloth and core. */
  readonly layers: number;
  readonly thickness: number;
}

interface Cover {
  /** Interfacing thickens the strap; makers do not count it as a layer. */
  readonly layer: boolean;
  readonly from: number;
  readonly to: number;
  readonly thickness: number;
}

/** Runs with their folds pushed out to the outside of the bend, so that a fold counts as both its layers. */
function stripCovers(strip: SolvedStrip): Cover[] {
  const covers: Cover[] = [];
  let run = 0;
  strip.segments.forEach((segment, i) => {
    if (segment.kind !== "run") return;
    const thickness = runThickness(strip.plan, run++);
    const before = strip.segments[i - 1];
    const after = strip.segments[i + 1];
    const reach = (end: number, neighbour: typeof before): number => {
      if (!neighbour || neighbour.kind === "run") return end;
      const out = neighbour.kind === "bend" ? neighbour.insideRadius + neighbour.thickness : thickness;
      return neighbour.side === "left" ? end - out : end + out;
    };
    const a = reach(segment.fromX, before);
    const b = reach(segment.toX, after);
    covers.push({ layer: true, from: Math.min(a, b), to: Math.max(a, b), thickness });
  });
  return covers;
}

/**
 * Layers and thickness across the strap, left to right, as it lies flat and pressed.
 *
 * Units:  mm. Spans tile 0 … finished width; equal neighbours are merged.
 * Cost:   O(n²) in the number of runs.
 */
export function thicknessProfile(section: SolvedSection): readonly ProfileSpan[] {
  const slabs = section.slabs.map((slab) => ({
    from: slab.fromX,
    to: slab.toX,
    thickness: slab.plan.thickness,
    layer: slab.role !== "interfacing",
  }));
  const covers = [...section.strips.flatMap(stripCovers), ...slabs];
  const ends = covers.flatMap((cover) => [cover.from, cover.to]);
  const stops = [...new Set([0, section.finishedWidth, ...ends])]
    .filter((x) => x >= 0 && x <= section.finishedWidth)
    .sort((a, b) => a - b);
  const spans: ProfileSpan[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const from = stops[i]!;
    const to = stops[i + 1]!;
    if (to - from < 1e-9) continue;
    const middle = (from + to) / 2;
    const here = covers.filter((cover) => cover.from < middle && cover.to > middle);
    const thickness = here.reduce((sum, cover) => sum + cover.thickness, 0);
    const layers = here.filter((cover) => cover.layer).length;
    const before = spans.at(-1);
    if (before && before.layers === layers && Math.abs(before.thickness - thickness) < 1e-9) {
      spans[spans.length - 1] = { ...before, to };
    } else spans.push({ from, to, layers, thickness });
  }
  return spans;
}

/** The thickest span; a section without width gives none. */
export function thickestSpan(section: SolvedSection): ProfileSpan {
  const spans = thicknessProfile(section);
  const none = { from: 0, to: section.finishedWidth, layers: 0, thickness: 0 };
  const thicker = (a: ProfileSpan, b: ProfileSpan): boolean =>
    a.thickness > b.thickness + 1e-9 || (a.thickness > b.thickness - 1e-9 && a.layers > b.layers);
  return spans.reduce((best, span) => (thicker(span, best) ? span : best), spans[0] ?? none);
}

/** Height of the whole stack with every level filled, mm. */
export function stackHeight(section: SolvedSection): number {
  return levelThicknesses(section.plan).reduce((sum, thickness) => sum + thickness, 0);
}
