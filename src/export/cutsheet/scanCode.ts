import { encode } from "uqr";
import type { DrawnArea } from "../../core/drawing/list/drawing.ts";
import { drawArea } from "../../core/drawing/list/items.ts";
import { rectangleContour } from "../../core/geometry/contourShapes.ts";

/** Modules of white that the code needs on every side. Source: ISO/IEC 18004, quiet zone. */
export const QUIET = 4;

/**
 * A text as a QR code (ISO/IEC 18004, level M, of which 15 % may be soiled), dark modules as squares of `module` mm.
 * Its lower-left corner is at (x, y), the quiet zone not counted; `modules` is how many a side has.
 */
export function scanCode(
  text: string,
  x: number,
  y: number,
  module: number,
): { readonly art: DrawnArea; readonly modules: number } {
  const { data, size } = encode(text, { ecc: "M", border: 0 });
  const runs = data.flatMap((row, fromTop) => {
    const bottom = y + (size - 1 - fromTop) * module;
    return darkRuns(row).map(([from, to]) =>
      rectangleContour(x + from * module, bottom, (to - from) * module, module),
    );
  });
  return { art: drawArea("ink", runs), modules: size };
}

/** Stretches of dark modules in a row: as one rectangle each, no seam shows between them. */
function darkRuns(row: readonly boolean[]): [from: number, to: number][] {
  const runs: [number, number][] = [];
  row.forEach((isDark, i) => {
    const last = runs.at(-1);
    if (!isDark) return;
    if (last?.[1] === i) last[1] = i + 1;
    else runs.push([i, i + 1]);
  });
  return runs;
}
