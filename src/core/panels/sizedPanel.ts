import type { CornerStyle, NotchCut, Panel } from "./panel.ts";
import type { ShapeOutline } from "./shapes/shapeRecord.ts";

/** A notch at its place: `at` mm along one edge of the outline. */
export interface SizedNotch {
  readonly edge: number;
  readonly at: number;
  readonly cut: NotchCut;
  readonly mark: string | null;
}

/** A place on an edge of the outline where the cloth's pattern meets, `at` mm along it. */
export interface SizedMatch {
  readonly match: number;
  readonly side: "first" | "second";
  readonly edge: number;
  readonly at: number;
}

/** Words, or a hole to mark, at a place. */
export interface SizedPlace {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** A panel with every measure worked out. mm; one entry an edge of the outline, corner i being where edge i starts. */
export interface SizedPanel {
  readonly panel: Panel;
  /** As drawn: the stitch line, or the cut line where the panel says so. */
  readonly outline: ShapeOutline;
  /** Seam allowance of each edge; none on the fold. */
  readonly allowances: readonly number[];
  readonly hems: readonly boolean[];
  readonly corners: readonly CornerStyle[];
  readonly foldEdge: number | null;
  readonly notches: readonly SizedNotch[];
  /** Places where the cloth's pattern meets that of another panel. */
  readonly matchSpots?: readonly SizedMatch[] | undefined;
  readonly drills: readonly SizedPlace[];
  readonly texts: readonly SizedPlace[];
  /** How far inside the panel's stitch line its interfacing and its lining have theirs, where they have. */
  readonly interfacingInset: number;
  readonly liningInset: number;
}
