// Names of every kind, read out of the PDF again by PDFium and looked for in its fonts by qpdf.
import { expect, test } from "vitest";
import { mapPages } from "../../../src/core/drawing/sheets/mapPage.ts";
import { tilePages } from "../../../src/core/drawing/sheets/tilePages.ts";
import { tilePieces } from "../../../src/core/drawing/sheets/tiling.ts";
import { paperNamed } from "../../../src/core/project/papers.ts";
import { pagesPdf } from "../../../src/export/pdf/pagesPdf.ts";
import { type PdfDictionary, pdfObjects, pdfWords } from "../../tools/pdfReaders.ts";
import { passingFile } from "../../tools/programs.ts";
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
  return { path, missingGlyphs, text: await pdfWords(path) };
}

/** Composite fonts and the descriptions of fonts in a file. */
async function fontsOf(path: string): Promise<{ composite: PdfDictionary[]; described: PdfDictionary[] }> {
  const objects = await pdfObjects(path);
  return {
    composite: objects.filter((object) => object["/Subtype"] === "/Type0"),
    described: objects.filter((object) => object["/Type"] === "/FontDescriptor"),
  };
}

test("Latin, Greek, Cyrillic, kana, kanji, Hangul and signs print and can be read out again", async () => {
  for (const name of ["Körper Łódź", "Θήκη", "Сумка", "カバン 本体", "손잡이", "帆布 → ½ №"]) {
    const { text, missingGlyphs, path } = await fileWith(name);
    expect(missingGlyphs, name).toEqual([]);
    for (const word of name.split(" ")) expect(text).toContain(word);
    const { composite, described } = await fontsOf(path);
    expect(composite.length).toBeGreaterThanOrEqual(2);
    expect(described.length).toBe(composite.length);
    // ISO 32000-1, 9.9: embedded font programs; 9.6.4: a subset's name begins with six letters; 9.10.3: back to Unicode.
    for (const font of described) expect(font["/FontFile2"] ?? font["/FontFile3"]).toMatch(/^\d+ 0 R$/u);
    for (const font of composite) {
      expect(font["/BaseFont"]).toMatch(/^\/[A-Z]{6}\+/u);
      expect(font["/ToUnicode"]).toMatch(/^\d+ 0 R$/u);
    }
  }
});

test("emoji print in one ink, joined ones as one picture, and can be read out again", async () => {
  // Bag, thread, ring; a sewing person joined of two signs (Unicode 16, emoji-zwj-sequences).
  const { text, missingGlyphs, path } = await fileWith("Tote 👜🧵💍 👩‍🔧");
  expect(missingGlyphs).toEqual([]);
  for (const sign of ["👜", "🧵", "💍", "👩"]) expect(text).toContain(sign);
  const { composite } = await fontsOf(path);
  expect(composite.map((font) => font["/BaseFont"]).join()).toContain("NotoEmoji");
});

test("hostile names are text and nothing else", async () => {
  for (const name of ["<script>alert(1)</script>", "../../x", ") Tj ET Q (", "=1+2", "/JavaScript (x)"]) {
    const { text, path } = await fileWith(name);
    expect(text).toContain(name);
    // Strings are written apart from names of dictionaries, so only a real action has the name.
    for (const object of await pdfObjects(path))
      for (const key of ["/JS", "/JavaScript", "/OpenAction", "/AA"])
        expect(Object.keys(object)).not.toContain(key);
  }
  const { path } = await fileWith("\u0000\u0007\u202ename\nline");
  expect((await pdfObjects(path)).length).toBeGreaterThan(10);
  const long = await fileWith("n".repeat(200));
  expect(long.text).toContain("n".repeat(20));
});

test("a character that no font has is told and stands there as its number", async () => {
  const { text, missingGlyphs } = await fileWith("布", { ...FONTS, fallbacks: [] });
  expect(missingGlyphs).toEqual(["U+5E03"]);
  expect(text).toContain("[U+5E03]");
});
