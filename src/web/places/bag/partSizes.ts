import type { Panel } from "../../../core/panels/panel.ts";
import { wholeBox } from "../../../core/project/outlineEdits.ts";
import type { Project } from "../../../core/project/project.ts";
import { sizedPanelOf } from "../../../core/project/sizedPanels.ts";
import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";
import type { LengthWords } from "../../fields/units.ts";
import type { Texts } from "../../texts/texts.ts";

/** Size of a strap as the maker asked for it. */
export function strapSize(strap: StrapWish, lengths: LengthWords, texts: Texts): string {
  const length = lengths.size(strap.length.mm);
  return strap.width === undefined ? length : `${lengths.size(strap.width.mm)} · ${texts.bag.longShort(length)}`;
}

/** Size of a panel on its stitch line: along and across the grain, both halves of one that is drawn as a half. */
export function panelSize(project: Project, { id }: Panel, lengths: LengthWords): string {
  const sized = sizedPanelOf(project, id);
  if (sized === null) return "";
  const { minX, minY, maxX, maxY } = wholeBox(sized.outline.contour, sized.foldEdge);
  return lengths.box(maxX - minX, maxY - minY);
}
