import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { rectangleContour, segmentContour } from "../../core/geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../core/geometry/ring.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Material } from "../../core/materials/material.ts";
import { cutSheetOf, labelSize, sheetInches } from "./cutSheet.ts";
import { cutSheetCsv } from "./cutSheetCsv.ts";
import { cutSheetText } from "./cutSheetText.ts";

const piece = (id: string, materialId: string, more: Partial<CutPiece> = {}): CutPiece => ({
  id,
  name: id,
  partId: id,
  materialId,
  kind: "panel",
  contour: rectangleContour(0, 0, 254, 101.6),
  outline: solid(rectangleRing(0, 0, 254, 101.6)),
  lines: [],
  count: 2,
  mirroredCount: 0,
  grain: "lengthwise",
  ...more,
});

// By hand: 9 13/16 in are 249.24 mm, 0.76 mm short of 250; 14 3/16 in are 360.36 mm, 0.36 mm over 360.
test("inches to the sixteenth are marked only where they are further off than a cut is", () => {
  expect(sheetInches(250)).toBe("≈9 13/16 in");
  expect(sheetInches(360)).toBe("14 3/16 in");
  expect(sheetInches(254)).toBe("10 in");
});

test("rows are grouped by material, numbered through, with fold lines in words", () => {
  const lines = [25.4, 50.8, 76.2].map((y) => ({ role: "fold" as const, contour: segmentContour(0, y, 254, y) }));
  const input = {
    project: "Quay satchel",
    bags: 2,
    materials: [sampleMaterial("a"), sampleMaterial("b"), sampleMaterial("unused")],
    pieces: [piece("Flap", "b"), piece("Strap", "a", { kind: "strip", lines })],
  };
  const sheet = cutSheetOf({ ...input, inInches: true });
  expect(sheet.groups.map((group) => [group.material, group.rows.map((row) => [row.number, row.name])])).toEqual([
    ["Cloth a", [[1, "Strap"]]],
    ["Cloth b", [[2, "Flap"]]],
  ]);
  expect(sheet.groups[0]!.rows[0]!.notes).toEqual(["Fold at 25.4, 50.8, 76.2 mm (1, 2, 3 in) from a long edge"]);
  const text = cutSheetText(sheet);
  expect(text).toContain("254 mm × 101.6 mm  10 in × 4 in");
  expect(text).toContain("Straps are not load rated");
  expect(labelSize(101.6, sheet)).toBe("101.6 mm · 4 in");
  expect(labelSize(101.6, { ...sheet, language: "de" })).toBe("101,6 mm · 4 in");
  // Not a word of inches where nobody asked for them.
  const metric = cutSheetOf(input);
  expect(metric.groups[0]!.rows[0]!.notes).toEqual(["Fold at 25.4, 50.8, 76.2 mm from a long edge"]);
  expect(cutSheetText(metric)).toContain("254 mm × 101.6 mm  lengthwise");
  expect(cutSheetText(metric)).not.toMatch(/\d in\b/u);
  expect(labelSize(101.6, metric)).toBe("101.6 mm");
});

test("only lines along a strip are told, those in it, each once, to a hundredth", () => {
  const at = (y0: number, y1 = y0, role: "fold" | "tape" | "stitch" | "mark" = "fold") => ({
    role,
    contour: segmentContour(0, y0, 254, y1),
  });
  const notes = (kind: "strip" | "panel", ...lines: ReturnType<typeof at>[]) =>
    cutSheetOf({
      project: "p",
      bags: 1,
      materials: [sampleMaterial("a")],
      pieces: [piece("S", "a", { kind, lines })],
    }).groups[0]!.rows[0]!.notes;
  expect(notes("strip", at(50.004), at(0.4), at(50), at(10, 10.5), at(0), at(101.6), at(101.2))).toEqual([
    "Fold at 0.4, 50, 101.2 mm from a long edge",
  ]);
  expect(notes("strip", at(9, 9, "stitch"), at(5, 5, "mark"), at(7, 7, "tape"))).toEqual([
    "Tape at 7 mm from a long edge",
    "Stitch at 9 mm from a long edge",
  ]);
  expect(notes("panel", at(50))).toEqual([]);
  expect(labelSize(999.9, { language: "en", inInches: false })).toBe("999.9 mm");
  expect(labelSize(1000, { language: "en", inInches: false })).toBe("100 cm");
});

test("hostile names stay one harmless cell each (RFC 4180)", () => {
  const names = ["=1+2", "+cmd", "-x", "@a", 'say "hi", now', "two\r\nlines", "\u0000\u202ename", "<script>"];
  const sheet = cutSheetOf({
    project: "p",
    bags: 1,
    materials: [sampleMaterial("a")],
    pieces: names.map((name, i) => piece(`p${i}`, "a", { name })),
  });
  // Read by a library that we did not write (npm `csv-parse`), which refuses rows of unequal length.
  const records: string[][] = parse(cutSheetCsv(sheet), { bom: true });
  expect(records).toHaveLength(names.length + 1);
  const second = records.slice(1).map((record) => record[1]);
  expect(second).toEqual(["'=1+2", "'+cmd", "'-x", "'@a", 'say "hi", now', "two lines", "name", "<script>"]);
});

test("vinyl brings the iron and the laser caution, and unknown coating counts as PVC", () => {
  const cautions = (more: Partial<Material>) =>
    cutSheetOf({
      project: "p",
      bags: 1,
      materials: [sampleMaterial("a", more)],
      pieces: [piece("x", "a")],
    }).cautions.join(" ");
  expect(cautions({ kind: "vinyl", coating: "unknown" })).toMatch(/hydrogen chloride/u);
  expect(cautions({ kind: "vinyl", coating: "pu" })).not.toMatch(/hydrogen chloride/u);
  expect(cautions({ kind: "vinyl", coating: "pu" })).toMatch(/iron/u);
  expect(cautions({})).not.toMatch(/iron/u);
});
