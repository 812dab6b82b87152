import type { Contour } from "../geometry/contour.ts";
import type { CornerEnd } from "../geometry/cornerEnds.ts";
import { type MovedContour, offsetEdges } from "../geometry/offsetEdges.ts";
import type { CornerStyle } from "./panel.ts";

/** An outline with what each of its edges and corners has: corner i is where edge i starts. */
export interface Seamed {
  readonly contour: Contour;
  readonly allowances: readonly number[];
  readonly hems: readonly boolean[];
  readonly corners: readonly CornerStyle[];
  /** Whether the edge runs backwards in the outline as the maker drew it: the mirror image over a fold. */
  readonly mirrored: readonly boolean[];
}

/** Two hems that meet are cut off this far beyond their corner, mm (common practice, no source). */
const TURNED_CORNER = 2;

/** The stitch line moved out by its allowances, corners in their styles. */
export function cutLine(seamed: Seamed): Contour {
  return offsetEdges(seamed.contour, seamed.allowances, cornerEndsOf(seamed))!.contour;
}

/** The cut line moved in by its allowances; null when they leave nothing. */
export function stitchLine({ contour, allowances }: Pick<Seamed, "contour" | "allowances">): MovedContour | null {
  return offsetEdges(
    contour,
    allowances.map((width) => -width || 0),
  );
}

function cornerEndsOf({ corners, hems, allowances, mirrored }: Seamed): CornerEnd[] {
  return corners.map((style, i): CornerEnd => {
    const before = (i + corners.length - 1) % corners.length;
    const hemmed = hems[before] || hems[i];
    if (style === "folded-back" || hemmed) {
      const wider = allowances[before]! >= allowances[i]! ? "before" : "after";
      const over = hems[before] === hems[i] ? wider : hems[before] ? "before" : "after";
      if (hems[before] && hems[i]) return { kind: "blunted", reach: TURNED_CORNER };
      return { kind: "folded", over };
    }
    if (style === "square") return { kind: "square", to: mirrored[i] ? "after" : "before" };
    return { kind: style };
  });
}
