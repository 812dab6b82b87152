import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import { gzipSync } from "node:zlib";
import { unpackFont } from "../../export/fonts/unpackWoff.ts";
import { packPixels } from "./packPixels.ts";

/** Side of a square of UnifontEX in its units: 16 squares make its em of 1024. */
export const PIXEL_SIDE = 64;

const PIXELS = "@fontsource/unifontex/files/unifontex-latin-400-normal.woff";
const OUTLINES = [
  "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf",
  "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf",
];

/**
 * Writes the page's fonts for files into a folder, packed as `unpackFont` reads them; gives what stands for each where
 * the sources import it. As they are published they would take half of the page.
 */
export async function packedFonts(folder: string): Promise<{ find: string; replacement: string }[]> {
  const require = createRequire(import.meta.url);
  const read = (path: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(path)));
  const written = (path: string, packed: Uint8Array): { find: string; replacement: string } => {
    const file = join(folder, basename(path).replace(/\.\w+$/u, ".packed"));
    writeFileSync(file, packed);
    return { find: `${path}?url`, replacement: `${file}?url` };
  };
  const pixels = packPixels(await unpackFont(read(PIXELS)), PIXEL_SIDE);
  return [written(PIXELS, pixels), ...OUTLINES.map((path) => written(path, gzipSync(read(path), { level: 9 })))];
}
