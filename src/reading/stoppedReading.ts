import type { PatternKind } from "../core/patterns/patternDrawing.ts";
import type { UnderstoodPattern } from "../core/patterns/patternOutline.ts";
import type { PatternLimit } from "../core/problems/patternProblems.ts";
import { kindOfFile } from "./kindOfFile.ts";

/** What a worker sends back. */
export type ReadingReply =
  | { readonly ok: true; readonly pattern: UnderstoodPattern }
  | { readonly ok: false; readonly stack: string };

/** A larger file is not looked at. */
export const MOST_MEGABYTES = 64;

/** Reading may take so much memory before it is stopped; a pattern takes a small part of it. */
export const MOST_MEMORY_MB = 1024;

/** How long reading may take, s: lines come in at once; pages and pictures take a while. */
export const READING_SECONDS: Readonly<Record<PatternKind, number>> = { svg: 1.7, dxf: 1.7, pdf: 10, image: 20 };

/** A pattern whose reading was stopped at a limit. */
export function stoppedReading(kind: PatternKind, of: PatternLimit, limit: number): UnderstoodPattern {
  return { kind, outlines: [], marks: [], problems: [{ code: "pattern-too-much", path: "", of, limit }] };
}

/** The kind of a file for what has to be known before it is read; a file of no known kind is told so soon enough. */
export function kindBefore(bytes: Uint8Array): PatternKind {
  try {
    return kindOfFile(bytes);
  } catch {
    return "svg";
  }
}
