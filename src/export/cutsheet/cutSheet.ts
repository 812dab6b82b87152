import type { Drawing } from "../../core/drawing/list/drawing.ts";
import { contourBox } from "../../core/geometry/contourArcs.ts";
import { cuttingCautions } from "../../core/job/cuttingCautions.ts";
import { type Caution, cautionText } from "../../core/materials/caution.ts";
import type { CutPiece, PieceGrain, PieceLine } from "../../core/materials/cutPiece.ts";
import type { Material } from "../../core/materials/material.ts";
import type { MachineSettings } from "../../core/project/outputSettings.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { listedNumbers } from "../../core/units/numberWords.ts";
import { CAUTION_TABLES, SHEET_TEXTS } from "../../core/words/words.ts";

/** A thing and how much of it. */
export interface Amount {
  readonly what: string;
  readonly amount: string;
}

/** One part's order of work. */
export interface WorkList {
  readonly title: string;
  /** What can be said before the first step; nothing without steps. */
  readonly lead: readonly string[];
  readonly steps: readonly string[];
}

/** A picture with its words, such as a strap's fold section. */
export interface Picture {
  readonly title: string;
  readonly drawing: Drawing;
}

/** One kind of piece to cut. Lengths in mm. */
export interface CutRow {
  /** Running number over the whole sheet, from 1; also on the labels. */
  readonly number: number;
  readonly pieceId: string;
  readonly name: string;
  readonly materialId: string;
  readonly kind: CutPiece["kind"];
  /** As drawn, and mirror images besides. */
  readonly count: number;
  readonly mirroredCount: number;
  readonly along: number;
  readonly across: number;
  readonly grain: PieceGrain;
  /** Where to fold, tape and stitch, in words. */
  readonly notes: readonly string[];
}

/** All that is cut from one material, and what the lay says about it (length to cut off, offcuts …). */
export interface CutGroup {
  readonly material: string;
  readonly rows: readonly CutRow[];
  readonly lay: readonly string[];
}

/** Everything that goes to the cutting table in words. */
export interface CutSheet {
  readonly language: Language;
  /** Sizes stand in inches beside millimetres. */
  readonly inInches: boolean;
  readonly project: string;
  readonly bags: number;
  readonly groups: readonly CutGroup[];
  readonly purchase: readonly Amount[];
  readonly consumables: readonly Amount[];
  readonly work: readonly WorkList[];
  readonly cautions: readonly string[];
  readonly pictures: readonly Picture[];
}

/** What a cut sheet is made from; all but the first four may be left out. */
export interface CutSheetInput {
  readonly project: string;
  readonly bags: number;
  readonly materials: readonly Material[];
  readonly pieces: readonly CutPiece[];
  /** Sentences about a material's lay, by material id. */
  readonly lay?: ReadonlyMap<string, readonly string[]>;
  readonly purchase?: readonly Amount[];
  readonly consumables?: readonly Amount[];
  readonly work?: readonly WorkList[];
  /** What to mind about single parts, in sentences; shown before the cautions. */
  readonly mind?: readonly string[];
  /** Cautions besides the usual ones for the materials. */
  readonly cautions?: readonly Caution[];
  /** What the machine cuts with; left out when there is none. */
  readonly tool?: MachineSettings["tool"] | null;
  /** English when not said. */
  readonly language?: Language;
  /** Whether sizes are wanted in inches besides millimetres; not when not said. */
  readonly inInches?: boolean;
  readonly pictures?: readonly Picture[];
}

/** The cut sheet: pieces grouped by material and numbered in that order, the usual cautions added. */
export function cutSheetOf(input: CutSheetInput): CutSheet {
  const { project, bags, materials, pieces, language = "en", inInches = false } = input;
  let number = 0;
  const groups = materials
    .map((material) => ({
      material: material.name,
      rows: pieces
        .filter((piece) => piece.materialId === material.id)
        .map((piece) => rowOf(piece, ++number, language, inInches)),
      lay: input.lay?.get(material.id) ?? [],
    }))
    .filter((group) => group.rows.length > 0);
  const used = materials.filter((material) => pieces.some((piece) => piece.materialId === material.id));
  const cautions = cuttingCautions(used, pieces, input.cautions ?? [], input.tool ?? null);
  return {
    language,
    inInches,
    project,
    bags,
    groups,
    purchase: input.purchase ?? [],
    consumables: input.consumables ?? [],
    work: input.work ?? [],
    cautions: [
      ...new Set(input.mind ?? []),
      ...cautions.map((caution) => cautionText(caution, CAUTION_TABLES[language])),
    ],
    pictures: input.pictures ?? [],
  };
}

/** A length in millimetres or centimetres, with inches as `123.8 mm · 4 7/8 in`. */
export function labelSize(mm: number, { language, inInches }: Pick<CutSheet, "language" | "inInches">): string {
  const metric = formatLength(mm, mm < 1000 ? "mm" : "cm", language);
  return inInches ? `${metric} · ${sheetInches(mm)}` : metric;
}

/** A length to the nearest 1/16 in; marked `≈` where that is further off than a cut is. The columns' heads say so. */
export function sheetInches(mm: number): string {
  return cutLength(mm, "in/16");
}

function rowOf(piece: CutPiece, number: number, language: Language, inInches: boolean): CutRow {
  const box = contourBox(piece.contour);
  return {
    number,
    pieceId: piece.id,
    name: piece.name,
    materialId: piece.materialId,
    kind: piece.kind,
    count: piece.count,
    mirroredCount: piece.mirroredCount,
    along: box.maxX - box.minX,
    across: box.maxY - box.minY,
    grain: piece.grain,
    notes: lineNotes(piece, box.maxY - box.minY, language, inInches),
  };
}

const ROLES: readonly PieceLine["role"][] = ["fold", "tape", "stitch"];

/** Where the lines along a strip lie, measured from its lower long edge. Panels' lines are on the drawing alone. */
function lineNotes(piece: CutPiece, across: number, language: Language, inInches: boolean): string[] {
  if (piece.kind !== "strip") return [];
  return ROLES.flatMap((role) => {
    const heights = piece.lines
      .filter((line) => line.role === role)
      .map((line) => contourBox(line.contour))
      .filter((box) => box.maxY - box.minY < 1e-6 && box.minY > 1e-6 && box.minY < across - 1e-6)
      .map((box) => box.minY);
    const unique = [...new Set(heights.map((mm) => Math.round(mm * 100) / 100))].sort((a, b) => a - b);
    if (unique.length === 0) return [];
    const metric = listedNumbers(
      unique.map((mm) => formatLength(mm, "mm", language).replace(" mm", "")),
      language,
    );
    const inches = unique.map((mm) => sheetInches(mm).replace(" in", "")).join(", ");
    return [SHEET_TEXTS[language].linesAt(role, metric, inInches ? inches : null)];
  });
}
