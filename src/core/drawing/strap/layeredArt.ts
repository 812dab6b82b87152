import type { Contour } from "../../geometry/contour.ts";
import type { DrawnStrap } from "../../straps/build/strapResult.ts";
import type { PlyRole } from "../../straps/section/foldPlan.ts";
import type { SolvedSection, SolvedSlab } from "../../straps/section/foldSection.ts";
import { runThickness } from "../../straps/section/skiving.ts";
import type { AreaTone } from "../list/drawing.ts";
import type { ArtLayer, SectionArt } from "./sectionArt.ts";
import { type LevelHeight, levelHeights } from "./sectionHeights.ts";
import { SAMPLES, stripOutline } from "./stripOutline.ts";

const TONES: Readonly<Record<PlyRole, AreaTone>> = {
  outer: "face",
  facing: "facing",
  interfacing: "interfacing",
  padding: "shade",
  webbing: "webbing",
  cord: "webbing",
};

function highest(contours: readonly Contour[]): number {
  let top = 0;
  for (const { vertices } of contours)
    for (let i = 1; i < vertices.length; i += 3) top = Math.max(top, vertices[i]!);
  return top;
}

/** A facing of the same material as the outer strip is told apart by the lighter tone of its wrong side. */
function layerOf(role: PlyRole, thickness: number, ownFacing: boolean): ArtLayer {
  if (role !== "facing" || ownFacing) return { tone: TONES[role], word: role, thickness };
  return { tone: "back", word: "own-facing", thickness };
}

/** Upper face of everything that lies at `x`. */
function topAt(section: SolvedSection, height: LevelHeight, x: number): number {
  let top = 0;
  for (const strip of section.strips) {
    let run = 0;
    for (const segment of strip.segments) {
      if (segment.kind !== "run") continue;
      const thickness = runThickness(strip.plan, run++);
      const there = x >= Math.min(segment.fromX, segment.toX) && x <= Math.max(segment.fromX, segment.toX);
      if (there) top = Math.max(top, height(segment.level, x) + thickness);
    }
  }
  return top;
}

/** A core as it lies: webbing square and flat, soft ones round at their ends and sinking with what is below them. */
function slabContour(section: SolvedSection, slab: SolvedSlab, height: LevelHeight): Contour {
  const { level, thickness, square } = slab.plan;
  const round = square ? 0 : thickness / 2;
  const [from, to] = [slab.fromX + round, slab.toX - round];
  const steps = section.plan.settles && !square ? SAMPLES : 1;
  const lower: number[] = [];
  const upper: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const x = from + ((to - from) * i) / steps;
    const low = height(level, x);
    lower.push(x, low, 0);
    upper.unshift(x, low + thickness, 0);
  }
  // Half circles at both ends: the edges that leave the last vertex of either face.
  lower[lower.length - 1] = square ? 0 : 1;
  upper[upper.length - 1] = square ? 0 : 1;
  return { vertices: Float64Array.from([...lower, ...upper]), closed: true };
}

/** Art of a stack of folded layers: strips and cores by material, raw edges, topstitching. */
export function layeredArt(result: DrawnStrap, section: SolvedSection): SectionArt {
  const height = levelHeights(section);
  const ownFacing = result.wish.materials.facing !== undefined;
  const outlines = section.strips.map((strip) => ({
    layer: {
      ...layerOf(strip.plan.ply.role, strip.plan.ply.thickness, ownFacing),
      skivedTo: strip.plan.skived?.thickness,
    },
    ...stripOutline(section, strip, height),
  }));
  const slabs = section.slabs.map((slab) => {
    const contour = slabContour(section, slab, height);
    return { layer: layerOf(slab.role, slab.plan.thickness, ownFacing), contour };
  });
  const areas = [...slabs, ...outlines].map(({ layer, contour }) => ({ tone: layer.tone, contour }));
  const stitches = result.rows
    .filter((row) => row.kind === "topstitch")
    .map((row) => (row.from === "left" ? row.mm : section.finishedWidth - row.mm))
    .filter((x) => x > 0 && x < section.finishedWidth)
    .map((x) => [x, 0, topAt(section, height, x)] as const);
  const layers = new Map([...outlines, ...slabs].map(({ layer }) => [layer.word, layer]));
  return {
    areas,
    seams: [],
    rawEdges: outlines.flatMap((one) => one.rawEdges),
    stitches,
    width: section.finishedWidth,
    height: highest(areas.map((area) => area.contour)),
    layers: [...layers.values()],
    setback: result.wish.construction.startsWith("three") ? result.setback : null,
  };
}
