/** What a material is as far as folding and sewing go. */
export type StrapMaterialKind =
  | "woven"
  | "vinyl"
  | "leather"
  | "cork"
  | "felt"
  | "interfacing"
  | "padding"
  | "webbing"
  | "cord";

/** How a material folds, fitted by a fold test or left to the defaults of its kind. */
export interface FoldTraits {
  /** K: where in the thickness the length stays the same; 0 inner face, 0.5 middle. */
  readonly neutral?: number | undefined;
  /** Least inside radius it takes by itself, mm. */
  readonly leastRadius?: number | undefined;
  /** How far raw edges keep out of a bend: 0 crushed into it, 1 stop where it starts. */
  readonly clearance?: number | undefined;
}

/** What the strap builder needs to know of one material; the project's materials carry at least this. mm. */
export interface StrapMaterial {
  readonly id: string;
  readonly name: string;
  readonly kind: StrapMaterialKind;
  /** One layer as it lies in the strap. */
  readonly thickness: number;
  /** What the back is made of; decides which way a strap should run. Default `unknown`. */
  readonly backing?: "woven" | "knit" | "none" | "unknown" | undefined;
  readonly fold?: FoldTraits | undefined;
  /** Usable width of what is in stock, mm; lets the builder say metres and where a join is needed. */
  readonly usableWidth?: number | undefined;
  /** Longest straight piece that can be had, mm; open when absent. */
  readonly longestPiece?: number | undefined;
}
