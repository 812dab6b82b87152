import { type Affine, SAME, scaling, thenAffine } from "../../core/geometry/affine.ts";
import { isRelativeLength, isTrueLength, lengthPx } from "./lengths.ts";
import type { Viewport } from "./shapes.ts";
import { readViewBox, viewBoxMap } from "./viewBoxMap.ts";
import type { XmlElement } from "./xmlTree.ts";

const MM_PER_PX = 25.4 / 96;

/** How the outermost `svg` puts its coordinates on paper. */
export interface RootFrame {
  /** User units to mm, y up, the lower edge of the page at 0. */
  readonly map: Affine;
  readonly viewport: Viewport;
  /** Whether the file states a true size. */
  readonly isTrue: boolean;
}

/**
 * The page: its `width` and `height` in px (96 to the inch) and its `viewBox`. Where one of the two is missing it
 * follows the viewBox; where both are, one unit is one px. Null when nothing would be shown.
 */
export function rootFrame(root: XmlElement): RootFrame | null {
  const get = (name: string): string | undefined => root.attributes.get(name);
  const box = readViewBox(get("viewBox"));
  if (box && (box.width === 0 || box.height === 0)) return null;
  const given = (name: string): number | null => (isRelativeLength(get(name)) ? null : lengthPx(get(name), 0));
  const wide = given("width");
  const high = given("height");
  const ratio = box ? box.width / box.height : 1;
  const width = wide ?? (high !== null && box ? high * ratio : (box?.width ?? 0));
  const height = high ?? (wide !== null && box ? wide / ratio : (box?.height ?? 0));
  const isTrue = (wide !== null && isTrueLength(get("width"))) || (high !== null && isTrueLength(get("height")));
  if (box && (width <= 0 || height <= 0)) return null;
  const inner = box ? viewBoxMap(box, { x: 0, y: 0, width, height }, get("preserveAspectRatio")) : SAME;
  const onPaper = thenAffine(scaling(MM_PER_PX, -MM_PER_PX), [1, 0, 0, 1, 0, height * MM_PER_PX]);
  return {
    map: thenAffine(inner, onPaper),
    viewport: box ?? { width, height },
    isTrue,
  };
}
