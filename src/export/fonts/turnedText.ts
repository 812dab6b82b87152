import fontkit, { type Font } from "@pdf-lib/fontkit";
import type { DrawnText } from "../../core/drawing/drawing.ts";
import { turnCosSin } from "../../core/geometry/pose.ts";
import type { FontBytes } from "./fontBytes.ts";

type PointWriter = (x: number, y: number) => string;

const LETTER: Readonly<Record<string, string>> = {
  moveTo: "M",
  lineTo: "L",
  quadraticCurveTo: "Q",
  bezierCurveTo: "C",
  closePath: "Z",
};

/**
 * Turned text as SVG path data, for files that may not turn anything themselves. Gives null for level text, which is
 * left as text, and for text the fonts cannot set.
 *
 * Cost: parses each font once, when the first turned text comes.
 */
export function turnedText(fonts: FontBytes): (text: DrawnText, point: PointWriter) => string | null {
  const parsed = new Map<Uint8Array, Font>();
  const fontOf = (bytes: Uint8Array): Font => {
    const font = parsed.get(bytes) ?? fontkit.create(bytes);
    parsed.set(bytes, font);
    return font;
  };
  return (text, point) => {
    if (text.turnDeg === 0) return null;
    const font = fontOf(text.bold ? fonts.bold : fonts.regular);
    const known = Array.from(text.text).every((sign) => font.hasGlyphForCodePoint(sign.codePointAt(0)!));
    return known ? outlineOf(text, font, point) : null;
  };
}

interface PathCommand {
  readonly command: string;
  readonly args: readonly number[];
}

/** The strokes of a glyph; the library has them on every path and leaves them out of its types. */
function commandsOf(path: object): readonly PathCommand[] {
  return (path as { readonly commands: readonly PathCommand[] }).commands;
}

function outlineOf(text: DrawnText, font: Font, point: PointWriter): string {
  const { glyphs, positions, advanceWidth } = font.layout(text.text);
  const scale = text.size / font.unitsPerEm;
  const [c, s] = turnCosSin(text.turnDeg);
  const place = (x: number, y: number): string =>
    point(text.x + scale * (c * x - s * y), text.y + scale * (s * x + c * y));
  let pen = text.anchor === "start" ? 0 : text.anchor === "middle" ? -advanceWidth / 2 : -advanceWidth;
  let data = "";
  for (const [i, glyph] of glyphs.entries()) {
    for (const { command, args } of commandsOf(glyph.path)) {
      const pairs = Array.from({ length: args.length / 2 }, (_, k) => place(pen + args[2 * k]!, args[2 * k + 1]!));
      data += `${LETTER[command]}${pairs.join(" ")}`;
    }
    pen += positions[i]!.xAdvance;
  }
  return data;
}
