// `npm run bench:export`: how long the files of a large plan take, how large they are, and what memory they need.
// 500 pieces on 10.3 m of a roll; goals: SVG under 100 ms, 120 sheets as PDF under 2 s and 2 MB, memory under 300 MB.
import { layDrawing } from "../../src/core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../src/core/drawing/lay/pieceArt.ts";
import { singleCuts } from "../../src/core/drawing/machine/singleCuts.ts";
import { mapPages } from "../../src/core/drawing/sheets/mapPage.ts";
import { tilePages } from "../../src/core/drawing/sheets/tilePages.ts";
import { tilePieces } from "../../src/core/drawing/sheets/tiling.ts";
import { rectangleContour, segmentContour } from "../../src/core/geometry/contourShapes.ts";
import type { LayPlan, StockPlacement } from "../../src/core/lay/problem/layProblem.ts";
import { paperNamed } from "../../src/core/project/papers.ts";
import { dxfText } from "../../src/export/dxf/dxfText.ts";
import { pagesPdf } from "../../src/export/pdf/pagesPdf.ts";
import { svgText } from "../../src/export/svg/svgText.ts";
import { FONTS, roundedContour, samplePiece } from "../tools/samplePlan.ts";

const LENGTH = 10_300;
const ACROSS = 10;
const ALONG = 50;

/** 500 pieces of five kinds in ten rows across 520 mm of cloth 10.3 m long. */
function largePlan() {
  const folds = [12, 24, 36].map((y) => ({ role: "fold" as const, contour: segmentContour(0, y, 190, y) }));
  const pieces = [
    samplePiece("strip", rectangleContour(0, 0, 190, 48), {
      name: "Strap strip",
      kind: "strip",
      lines: folds,
      count: 100,
    }),
    samplePiece("pocket", roundedContour(180, 48, 20), { name: "Pocket", count: 100 }),
    samplePiece("tab", roundedContour(100, 46, 10), { name: "Tab", count: 100 }),
    samplePiece("base", roundedContour(195, 48, 24), { name: "Base", count: 100 }),
    samplePiece("label", rectangleContour(0, 0, 60, 40), { name: "Label patch", count: 100 }),
  ];
  const placements: StockPlacement[] = [];
  for (let i = 0; i < ACROSS * ALONG; i++) {
    const piece = pieces[i % pieces.length]!;
    const x = (i % ALONG) * (LENGTH / ALONG);
    const y = Math.floor(i / ALONG) * 52;
    const copy = Math.floor(i / pieces.length);
    placements.push({ pieceId: piece.id, copy, x, y, turnDeg: 0, mirrored: false, stockId: "roll" });
  }
  const plan: LayPlan = {
    materialId: "canvas",
    placements,
    unplaced: [],
    uses: [{ stockId: "roll", usedLength: LENGTH, bound: null }],
    evaluations: 0,
    seed: 1,
  };
  return { pieces, plan };
}

async function timed<T>(
  name: string,
  work: () => T | Promise<T>,
  size: (made: T) => number,
  repeats: number,
): Promise<T> {
  const times: number[] = [];
  let made: T | undefined;
  for (let i = 0; i < repeats; i++) {
    // Processor time: what other programs on the machine take is not counted.
    const start = process.cpuUsage();
    made = await work();
    const { user, system } = process.cpuUsage(start);
    times.push((user + system) / 1000);
  }
  const sorted = times.toSorted((a, b) => a - b);
  const words = [
    name.padEnd(28),
    `first ${times[0]!.toFixed(0).padStart(5)} ms`,
    `median ${sorted[repeats >> 1]!.toFixed(0).padStart(5)} ms`,
    `${(size(made!) / 1024).toFixed(0).padStart(5)} KiB`,
  ];
  console.log(words.join("   "));
  return made!;
}

const { pieces, plan } = largePlan();
const stock = { kind: "roll" as const, id: "roll", width: 520, length: null, flaws: [] };
const art = pieceArt(pieces, "cm");
const sheet = await timed(
  "drawing, 500 pieces",
  () => layDrawing(stock, plan, art, "both"),
  () => 0,
  5,
);
await timed(
  "SVG",
  () => svgText(singleCuts(sheet.drawing), { title: "bench" }),
  (text) => text.length,
  5,
);
await timed(
  "DXF",
  () => dxfText(singleCuts(sheet.drawing)),
  (text) => text.length,
  5,
);
const options = {
  paper: paperNamed("A4")!,
  margin: 15,
  overlap: 12,
  orientation: "fewest" as const,
  correction: { x: 1, y: 1 },
};
const title = { project: "Bench", material: "Canvas", stock: "", language: "en" as const };
const pdf = await timed(
  "tiled PDF, map and all",
  () => {
    const tiling = tilePieces(sheet.copies, options);
    const pages = [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, "both")];
    return pagesPdf(pages, FONTS, { title: "Bench" }).then(({ bytes }) => ({ bytes, sheets: tiling.tiles.length }));
  },
  ({ bytes }) => bytes.length,
  5,
);
console.log(`sheets in the PDF             ${pdf.sheets}`);
console.log(`largest memory of the process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB`);
