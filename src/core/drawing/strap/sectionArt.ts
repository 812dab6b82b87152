import type { Contour } from "../../geometry/contour.ts";
import type { LayerWord } from "../../words/strapWords.ts";
import type { AreaTone } from "../list/drawing.ts";

/** A section drawn in its own mm, before it is magnified and set on the page. */
export interface SectionArt {
  readonly areas: readonly { readonly tone: AreaTone; readonly contour: Contour }[];
  /** Where two layers of one outline meet. */
  readonly seams: readonly Contour[];
  readonly rawEdges: readonly (readonly [number, number, number, number])[];
  /** Stitch lines through the stack: x, lower and upper end. */
  readonly stitches: readonly (readonly [number, number, number])[];
  readonly width: number;
  readonly height: number;
  readonly layers: readonly ArtLayer[];
  /** The visible edge's distance from the left, where it is worth a dimension of its own. */
  readonly setback: number | null;
}

/** What a colour of the picture stands for. */
export interface ArtLayer {
  readonly tone: AreaTone;
  readonly word: LayerWord;
  readonly thickness: number;
  /** What its turned edges are skived to, mm. */
  readonly skivedTo?: number | undefined;
}
