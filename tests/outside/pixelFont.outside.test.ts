// A font that others drew, packed as squares and unpacked: the same letters, measured by another reader of fonts.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fontkit from "@pdf-lib/fontkit";
import { expect, test } from "vitest";
import { unpackFont } from "../../src/export/fonts/unpackWoff.ts";
import { PIXEL_SIDE } from "../../src/web/build/packedFonts.ts";
import { packPixels } from "../../src/web/build/packPixels.ts";

const require = createRequire(import.meta.url);
const woff = new Uint8Array(
  readFileSync(require.resolve("@fontsource/unifontex/files/unifontex-latin-400-normal.woff")),
);

/** Squares that a path of fontkit's fills (non-zero rule), by their lower left corners, sorted. */
function squares(path: object): string {
  const { commands } = path as { commands: { command: string; args: number[] }[] };
  const turns = new Map<number, Map<number, number>>();
  let [x, y, startX, startY] = [0, 0, 0, 0];
  const lineTo = (toX: number, toY: number): void => {
    if (x !== toX && y !== toY) throw new Error("a slanted edge");
    for (let row = Math.min(y, toY); row < Math.max(y, toY); row += PIXEL_SIDE) {
      const line = turns.get(row) ?? new Map<number, number>();
      turns.set(row, line.set(x, (line.get(x) ?? 0) + (toY > y ? 1 : -1)));
    }
    [x, y] = [toX, toY];
  };
  for (const { command, args } of commands) {
    if (command === "closePath") lineTo(startX, startY);
    else if (command === "moveTo") [x, y] = [startX, startY] = args as [number, number];
    else lineTo(args.at(-2)!, args.at(-1)!);
  }
  const filled: string[] = [];
  for (const [row, line] of [...turns].sort(([a], [b]) => a - b)) {
    let round = 0;
    const at = [...line].sort(([a], [b]) => a - b);
    for (const [i, [from, change]] of at.entries()) {
      round += change;
      if (round !== 0) for (let k = from; k < at[i + 1]![0]; k += PIXEL_SIDE) filled.push(`${row},${k}`);
    }
  }
  return filled.join(" ");
}

test("a font of squares keeps every character, width and square, in less than a third of the room", async () => {
  const plain = await unpackFont(woff);
  const packed = packPixels(plain, PIXEL_SIDE);
  expect(packed.length * 3).toBeLessThan(woff.length);
  const before = fontkit.create(plain);
  const after = fontkit.create(await unpackFont(packed));
  expect(after.numGlyphs).toBe(before.numGlyphs);
  expect(after.characterSet).toEqual(before.characterSet);
  expect(after.postscriptName).toBe(before.postscriptName);
  let drawn = 0;
  // Every 23rd glyph: some of each script; all take half a minute.
  for (let i = 0; i < before.numGlyphs; i += 23) {
    const [was, is] = [before.getGlyph(i), after.getGlyph(i)];
    if (is.advanceWidth !== was.advanceWidth) throw new Error(`glyph ${i} is ${is.advanceWidth} wide`);
    const wanted = squares(was.path);
    if (squares(is.path) !== wanted) throw new Error(`glyph ${i} is drawn otherwise`);
    if (wanted !== "") drawn++;
  }
  expect(drawn).toBeGreaterThan(2800);
});
