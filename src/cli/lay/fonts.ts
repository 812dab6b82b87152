import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { FontBytes } from "../../export/fonts/faces.ts";

const require = createRequire(import.meta.url);

let read: FontBytes | null = null;

/** The fonts that come with the program: always the same bytes, so that they are parsed once for all the lays of a batch. */
export function fontBytes(): FontBytes {
  read ??= {
    regular: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
    bold: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
    fallbacks: [emojiFont, unicodeFont],
  };
  return read;
}

/** Read only for names in writing that the first two lack. */
const unicodeFont = async (): Promise<Uint8Array> =>
  packaged("@fontsource/unifontex/files/unifontex-latin-400-normal.woff");

const emojiFont = async (): Promise<Uint8Array> =>
  packaged("@fontsource/noto-emoji/files/noto-emoji-emoji-400-normal.woff");

function packaged(path: string): Uint8Array {
  return new Uint8Array(readFileSync(require.resolve(path)));
}
