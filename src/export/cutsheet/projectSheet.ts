import { layDrawing } from "../../core/drawing/lay/layDrawing.ts";
import { layPicture } from "../../core/drawing/lay/layPicture.ts";
import { grainArrow, pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { laidForms } from "../../core/materials/laidForms.ts";
import { paperOf } from "../../core/project/papers.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import type { Language } from "../../core/units/language.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import { type CutSheet, cutSheetOf, type Picture } from "./cutSheet.ts";
import { PICTURE_HEIGHT, roomOn } from "./flow.ts";
import { readsInches, sheetWords } from "./sheetWords.ts";

/** What a whole cut sheet is made from. */
export interface SheetInput {
  readonly project: Project;
  readonly pieces: readonly CutPiece[];
  /** The straps worked out, for what the sheet says of their making. */
  readonly straps: readonly StrapResult[];
  readonly lays: readonly LaidCloth[];
  /** English when not said. */
  readonly language?: Language;
}

/** The whole cut sheet of a project: pieces, lays, purchase, order of work, cautions; the same for every host. */
export function projectSheet({ project, pieces, straps, lays, language = "en" }: SheetInput): CutSheet {
  const { name, bags, materials } = project;
  const words = sheetWords(project, straps, lays, language);
  const sheet = cutSheetOf({
    ...words,
    language,
    inInches: readsInches(project),
    project: name,
    bags,
    materials,
    pieces,
    tool: project.output.machine?.tool ?? null,
  });
  return { ...sheet, pictures: [...patternPictures(project, pieces, lays, sheet), ...sheet.pictures] };
}

/** A picture of every lay on which something is matched, so that she sees the pattern meet before she cuts. */
function patternPictures(
  project: Project,
  pieces: readonly CutPiece[],
  lays: readonly LaidCloth[],
  { groups, language }: CutSheet,
): Picture[] {
  const matched = lays.filter(({ problem }) => problem.pattern !== undefined);
  if (matched.length === 0) return [];
  const art = pieceArt(pieces, project.output.lengths, language);
  const rows = groups.flatMap((group) => group.rows);
  const numbers = new Map(
    rows.flatMap(({ number, pieceId }) =>
      pieces
        .filter(({ id }) => id === pieceId)
        .flatMap(laidForms)
        .map(({ piece }) => [piece.id, String(number)] as const),
    ),
  );
  const room = { width: roomOn(paperOf(project.output.paper)), height: PICTURE_HEIGHT };
  return matched.flatMap(({ material, problem, plan }) => {
    const used = problem.stocks.filter(({ id }) => plan.placements.some(({ stockId }) => stockId === id));
    return used.map((stock): Picture => {
      const laid = layDrawing(stock, plan, art, grainArrow(material), language, [], problem.pattern);
      const { drawing, scale } = layPicture(laid, numbers, room);
      const name = used.length > 1 ? `${material.name}, ${stock.id}` : material.name;
      return { title: SHEET_TEXTS[language].onPattern(name, scale), drawing };
    });
  });
}
