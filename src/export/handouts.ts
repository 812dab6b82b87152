import type { CupboardPiece } from "../core/cupboard/cupboard.ts";
import type { Paper } from "../core/project/papers.ts";
import { listPages } from "./cutsheet/listPages.ts";
import { shelfLabelPages } from "./cutsheet/shelfLabelPages.ts";
import { shelfLabel, type Telling } from "./cutsheet/shelfLabels.ts";
import type { ShoppingSheet } from "./cutsheet/shoppingSheet.ts";
import type { FontBytes } from "./fonts/faces.ts";
import { type PdfFile, pagesPdf } from "./pdf/pagesPdf.ts";

/** A shopping list to take along, a box to tick beside each line. */
export function shoppingPdf(list: ShoppingSheet, paper: Paper, fonts: FontBytes): Promise<PdfFile> {
  return pagesPdf(listPages(list, paper), fonts, { title: list.title });
}

/** Labels of pieces in the cupboard, each with its code to scan, at true size; `title` is the document's. */
export function shelfLabelsPdf(
  pieces: readonly CupboardPiece[],
  title: string,
  telling: Telling,
  paper: Paper,
  fonts: FontBytes,
): Promise<PdfFile> {
  const labels = pieces.map((piece) => shelfLabel(piece, telling));
  return pagesPdf(shelfLabelPages(labels, paper), fonts, { title });
}
