import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument, rgb } from "pdf-lib";
import { PNG } from "pngjs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { flattenContour, poseContour } from "../../src/core/geometry/contourArcs.ts";
import { distanceToRing } from "../../src/core/patterns/nesting.ts";
import { understandPattern } from "../../src/core/patterns/understandPattern.ts";
import { readImage } from "../../src/reading/image/readImage.ts";
import { ifInstalled } from "../tools/systemPrograms.ts";

/** A flap: straight sides, a round lower edge and a bowed upper one, on A4. */
const FLAP: Contour = {
  vertices: Float64Array.of(40, 120, 0.5, 170, 120, 0, 170, 220, 0.1, 40, 220, 0),
  closed: true,
};
const folder = mkdtempSync(join(tmpdir(), "photo-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string): string => join(folder, name);

/** The largest outline as it came back, laid over the flap by the corners of the boxes, and how far it is off. */
function worst(found: Contour, home: readonly [number, number]): number {
  const flap = flattenContour(FLAP, 0.01);
  const back = flattenContour(poseContour(found, { x: home[0], y: home[1], turnDeg: 0, mirrored: false }), 0.01);
  let most = 0;
  for (let i = 0; i < back.length; i += 2) most = Math.max(most, distanceToRing(flap, back[i]!, back[i + 1]!));
  for (let i = 0; i < flap.length; i += 2) most = Math.max(most, distanceToRing(back, flap[i]!, flap[i + 1]!));
  return most;
}

const understand = { tolerance: 0.05, mend: new Set<never>(), roles: new Map() };

for (const pdftoppm of ifInstalled("pdftoppm"))
  for (const convert of ifInstalled("convert"))
    describe("a flap on paper", () => {
      /** The flap drawn with a pen of 0.5 mm on a page, rendered by poppler at 150 dots to the inch. */
      beforeAll(async () => {
        const doc = await PDFDocument.create();
        const page = doc.addPage([(210 / 25.4) * 72, (297 / 25.4) * 72]);
        const points = flattenContour(FLAP, 0.002);
        const k = 72 / 25.4;
        let d = "";
        for (let i = 0; i < points.length; i += 2)
          d += `${i === 0 ? "M" : "L"}${points[i]! * k} ${-points[i + 1]! * k}`;
        page.drawSvgPath(`${d}Z`, { x: 0, y: 0, borderColor: rgb(0, 0, 0), borderWidth: 0.5 * k });
        writeFileSync(path("flap.pdf"), await doc.save());
        execFileSync(pdftoppm, ["-r", "150", "-png", "-singlefile", path("flap.pdf"), path("flap")]);
        // A4 at 150 dots is 1240 by 1754: seen from the left and below, on a dark table, by ImageMagick.
        const corners = "0,0 230,160 1240,0 1380,250 1240,1754 1490,1920 0,1754 90,1780";
        execFileSync(convert, [
          ...[path("flap.png"), "-virtual-pixel", "none", "-define", "distort:viewport=1600x2050"],
          ...["-distort", "Perspective", corners, "-background", "#333333", "-flatten", path("photo.png")],
        ]);
        execFileSync(convert, [path("photo.png"), "-quality", "88", path("photo.jpg")]);
      }, 120_000);

      test.each(["photo.png", "photo.jpg"])(
        "%s comes back within 0.5 mm, its sheet found by itself",
        async (name) => {
          const bytes = new Uint8Array(readFileSync(path(name)));
          const drawing = await readImage(bytes, { sheet: { widthMm: 210, heightMm: 297 } });
          const { outlines } = understandPattern(drawing, understand);
          expect(outlines).toHaveLength(1);
          expect(worst(outlines[0]!.contour, [0, 0])).toBeLessThan(0.5);
          // Few edges: two straight sides, and arcs of which each bow needs a few.
          expect(outlines[0]!.contour.vertices.length / 3).toBeLessThan(16);
        },
      );

      test("corners given by hand, as its maker reads them in the picture", async () => {
        const bytes = new Uint8Array(readFileSync(path("photo.png")));
        const corners = [
          [230, 160],
          [1380, 250],
          [1490, 1920],
          [90, 1780],
        ] as const;
        const drawing = await readImage(bytes, { sheet: { widthMm: 210, heightMm: 297 }, corners });
        expect(worst(understandPattern(drawing, understand).outlines[0]!.contour, [0, 0])).toBeLessThan(0.5);
      });

      test("a scan with two points for its scale", async () => {
        const bytes = new Uint8Array(readFileSync(path("flap.png")));
        const drawing = await readImage(bytes, {
          points: [
            [0, 100],
            [1240, 100],
          ],
          apartMm: 210,
        });
        const { outlines } = understandPattern(drawing, understand);
        expect(worst(outlines[0]!.contour, [0, 0])).toBeLessThan(0.5);
      });
    });

test("a picture of which nothing says how large it is, is told so", async () => {
  const white = new PNG({ width: 40, height: 60 });
  white.data.fill(255);
  await expect(readImage(new Uint8Array(PNG.sync.write(white)), {})).rejects.toThrow("pattern-photo-unscaled");
});
