import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { FontBytes } from "../../export/fonts/fontBytes.ts";

const require = createRequire(import.meta.url);

/** The fonts that come with the program. */
export function fontBytes(): FontBytes {
  return { regular: font("DejaVuSansCondensed"), bold: font("DejaVuSansCondensed-Bold"), fallbacks: [] };
}

function font(name: string): Uint8Array {
  return new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
}
