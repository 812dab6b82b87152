import type { Measure, MeasureTerm } from "../panels/measure.ts";
import type { EdgeWish, Panel } from "../panels/panel.ts";
import type { Seam, SeamEdge } from "../panels/seams.ts";
import type { ShapeId } from "../panels/shapes/registry.ts";
import type { PanelWords } from "../words/panelWords.ts";
import type { BagMeasureId, BagPart, BagWish } from "./bagWish.ts";

/** Panels of a bag and the seams between them, as they are put together. */
export interface BagDraft {
  readonly panels: readonly Panel[];
  readonly seams: readonly Seam[];
}

/** Ids of the cloths of a bag. */
export const CLOTH = { outer: "outer", lining: "lining", interfacing: "interfacing" } as const;

/** Whole of a bag's measure, or so many times it. */
export function of(measure: BagMeasureId, times = 1): MeasureTerm {
  return { measure, times };
}

/** A measure of another panel. */
export function as(part: string, measure: string, times = 1): MeasureTerm {
  return { of: part, measure, times };
}

/** What is said of one panel besides its part and shape. */
export interface PartMore {
  readonly count?: number;
  readonly edges?: readonly EdgeWish[];
  readonly notches?: Panel["notches"];
  readonly drills?: Panel["drills"];
}

/** Makes the panels of one bag. */
export type PartMaker = (
  part: BagPart,
  shape: ShapeId,
  sizes: Readonly<Record<string, Measure>>,
  more?: PartMore,
) => Panel;

/** Panels of the outer cloth, interfaced as the bag is. */
export function outerMaker(wish: BagWish, words: PanelWords): PartMaker {
  const interfacing = interfacingOf(wish);
  return (part, shape, sizes, more) => panelOf(words, CLOTH.outer, part, shape, sizes, { ...more, interfacing });
}

/** Panels of the lining, or of the outer cloth where the bag has none. */
export function liningMaker(wish: BagWish, words: PanelWords): PartMaker {
  const cloth = wish.lining === null ? CLOTH.outer : CLOTH.lining;
  return (part, shape, sizes, more) => panelOf(words, cloth, part, shape, sizes, { ...more, interfacing: null });
}

function interfacingOf({ interfacing }: BagWish): Panel["interfacing"] {
  if (interfacing === "none") return null;
  if (interfacing === "full") return { materialId: CLOTH.interfacing, cut: "full" };
  // Just inside the stitch line, so that it is not in the seam (common practice, no source).
  return { materialId: CLOTH.interfacing, cut: "inset", inset: 1 };
}

function panelOf(
  words: PanelWords,
  materialId: string,
  part: BagPart,
  shape: ShapeId,
  sizes: Readonly<Record<string, Measure>>,
  more: PartMore & Pick<Panel, "interfacing">,
): Panel {
  return {
    id: part,
    name: words.parts[part],
    materialId,
    count: more.count ?? 1,
    mirroredCount: 0,
    shape: { kind: "measured", shape, sizes },
    seamAllowance: [of("allowance")],
    ...(more.edges && { edges: more.edges }),
    foldEdge: null,
    grain: "lengthwise",
    notches: more.notches ?? [],
    ...(more.drills && { drills: more.drills }),
    interfacing: more.interfacing,
  };
}

/** Edges of one panel, in order. */
export function edgesOf(panel: string, ...edges: readonly string[]): SeamEdge[] {
  return edges.map((edge) => ({ panel, edge }));
}

/** A seam between two runs of edges. */
export function seam(first: readonly SeamEdge[], second: readonly SeamEdge[]): Seam {
  return { first, second };
}
