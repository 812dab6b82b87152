import { flattenContour } from "../../../core/geometry/contourArcs.ts";
import { ringBox } from "../../../core/geometry/ring.ts";
import type { Panel } from "../../../core/panels/panel.ts";
import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";
import type { LengthWords } from "../../fields/units.ts";
import type { Texts } from "../../texts/catalogue.ts";

/** Size of a strap as the maker asked for it. */
export function strapSize(strap: StrapWish, lengths: LengthWords, texts: Texts): string {
  const length = lengths.size(strap.length.mm);
  return strap.width === undefined ? length : `${lengths.size(strap.width.mm)} · ${texts.bag.longShort(length)}`;
}

/** Size of a panel on its stitch line: along and across the grain. */
export function panelSize({ shape }: Panel, lengths: LengthWords): string {
  if (shape.kind !== "outline") return lengths.box(shape.along, shape.across);
  const box = ringBox(flattenContour(shape.contour));
  return lengths.box(box.maxX - box.minX, box.maxY - box.minY);
}
