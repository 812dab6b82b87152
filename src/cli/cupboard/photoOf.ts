import { readFileSync, statSync } from "node:fs";
import { isSmallPicture, MOST_PHOTO_KB } from "../../core/cupboard/cupboard.ts";
import type { Io } from "../command.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";

/** How a picture begins. Source: ISO/IEC 10918-1 B.1.1.3, ISO/IEC 15948 5.2, RFC 9649 2.4. */
const KINDS = [
  ["image/jpeg", (bytes: Buffer) => bytes[0] === 0xff && bytes[1] === 0xd8],
  ["image/png", (bytes: Buffer) => bytes.subarray(0, 8).toString("latin1") === "\x89PNG\r\n\x1a\n"],
  ["image/webp", (bytes: Buffer) => /^RIFF[\s\S]{4}WEBP/u.test(bytes.subarray(0, 12).toString("latin1"))],
] as const;

/** A photo as the cupboard keeps it: a small picture itself, of any other file its name, which is told. */
export function photoOf(path: string, io: Io): string {
  let bytes: Buffer;
  try {
    const kb = Math.ceil(statSync(path).size / 1000);
    if (kb > MOST_PHOTO_KB) {
      io.err(`${CUPBOARD_TEXTS[io.language].photoNamed(path, kb, MOST_PHOTO_KB)}\n`);
      return path;
    }
    bytes = readFileSync(path);
  } catch {
    // The photo may lie on a telephone: its name is enough to find it by.
    return path;
  }
  const kind = KINDS.find(([, isKind]) => isKind(bytes))?.[0];
  const picture = `data:${kind};base64,${bytes.toString("base64")}`;
  return kind !== undefined && isSmallPicture(picture) ? picture : path;
}
