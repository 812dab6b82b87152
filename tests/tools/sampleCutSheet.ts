// A cut sheet with a little of everything, for tests of the pages that are made of it.
import type { Page } from "../../src/core/drawing/list/page.ts";
import { rectangleContour, segmentContour } from "../../src/core/geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import type { CutPiece } from "../../src/core/materials/cutPiece.ts";
import { paperNamed } from "../../src/core/project/papers.ts";
import { type CutSheet, type CutSheetInput, cutSheetOf } from "../../src/export/cutsheet/cutSheet.ts";
import { sampleMaterial } from "./sampleMaterial.ts";
import { linesOf } from "./writtenWords.ts";

export const A4 = paperNamed("A4")!;
/** A rectangle to cut. */
export const sheetPiece = (id: string, along: number, across: number, more: Partial<CutPiece> = {}): CutPiece => ({
  ...{ id, name: id, partId: id, materialId: "a", kind: "panel", lines: [], count: 2, mirroredCount: 0 },
  contour: rectangleContour(0, 0, along, across),
  outline: solid(rectangleRing(0, 0, along, across)),
  grain: "lengthwise",
  ...more,
});
const folds = [25.4, 50.8].map((y) => ({ role: "fold" as const, contour: segmentContour(0, y, 700, y) }));
/** Straps, a gusset, a lining and a pocket of two cloths, with all that a cut sheet can say. */
export const SHEET_INPUT: CutSheetInput = {
  project: "Quay satchel",
  bags: 2,
  materials: [sampleMaterial("a"), sampleMaterial("b")],
  pieces: [
    sheetPiece("Strap", 700, 101.6, { kind: "strip", lines: folds, count: 4 }),
    sheetPiece("Gusset with a name that takes two lines of its column and more than that", 1320, 88.9, {
      mirroredCount: 3,
    }),
    sheetPiece("Lining", 300, 200, { materialId: "b", count: 41, grain: "either" }),
    sheetPiece("Pocket", 300, 200, { materialId: "b", count: 40, grain: "crosswise" }),
  ],
  lay: new Map([["a", ["The pieces take 1420 mm: proven shortest.", "Useful offcuts: 85 mm × 415 mm."]]]),
  purchase: [{ what: "Cloth a", amount: "1.5 m, €18.00" }],
  consumables: [
    { what: "topstitch thread, half of it on the bobbin, as long as all rows together", amount: "24 m" },
  ],
  work: [
    {
      title: "Strap",
      lead: ["Needle 100, thread 60."],
      steps: ["Fold both edges in.", "Topstitch. ".repeat(30).trim()],
    },
    { title: "Nothing to do", lead: ["Not said."], steps: [] },
  ],
  mind: ["Strap: thick at its ends."],
};
export const sheetIn = (language: "en" | "de", inInches: boolean): CutSheet =>
  cutSheetOf({ ...SHEET_INPUT, language, inInches });
/** In both languages, with inches and without. */
export const sheets = () =>
  (["en", "de"] as const).flatMap((language) => [true, false].map((inches) => sheetIn(language, inches)));

/** Corners of a page's lines of a role. */
export const lineNumbers = (page: Page, role: string): number[][] =>
  linesOf(page.parts[0]!.items, role).map((one) => one.split(/,? /u).map(Number));
