import type { Offcut } from "../buying/offcuts.ts";
import type { MaterialStock } from "../materials/stock.ts";

/** Where a piece is when it is not in the cupboard: for which project it was taken out, and on which day. */
export interface Taken {
  readonly project: string;
  /** Year-month-day. */
  readonly on: string;
}

/** A leftover, a roll or a skin that is kept for later. Lengths in mm, x along the lengthwise grain. */
export interface CupboardPiece {
  /** What stands on its label; one piece, one code. The id of `stock` as well. */
  readonly code: string;
  /** The cloth's name: a project's material of the same name or id is offered it. */
  readonly material: string;
  readonly shade: string | null;
  /** Where it was bought. */
  readonly source: string | null;
  /** Day it was put in, year-month-day. */
  readonly kept: string;
  /** Name of a photo file, or a small picture as a data address. */
  readonly photo: string | null;
  readonly note: string | null;
  readonly stock: MaterialStock;
  /** Largest rectangle on it, flaws left out; null where none is large enough to tell of. */
  readonly largest: Offcut | null;
  /** Longest strip along the grain, 60 mm wide or wider. */
  readonly strip: Offcut | null;
  /** Null while it lies in the cupboard. */
  readonly taken: Taken | null;
}

/** What was done to a cupboard. */
export const CUPBOARD_STEPS = ["put", "kept", "took", "gave-back", "let-go", "noted"] as const;

export type CupboardStepKind = (typeof CUPBOARD_STEPS)[number];

/** One change, with what it needs to be undone. */
export interface CupboardStep {
  readonly did: CupboardStepKind;
  readonly on: string;
  readonly project: string | null;
  /** Mark of the plan whose leftovers were kept: none is kept twice. */
  readonly plan: string | null;
  /** Every piece that it concerns. */
  readonly codes: readonly string[];
  /** Those of them that were there, as they were before. */
  readonly before: readonly CupboardPiece[];
}

/** What a maker keeps for later, and the last changes, newest last. */
export interface Cupboard {
  readonly pieces: readonly CupboardPiece[];
  readonly steps: readonly CupboardStep[];
}

export const EMPTY_CUPBOARD: Cupboard = { pieces: [], steps: [] };

/** How many changes are kept to be undone. */
export const STEPS_KEPT = 100;
/** More than this is not one cupboard. */
export const MOST_PIECES = 5000;

/** Largest picture that is kept in the cupboard itself, kB of 1000 bytes: it stands in every step that can be undone. */
export const MOST_PHOTO_KB = 40;

/** Whether a photo is a picture in the cupboard itself, not the name of a file. */
export function isPicture(photo: string): boolean {
  return photo.startsWith("data:");
}

/** Whether a data address is a picture that may be kept. */
export function isSmallPicture(photo: string): boolean {
  const head = /^data:image\/(?:jpeg|png|webp);base64,/u.exec(photo)?.[0];
  if (head === undefined || !/^[A-Za-z\d+/]+={0,2}$/u.test(photo.slice(head.length))) return false;
  return pictureKb(photo) <= MOST_PHOTO_KB;
}

/** Size of a picture in the cupboard, kB. */
export function pictureKb(photo: string): number {
  const data = photo.slice(photo.indexOf(",") + 1);
  const padding = data.endsWith("==") ? 2 : data.endsWith("=") ? 1 : 0;
  return Math.floor(((data.length - padding) * 3) / 4) / 1000;
}

/** Letters and digits that are not mistaken for each other by hand or eye: no 0 O 1 I L U V. */
const LETTERS = "23456789ABCDEFGHJKMNPQRSTWXYZ";
const CODE_LENGTH = 5;

/**
 * A code that no piece of the cupboard has, and none of the steps speaks of. `below` draws a whole number under its
 * argument: codes of two cupboards are to differ, so it comes from the host.
 */
export function freshCode({ pieces, steps }: Cupboard, below: (count: number) => number): string {
  const known = new Set([...pieces.map(({ code }) => code), ...steps.flatMap(({ codes }) => codes)]);
  for (;;) {
    const code = Array.from({ length: CODE_LENGTH }, () => LETTERS[below(LETTERS.length)]!).join("");
    if (!known.has(code)) return code;
  }
}

/** A code as someone typed or scanned it: blanks and hyphens left out, in capitals. */
export function plainCode(text: string): string {
  return text.replace(/[\s-]+/gu, "").toUpperCase();
}

/** Whether a piece is of this cloth; capitals and blanks round the name do not matter. */
export function isOfCloth(
  { material }: CupboardPiece,
  cloth: { readonly id: string; readonly name: string },
): boolean {
  return [cloth.id, cloth.name].some((name) => sameWords(name, material));
}

/** Whether two names are the same but for capitals and blanks. */
export function sameWords(one: string, other: string): boolean {
  const plain = (text: string): string => text.trim().replace(/\s+/gu, " ").toLowerCase();
  return plain(one) === plain(other);
}
