import type { PatternDrawing, PatternKind } from "../core/patterns/patternDrawing.ts";
import type { UnderstoodPattern } from "../core/patterns/patternOutline.ts";
import { type UnderstandOptions, understandPattern } from "../core/patterns/understandPattern.ts";
import type { ImageOptions } from "./image/readImage.ts";
import { kindOfFile, textOfFile } from "./kindOfFile.ts";
import type { PdfOptions } from "./pdf/readPdf.ts";
import { ReadingEnds, tooMuch } from "./readingEnds.ts";
import { MOST_MEGABYTES } from "./stoppedReading.ts";

/** A file to read and how to understand it; can be sent to a worker. */
export interface PatternJob {
  readonly bytes: Uint8Array;
  readonly options: UnderstandOptions;
  /** How the pages of a PDF belong together. */
  readonly pdf?: PdfOptions | undefined;
  /** What says how large things in a picture are. */
  readonly image?: ImageOptions | undefined;
}

/**
 * Reads a pattern of any known kind and understands it. What is wrong with the file comes back among the problems;
 * anything thrown is a fault of ours. Each reader is loaded when it is needed.
 */
export async function answerPattern(job: PatternJob): Promise<UnderstoodPattern> {
  const { bytes, options } = job;
  let kind: PatternKind = "svg";
  try {
    if (bytes.length > MOST_MEGABYTES * 1024 * 1024) tooMuch("megabytes", MOST_MEGABYTES);
    kind = kindOfFile(bytes);
    return understandPattern(await readDrawing(kind, job), options);
  } catch (error) {
    if (!(error instanceof ReadingEnds)) throw error;
    return { kind, outlines: [], marks: [], problems: [error.problem] };
  }
}

async function readDrawing(
  kind: PatternKind,
  { bytes, pdf = {}, image = {} }: PatternJob,
): Promise<PatternDrawing> {
  if (kind === "svg") return (await import("./svg/readSvg.ts")).readSvg(textOfFile(bytes));
  if (kind === "dxf") return (await import("./dxf/readDxf.ts")).readDxf(textOfFile(bytes));
  if (kind === "pdf") return (await import("./pdf/readPdf.ts")).readPdf(bytes, pdf);
  return (await import("./image/readImage.ts")).readImage(bytes, image);
}
