import type { Drawing, DrawnText } from "../core/drawing/list/drawing.ts";
import { drawnRoles, styledAs } from "../core/drawing/list/roleStyles.ts";
import { singleCuts } from "../core/drawing/machine/singleCuts.ts";
import { ringContour } from "../core/geometry/contourShapes.ts";
import { fewerCorners } from "../core/geometry/fewerCorners.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import { dxfText } from "./dxf/dxfText.ts";
import type { Faces } from "./fonts/faces.ts";
import { letterRings, textOutlines } from "./fonts/textOutlines.ts";
import { svgText } from "./svg/svgText.ts";

/** A drawing as a machine gets it: cut lines that neighbours share would be cut twice. */
export function sentDrawing(drawing: Drawing, output: OutputSettings): Drawing {
  return output.sharedEdges === "once" ? singleCuts(drawing) : drawing;
}

/** What the drawing files of a stock hold, for a screen: shared edges and left-out lines as the settings have them. */
export function sentPicture(drawing: Drawing, output: OutputSettings): Drawing {
  const { box, items } = sentDrawing(drawing, output);
  const drawn = new Set(drawnRoles(output.lines));
  return { box, items: items.filter((item) => item.kind === "area" || drawn.has(item.role)) };
}

/**
 * Texts whose letters are drawn, at most: each is a thousand corners or more, and a file of a hundred megabytes is
 * opened by few programs. Beyond it they are written as text.
 */
export const MOST_DRAWN_TEXTS = 3000;

/** The texts of a drawing whose letters would have to be drawn, when they are more than a file can take; 0 otherwise. */
export function tooManyLetters(drawing: Drawing, { letters }: OutputSettings): number {
  const texts = letters === "outlines" ? textsIn(drawing) : 0;
  return texts > MOST_DRAWN_TEXTS ? texts : 0;
}

const textsIn = ({ items }: Drawing): number => items.filter(({ kind }) => kind === "text").length;

/** A drawing as SVG: layers, lines and letters as the settings have them. `areas` keeps filled faces. */
export function drawingSvg(
  drawing: Drawing,
  title: string,
  output: OutputSettings,
  faces: Faces,
  areas: boolean,
): string {
  const { lines } = output;
  const isDrawn = output.letters === "outlines" && tooManyLetters(drawing, output) === 0;
  const layers = Object.fromEntries(
    Object.entries(lines).flatMap(([role, line]) => (line?.layer === undefined ? [] : [[role, line.layer]])),
  );
  return svgText(drawing, {
    title,
    styles: styledAs(lines),
    roles: drawnRoles(lines),
    layers,
    areas,
    // No transform may stand in the file, so turned text is never text.
    outlineText: (text) => (isDrawn || text.turnDeg !== 0 ? textOutlines(text, faces) : null),
  });
}

/** A drawing as DXF: layers, lines and letters as the settings have them. */
export function drawingDxf(drawing: Drawing, output: OutputSettings, faces: Faces): string {
  const { lines } = output;
  const isDrawn = output.letters === "outlines" && tooManyLetters(drawing, output) === 0;
  const many = textsIn(drawing) > MANY_TEXTS;
  const rings = (text: DrawnText): number[][] => letterRings(textOutlines(text, faces)).map(toMicrometres);
  return dxfText(drawing, {
    lines,
    roles: drawnRoles(lines),
    outlineText: (text) => (isDrawn ? (many ? rings(text).map(coarser) : rings(text)) : null),
  });
}

/** More texts than this are drawn with fewer corners a letter: hundreds of copies fill a hundred megabytes. */
const MANY_TEXTS = 300;
/** How near to the straight a corner of such a letter is that is left out, mm: less than a pen's own width. */
const PEN = 0.03;

/** Letters need no more: a third of what their corners take otherwise. */
const toMicrometres = (ring: number[]): number[] => ring.map((mm) => Math.round(mm * 1000) / 1000);

function coarser(ring: number[]): number[] {
  return [...fewerCorners(ringContour(Float64Array.from(ring)), PEN).vertices].filter((_, i) => i % 3 !== 2);
}
