import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { drawLine } from "../../core/drawing/list/items.ts";
import { tilePages } from "../../core/drawing/sheets/tilePages.ts";
import { tilePieces } from "../../core/drawing/sheets/tiling.ts";
import type { Contour } from "../../core/geometry/contour.ts";
import { flattenContour, poseContour } from "../../core/geometry/contourArcs.ts";
import { solid } from "../../core/geometry/ring.ts";
import { distanceToRing } from "../../core/patterns/nesting.ts";
import { understandPattern } from "../../core/patterns/understandPattern.ts";
import { pagesPdf } from "../../export/pdf/pagesPdf.ts";
import { readPdf } from "./readPdf.ts";

const font = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = { regular: font("DejaVuSansCondensed"), bold: font("DejaVuSansCondensed-Bold"), fallbacks: [] };

/** A wrap body that needs many sheets: straight sides, a round flap and a bowed edge. */
const BODY: Contour = {
  vertices: Float64Array.of(5, 5, 0, 605, 5, 0, 605, 305, 0.6, 305, 405, -0.1, 5, 305, 0),
  closed: true,
};
const SEAM: Contour = { vertices: Float64Array.of(40, 40, 0, 500, 40, 0, 500, 280, 0, 40, 280, 0), closed: true };

async function tiled(overlap: number): Promise<Uint8Array> {
  const drawing = {
    box: { minX: 0, minY: 0, maxX: 700, maxY: 560 },
    items: [drawLine("cut", BODY), drawLine("stitch", SEAM)],
  };
  const outline = solid(flattenContour(BODY));
  const tiling = tilePieces([{ name: "Body", outline }], {
    paper: { width: 210, height: 297 },
    margin: 10,
    overlap,
    orientation: "portrait",
    correction: { x: 1, y: 1 },
  });
  expect(tiling.tiles.length).toBeGreaterThan(5);
  const sheet = { stockId: "roll", drawing, copies: [], usedLength: 700 };
  const title = { project: "Bag", material: "Canvas", stock: "roll", language: "en" } as const;
  const pages = tilePages(sheet, tiling, title, "both");
  return (await pagesPdf(pages, fonts, { title: "Bag" })).bytes;
}

test.each([10, 5])(
  "our own tiled PDF comes back within 0.05 mm, sheets over each other by %i mm",
  async (overlap) => {
    const drawing = await readPdf(await tiled(overlap), {});
    const { outlines, problems } = understandPattern(drawing, {
      tolerance: 0.02,
      mend: new Set(),
      roles: new Map(),
    });
    expect(problems).toEqual([]);
    expect(outlines.map(({ role, closed }) => [role, closed])).toEqual([
      ["cut", true],
      ["stitch", true],
    ]);
    for (const [i, contour] of [BODY, SEAM].entries()) {
      const back = outlines[i]!;
      const box = flattenContour(contour, 1e-4);
      // The first sheet's corner is where the sheets begin; only the place on paper is not kept.
      const [x, y] = [0, 1].map((k) => {
        const least = (points: Float64Array): number => Math.min(...points.filter((_, j) => j % 2 === k));
        return least(box) - least(flattenContour(back.contour, 1e-4));
      });
      const moved = flattenContour(poseContour(back.contour, { x: x!, y: y!, turnDeg: 0, mirrored: false }), 1e-3);
      for (let j = 0; j < moved.length; j += 2)
        expect(distanceToRing(box, moved[j]!, moved[j + 1]!)).toBeLessThan(0.05);
      for (let j = 0; j < box.length; j += 20)
        expect(distanceToRing(moved, box[j]!, box[j + 1]!)).toBeLessThan(0.05);
    }
  },
);
