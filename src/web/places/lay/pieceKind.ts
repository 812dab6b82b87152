import type { PieceArt } from "../../../core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../../core/drawing/lay/pieceArt.ts";
import { ringBox } from "../../../core/geometry/box.ts";
import type { Project } from "../../../core/project/project.ts";
import type { Language } from "../../../core/units/language.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { contourPath, ringPath } from "../../parts/screenPath.ts";
import { derivedOf } from "../../state/derived.ts";

/** What the screen draws of a kind of piece, once for all its copies, in the piece's own frame. */
export interface PieceKind {
  /** Same text, same look. */
  readonly signature: string;
  readonly cutPath: string;
  readonly lines: readonly { readonly role: string; readonly path: string }[];
  readonly name: string;
  readonly detail: string;
  readonly count: number;
  /** Middle of the box, and its sides, mm. */
  readonly middleX: number;
  readonly middleY: number;
  readonly along: number;
  readonly across: number;
  /** Room for a label at the middle, as a share of the box: curved pieces have less. */
  readonly room: number;
}

/** All kinds of a project, by piece id. */
export function kindsOf(project: Project, language: Language): ReadonlyMap<string, PieceKind> {
  const art = pieceArt(derivedOf(project, language).pieces, project.output.lengths, language);
  return new Map([...art].map(([id, each]) => [id, pieceKind(each)]));
}

/** The screen's drawing of a piece. Cost O(points). */
function pieceKind(art: PieceArt): PieceKind {
  const box = ringBox(art.outline.outer);
  const along = box.maxX - box.minX;
  const across = box.maxY - box.minY;
  const kind = {
    cutPath: contourPath(art.contour) + art.outline.holes.map(ringPath).join(""),
    lines: art.lines.map((line) => ({ role: line.role, path: contourPath(line.contour) })),
    name: art.name,
    detail: unbroken(art.detail),
    count: art.count,
    middleX: (box.minX + box.maxX) / 2,
    middleY: (box.minY + box.maxY) / 2,
    along,
    across,
    room: art.outline.outer.length === 8 ? 0.92 : 0.7,
  };
  return { ...kind, signature: JSON.stringify(kind) };
}

/** Room for a label between the grain arrow at the foot of an upright piece and as far from its head. */
const UPRIGHT_ROOM = 0.7;

/** Height of the letters of a label that fits the piece, mm. A letter is about 0.55 of its height wide. */
export function labelSize(kind: PieceKind, text: string): number {
  // On an upright piece the label runs towards the grain arrow at its foot and ends before it.
  const room = kind.across > kind.along ? Math.min(kind.room, UPRIGHT_ROOM) : kind.room;
  const long = Math.max(kind.along, kind.across) * room;
  const short = Math.min(kind.along, kind.across) * kind.room;
  const letters = Math.max(4, text.length, kind.detail.length * DETAIL);
  return Math.min(short * 0.3, long / (0.58 * letters), 60);
}

/** Height of the second line of a label as a share of the first. */
export const DETAIL = 0.7;
