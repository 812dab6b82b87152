import type { PieceKind } from "./pieceKind.ts";

/** A name in one to three lines, without the size, and the height of its letters, mm. */
export interface BriefLabel {
  readonly lines: readonly string[];
  readonly size: number;
}

/** From line to line, in heights of a letter. */
export const LINE = 1.1;
/** Room of a letter's width, and of the name along an upright piece, as in `labelSize`. */
const LETTER = 0.58;
const UPRIGHT_ROOM = 0.7;
const MOST_LINES = 3;

/**
 * The name alone, broken where that makes its letters largest: for pieces whose whole label is too small to read. Lines
 * leave the grain arrow its place.
 */
export function briefLabel(kind: PieceKind, name: string): BriefLabel {
  const isUpright = kind.across > kind.along;
  const long = Math.max(kind.along, kind.across) * (isUpright ? Math.min(kind.room, UPRIGHT_ROOM) : kind.room);
  const short = Math.min(kind.along, kind.across);
  let best: BriefLabel = { lines: [name], size: 0 };
  for (let n = 1; n <= MOST_LINES; n++) {
    const lines = brokenInto(name.split(" "), n);
    if (lines.length !== n) continue;
    const letters = Math.max(4, ...lines.map((line) => line.length));
    // On a long piece the arrow lies beside the lines, on an upright one at their foot.
    const high = isUpright ? (0.8 * short) / (LINE * n) : (0.38 * short) / ((LINE * n) / 2 + 0.35);
    const size = Math.min(high, long / (LETTER * letters), 60);
    if (size > best.size) best = { lines, size };
  }
  return best;
}

/** Words in so many lines, the longest as short as can be. */
function brokenInto(words: readonly string[], lines: number): readonly string[] {
  if (lines === 1 || words.length < lines) return [words.join(" ")];
  let best: readonly string[] = [];
  for (let first = 1; first <= words.length - lines + 1; first++) {
    const rest = brokenInto(words.slice(first), lines - 1);
    const all = [words.slice(0, first).join(" "), ...rest];
    if (best.length === 0 || longest(all) < longest(best)) best = all;
  }
  return best;
}

function longest(lines: readonly string[]): number {
  return Math.max(...lines.map((line) => line.length));
}
