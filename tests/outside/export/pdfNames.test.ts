// Names of every kind, read out of the PDF again by poppler (pdftotext) and looked for in its fonts (pdffonts).
import { expect, test } from "vitest";
import { mapPages } from "../../../src/core/drawing/sheets/mapPage.ts";
import { tilePages } from "../../../src/core/drawing/sheets/tilePages.ts";
import { tilePieces } from "../../../src/core/drawing/sheets/tiling.ts";
import { paperNamed } from "../../../src/core/project/papers.ts";
import { pagesPdf } from "../../../src/export/pdf/pagesPdf.ts";
import { passingFile, run } from "../../tools/programs.ts";
import { FONTS, PIECES, samplePiece, sampleSheet } from "../../tools/samplePlan.ts";

async function fileWith(name: string, fonts = FONTS) {
  const pieces = PIECES.map((piece) =>
    piece.id === "body" ? samplePiece("body", piece.contour, { name }) : piece,
  );
  const sheet = sampleSheet(pieces);
  const tiling = tilePieces(sheet.copies, {
    paper: paperNamed("A2")!,
    margin: 10,
    overlap: 10,
    orientation: "fewest",
    correction: { x: 1, y: 1 },
  });
  const title = { project: name, material: name, stock: "", language: "en" as const };
  const pages = [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, "both")];
  const { bytes, missingGlyphs } = await pagesPdf(pages, fonts, { title: name });
  const path = passingFile("names.pdf", bytes);
  return { path, missingGlyphs, text: run("pdftotext", ["-raw", path, "-"]) };
}

test("Latin, Greek, Cyrillic, kana, kanji, Hangul and signs print and can be read out again", async () => {
  for (const name of ["Körper Łódź", "Θήκη", "Сумка", "カバン 本体", "손잡이", "帆布 → ½ №"]) {
    const { text, missingGlyphs, path } = await fileWith(name);
    expect(missingGlyphs, name).toEqual([]);
    for (const word of name.split(" ")) expect(text).toContain(word);
    const fonts = run("pdffonts", [path]).trim().split("\n").slice(2);
    // Every font is embedded (emb), a subset (sub), with a map back to Unicode (uni).
    for (const font of fonts) expect(font).toMatch(/yes\s+yes\s+yes/u);
  }
});

test("emoji print in one ink, joined ones as one picture, and can be read out again", async () => {
  // Bag, thread, ring; a sewing person joined of two signs (Unicode 16, emoji-zwj-sequences).
  const { text, missingGlyphs, path } = await fileWith("Tote 👜🧵💍 👩‍🔧");
  expect(missingGlyphs).toEqual([]);
  for (const sign of ["👜", "🧵", "💍", "👩"]) expect(text).toContain(sign);
  expect(run("pdffonts", [path])).toContain("NotoEmoji");
});

test("hostile names are text and nothing else", async () => {
  for (const name of ["<script>alert(1)</script>", "../../x", ") Tj ET Q (", "=1+2", "/JavaScript (x)"]) {
    const { text, path } = await fileWith(name);
    expect(text).toContain(name);
    expect(run("qpdf", ["--check", path])).toContain("No syntax or stream");
    expect(run("pdfinfo", [path])).toMatch(/JavaScript:\s+no/u);
  }
  const { path } = await fileWith("\u0000\u0007\u202ename\nline");
  expect(run("qpdf", ["--check", path])).toContain("No syntax or stream");
  const long = await fileWith("n".repeat(200));
  expect(long.text).toContain("n".repeat(20));
});

test("a character that no font has is told and stands there as its number", async () => {
  const { text, missingGlyphs } = await fileWith("布", { ...FONTS, fallbacks: [] });
  expect(missingGlyphs).toEqual(["U+5E03"]);
  expect(text).toContain("[U+5E03]");
});
