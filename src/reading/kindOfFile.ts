import type { PatternKind } from "../core/patterns/patternDrawing.ts";
import { unreadable } from "./readingEnds.ts";

/**
 * What kind of pattern a file is, by what is in it; its name says nothing. Ends reading with a problem when it is
 * packed, binary DXF or nothing known.
 * Source: the first bytes that ISO 32000-1 7.5.2 (PDF), the PNG and JPEG standards and RFC 1952 (gzip) fix.
 */
export function kindOfFile(bytes: Uint8Array): PatternKind {
  const head = latin(bytes.subarray(0, 4096));
  if (head.startsWith("\x89PNG\r\n\x1a\n") || head.startsWith("\xff\xd8\xff")) return "image";
  if (head.slice(0, 1024).includes("%PDF-")) return "pdf";
  if (head.startsWith("\x1f\x8b") || head.startsWith("PK\x03\x04")) return unreadable("packed");
  // The reference's sentinel of binary drawings.
  if (/^[\w ]{1,20} Binary DXF\r\n/u.test(head)) return unreadable("binary-dxf");
  const text = head
    .replaceAll("\0", "")
    .replace(/^(?:\xef\xbb\xbf|\xff\xfe|\xfe\xff)/u, "")
    .trimStart();
  if (text.startsWith("<")) return "svg";
  if (/^(?:999\r?\n.*\r?\n\s*)*0\r?\n\s*(?:SECTION|EOF)/u.test(text)) return "dxf";
  return unreadable("unknown-kind");
}

function latin(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return text;
}

/** Text of a file in UTF-8 or UTF-16, by its byte order mark, else UTF-8, else one byte a letter as old programs write. */
export function textOfFile(bytes: Uint8Array): string {
  const mark = (bytes[0] ?? 0) * 256 + (bytes[1] ?? 0);
  if (mark === 0xfffe) return new TextDecoder("utf-16le").decode(bytes);
  if (mark === 0xfeff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
