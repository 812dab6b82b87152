import type { Contour } from "../geometry/contour.ts";
import { contourBox, contourEdges, edgeCircle } from "../geometry/contourArcs.ts";
import { contourArea } from "../geometry/contourEdgeLengths.ts";
import type { Curve, CurvePart } from "./curve.ts";
import type { PatternOutline, UnderstoodPattern } from "./patternOutline.ts";

/** Outlines put right by hand, each by the key of the line it stands for. */
export type Corrections = ReadonlyMap<string, Contour>;

/**
 * What a line is known by while its file is understood in other ways: its corners. A line that comes out otherwise is
 * another line, and no correction of the old one is laid over it.
 */
export function lineKey({ contour }: Pick<PatternOutline, "contour">): string {
  return contour.vertices.map((value) => Math.round(value * 1e4) / 1e4).join(" ");
}

/** The pattern with lines as they were put right, their sizes with them. */
export function correctedPattern(pattern: UnderstoodPattern, corrections: Corrections): UnderstoodPattern {
  if (corrections.size === 0) return pattern;
  return {
    ...pattern,
    outlines: pattern.outlines.map((outline) => {
      const contour = corrections.get(lineKey(outline));
      if (contour === undefined || !outline.closed) return outline;
      const areaMm2 = Math.abs(contourArea(contour));
      return { ...outline, contour, curve: curveOf(contour), box: contourBox(contour), areaMm2 };
    }),
  };
}

/** A contour as a drawn line. */
export function curveOf(contour: Contour): Curve {
  const parts = contourEdges(contour).map((edge): CurvePart => {
    const { x1: x, y1: y } = edge;
    if (edge.bulge === 0) return { kind: "straight", x, y };
    const { x: centreX, y: centreY, radius, start: from, sweep } = edgeCircle(edge);
    return { kind: "arc", centreX, centreY, ux: radius, uy: 0, vx: 0, vy: radius, from, sweep, x, y };
  });
  return { x: contour.vertices[0]!, y: contour.vertices[1]!, parts, closed: contour.closed };
}
