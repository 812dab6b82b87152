// The DXF read back by a reader we did not write (dxf-parser).
import DxfParser, { type IEntity, type IPolylineEntity, type ITextEntity } from "dxf-parser";
import { expect, test } from "vitest";
import type { DrawnLine } from "../../../src/core/drawing/list/drawing.ts";
import { dxfText } from "../../../src/export/dxf/dxfText.ts";
import { openFaces } from "../../../src/export/fonts/faces.ts";
import { letterRings, textOutlines } from "../../../src/export/fonts/textOutlines.ts";
import { FONTS, PIECES, samplePiece, sampleSheet } from "../../tools/samplePlan.ts";

const sheet = sampleSheet();
const lines = sheet.drawing.items.filter((item): item is DrawnLine => item.kind === "line");

function read(text: string) {
  const file = new DxfParser().parseSync(text);
  if (!file) throw new Error("dxf-parser read nothing");
  return file;
}
const polylines = (entities: readonly IEntity[]) =>
  entities.filter((entity): entity is IPolylineEntity => entity.type === "POLYLINE");

test("units are millimetres and every role has its layer", () => {
  const file = read(dxfText(sheet.drawing));
  expect(file.header["$INSUNITS"]).toBe(4);
  expect(Object.keys(file.tables.layer.layers)).toEqual(expect.arrayContaining(["CUT", "FOLD", "STITCH", "LABEL"]));
});

test("outlines come back within 1 µm, arcs as bulges, closed where closed", () => {
  const found = polylines(read(dxfText(sheet.drawing)).entities);
  expect(found).toHaveLength(lines.length);
  let arcs = 0;
  lines.forEach(({ contour, role }, i) => {
    expect(found[i]!.layer).toBe(role.toUpperCase());
    expect(found[i]!.shape).toBe(contour.closed);
    expect(found[i]!.vertices).toHaveLength(contour.vertices.length / 3);
    found[i]!.vertices.forEach((vertex, k) => {
      const { box } = sheet.drawing;
      expect(Math.abs(vertex.x - (contour.vertices[3 * k]! - box.minX))).toBeLessThan(1e-3);
      expect(Math.abs(vertex.y - (contour.vertices[3 * k + 1]! - box.minY))).toBeLessThan(1e-3);
      expect(Math.abs((vertex.bulge ?? 0) - contour.vertices[3 * k + 2]!)).toBeLessThan(1e-8);
      if (vertex.bulge) arcs++;
    });
  });
  expect(arcs).toBe(8);
});

test("hostile and far names are text of one line and add no entity", () => {
  const names = ["0\r\nSECTION\r\n2\r\nENTITIES", "<script>", "帆布 Ωμέγα", "%%u^J", "a".repeat(200)];
  const count = read(dxfText(sheet.drawing)).entities.length;
  for (const name of names) {
    const pieces = PIECES.map((piece) =>
      piece.id === "body" ? samplePiece("body", piece.contour, { name }) : piece,
    );
    const drawing = sampleSheet(pieces).drawing;
    const text = dxfText(drawing);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what must not be in the file
    expect(text).not.toMatch(/[^\x0d\x0a\x20-\x7e]/u);
    const entities = read(text).entities;
    const texts = entities.filter((entity): entity is ITextEntity => entity.type === "TEXT");
    expect(texts.length).toBe(drawing.items.filter((item) => item.kind === "text").length);
    if (name.length < 200) expect(entities.length).toBe(count);
  }
});

test("roles can be left out: a cutting machine gets cut lines alone", () => {
  const entities = read(dxfText(sheet.drawing, { roles: ["cut"] })).entities;
  expect(new Set(entities.map((entity) => entity.layer))).toEqual(new Set(["CUT"]));
  expect(entities).toHaveLength(lines.filter((line) => line.role === "cut").length);
});

test("the maker's layers and nearest plain colours; letters as closed rings", async () => {
  const faces = await openFaces(FONTS, []);
  const file = read(
    dxfText(sheet.drawing, {
      lines: { cut: { layer: "Blade", color: "#e01010" }, fold: { layer: "pen" }, stitch: { layer: "PEN" } },
      outlineText: (text) => letterRings(textOutlines(text, faces)),
    }),
  );
  const names = Object.keys(file.tables.layer.layers);
  expect(names).toContain("BLADE");
  expect(names.filter((name) => name === "PEN")).toHaveLength(1);
  // The first colour of the classic palette is red.
  expect(file.tables.layer.layers["BLADE"]!.colorIndex).toBe(1);
  expect(file.entities.some((entity) => entity.type === "TEXT")).toBe(false);
  const letters = polylines(file.entities).filter(({ layer }) => layer === "LABEL");
  expect(letters.length).toBeGreaterThan(50);
  expect(letters.every(({ shape }) => shape)).toBe(true);
});
