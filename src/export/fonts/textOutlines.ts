import type { DrawnText } from "../../core/drawing/list/drawing.ts";
import { turnCosSin } from "../../core/geometry/pose.ts";
import type { Faces } from "./faces.ts";

/** A stroke of a letter in drawing millimetres: `M` and `L` to one point, `Q` by one control point, `C` by two, `Z`. */
export interface LetterStroke {
  readonly kind: "M" | "L" | "Q" | "C" | "Z";
  /** Control points first, the end last; x and y in turn. */
  readonly points: readonly number[];
}

const KINDS: Readonly<Record<string, LetterStroke["kind"]>> = {
  moveTo: "M",
  lineTo: "L",
  quadraticCurveTo: "Q",
  bezierCurveTo: "C",
  closePath: "Z",
};

interface PathCommand {
  readonly command: string;
  readonly args: readonly number[];
}

/** The strokes of a glyph; the library has them on every path and leaves them out of its types. */
function commandsOf(path: object): readonly PathCommand[] {
  return (path as { readonly commands: readonly PathCommand[] }).commands;
}

/** A text as the strokes of its letters, for files that may not turn anything themselves or must need no font. */
export function textOutlines(text: DrawnText, faces: Faces): LetterStroke[] {
  const runs = faces.split(text.text, text.bold ?? false).map((part) => {
    const scale = text.size / part.face.font.unitsPerEm;
    const run = part.face.font.layout(part.text);
    return { run, scale, width: run.advanceWidth * scale };
  });
  const width = runs.reduce((sum, run) => sum + run.width, 0);
  const [c, s] = turnCosSin(text.turnDeg);
  let pen = text.anchor === "start" ? 0 : text.anchor === "middle" ? -width / 2 : -width;
  const strokes: LetterStroke[] = [];
  for (const { run, scale } of runs) {
    for (const [i, glyph] of run.glyphs.entries()) {
      const { xAdvance, xOffset, yOffset } = run.positions[i]!;
      for (const { command, args } of commandsOf(glyph.path)) {
        const points: number[] = [];
        for (let k = 0; k + 1 < args.length; k += 2) {
          const x = pen + (args[k]! + xOffset) * scale;
          const y = (args[k + 1]! + yOffset) * scale;
          points.push(text.x + c * x - s * y, text.y + s * x + c * y);
        }
        strokes.push({ kind: KINDS[command]!, points });
      }
      pen += xAdvance * scale;
    }
  }
  return strokes;
}

/** Chords a curve of a letter is cut into where curves cannot be written. */
const CHORDS = 6;

/** Letter strokes as closed rings of flat points (x and y in turn), curves cut into chords. */
export function letterRings(strokes: readonly LetterStroke[]): number[][] {
  const rings: number[][] = [];
  let ring: number[] = [];
  for (const { kind, points } of strokes) {
    if (kind === "M") {
      ring = [...points];
      rings.push(ring);
    } else if (kind === "L") ring.push(...points);
    else if (kind !== "Z") ring.push(...chords(ring.slice(-2), points));
  }
  return rings.filter((found) => found.length >= 6);
}

/** Points of a quadratic or cubic curve after its start, by repeated linear interpolation (de Casteljau). */
function chords(start: readonly number[], points: readonly number[]): number[] {
  const out: number[] = [];
  for (let step = 1; step <= CHORDS; step++) {
    const t = step / CHORDS;
    let level = [...start, ...points];
    while (level.length > 2) {
      const next: number[] = [];
      for (let i = 0; i + 2 < level.length; i++) next.push(level[i]! + t * (level[i + 2]! - level[i]!));
      level = next;
    }
    out.push(...level);
  }
  return out;
}
