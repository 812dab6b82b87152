import { type Cupboard, type CupboardPiece, isPicture, pictureKb } from "../../core/cupboard/cupboard.ts";
import { freeText, sizeText, type Telling } from "../../export/cutsheet/shelfLabels.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";

/** The pieces as a table, a row each, and how many there are. */
export function tableText(pieces: readonly CupboardPiece[], telling: Telling): string {
  const texts = CUPBOARD_TEXTS[telling.language];
  if (pieces.length === 0) return texts.noPieces;
  const { columns } = texts;
  const heads = [
    ...[columns.label, columns.cloth, columns.shade, columns.size],
    ...[columns.largest, columns.strip, columns.kept, columns.where],
  ];
  const rows = pieces.map((piece) => [
    ...[piece.code, piece.material, piece.shade ?? "", sizeText(piece, telling)],
    ...[freeText(piece.largest, telling), freeText(piece.strip, telling), piece.kept, whereText(piece, telling)],
  ]);
  const widths = heads.map((_, i) => Math.max(...[heads, ...rows].map((row) => row[i]!.length)));
  const lines = [heads, ...rows].map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("  ")
      .trimEnd(),
  );
  const inside = pieces.filter(({ taken }) => taken === null).length;
  return [...lines, texts.count(inside, pieces.length - inside)].join("\n");
}

/** Everything that is known of one piece. */
export function pieceText(piece: CupboardPiece, telling: Telling): string {
  const texts = CUPBOARD_TEXTS[telling.language];
  const { columns } = texts;
  const said: readonly (readonly [string, string | null])[] = [
    [columns.cloth, piece.material],
    [columns.shade, piece.shade],
    [columns.size, sizeText(piece, telling)],
    [columns.largest, freeText(piece.largest, telling)],
    [columns.strip, freeText(piece.strip, telling)],
    [columns.kept, piece.kept],
    [texts.source, piece.source],
    [texts.photo, photoText(piece, telling)],
    [texts.note, piece.note],
    [columns.where, whereText(piece, telling)],
  ];
  const known = said.filter(([, value]) => value !== null);
  const width = Math.max(...known.map(([name]) => name.length));
  return [piece.code, ...known.map(([name, value]) => `  ${name.padEnd(width)}  ${value}`)].join("\n");
}

/** The photo's file, or how large the picture is that the cupboard itself has. */
function photoText({ photo }: CupboardPiece, { language }: Telling): string | null {
  if (photo === null || !isPicture(photo)) return photo;
  return CUPBOARD_TEXTS[language].picture(Math.ceil(pictureKb(photo)));
}

/** The label and size of a piece in a few words. */
export function shortText(piece: CupboardPiece, telling: Telling): string {
  const shade = piece.shade === null ? "" : `, ${piece.shade}`;
  return `${piece.code} (${piece.material}${shade}, ${sizeText(piece, telling)})`;
}

/** Those of a cupboard that are wanted: of one cloth, or all; with those that are out, or not. */
export function wantedPieces({ pieces }: Cupboard, cloth: string | null, withOut: boolean): CupboardPiece[] {
  const isCloth = ({ material }: CupboardPiece): boolean =>
    cloth === null || material.toLowerCase().includes(cloth.trim().toLowerCase());
  return pieces.filter((piece) => isCloth(piece) && (withOut || piece.taken === null));
}

function whereText({ taken }: CupboardPiece, { language }: Telling): string {
  const texts = CUPBOARD_TEXTS[language];
  return taken === null ? texts.inside : texts.outFor(taken.project, taken.on);
}
