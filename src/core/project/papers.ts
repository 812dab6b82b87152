import type { PaperSize } from "./outputSettings.ts";

/** Sheet size in mm, the short side first. */
export interface Paper {
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

const INCH = 25.4;
const inches = (id: string, width: number, height: number): Paper => ({
  id,
  width: width * INCH,
  height: height * INCH,
});

/**
 * Papers known by name.
 * Source: ISO 216:2007 (A0 … A5); ASME Y14.1 (A … E, of which A is Letter and B is Tabloid); Legal is the
 * North American office sheet of 8.5 × 14 in (common practice, no source).
 */
export const PAPERS: readonly Paper[] = [
  { id: "A0", width: 841, height: 1189 },
  { id: "A1", width: 594, height: 841 },
  { id: "A2", width: 420, height: 594 },
  { id: "A3", width: 297, height: 420 },
  { id: "A4", width: 210, height: 297 },
  { id: "A5", width: 148, height: 210 },
  inches("Letter", 8.5, 11),
  inches("Legal", 8.5, 14),
  inches("Tabloid", 11, 17),
  inches("ASME A", 8.5, 11),
  inches("ASME B", 11, 17),
  inches("ASME C", 17, 22),
  inches("ASME D", 22, 34),
  inches("ASME E", 34, 44),
];

/** The paper of that name, any case; undefined when we do not know it. */
export function paperNamed(id: string): Paper | undefined {
  const wanted = id.trim().toLowerCase();
  return PAPERS.find((paper) => paper.id.toLowerCase() === wanted);
}

/** The sheet a project asks for, short side first. RangeError for a name we do not know. */
export function paperOf(choice: string | PaperSize): Paper {
  if (typeof choice === "string") {
    const paper = paperNamed(choice);
    if (!paper) throw new RangeError(`paperOf: a known paper expected, got ${choice}`);
    return paper;
  }
  const width = Math.min(choice.width, choice.height);
  const height = Math.max(choice.width, choice.height);
  return { id: `${sideText(width)} × ${sideText(height)} mm`, width, height };
}

const sideText = (mm: number): string => String(Math.round(mm * 10) / 10);
