// `npm run bench:export`: how long the files of a large plan take, how large they are, and what memory they need; then
// whole runs of `lay --out`, each in a process of its own: 1,000 pieces in at most 5 s beyond the lay and 300 MB.
// 500 pieces on 10.3 m of a roll; goals: SVG under 100 ms, 120 sheets as PDF under 2 s and 2 MB, memory under 300 MB.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
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

/** A project of five kinds of straps, or of rounded panels, so many in all. */
function projectOf(pieces: number, kind: "straps" | "panels"): string {
  const kinds = [0, 1, 2, 3, 4];
  const count = pieces / kinds.length;
  const straps = kinds.map((i) => ({
    id: `s${i}`,
    name: `Strap ${i + 1}`,
    construction: "fourfold",
    count,
    width: 20 + 4 * i,
    length: { cut: 600 + 40 * i },
    materials: { outer: "cloth" },
  }));
  const panels = kinds.map((i) => ({
    id: `p${i}`,
    name: `Panel ${i + 1}`,
    material: "cloth",
    count,
    shape: { kind: "rounded", along: 120 + 10 * i, across: 90 + 7 * i, radius: 20 + 3 * i },
    seamAllowance: 10,
  }));
  const stock = [{ kind: "roll", id: "roll", width: 1400 }];
  const materials = [
    { id: "cloth", name: "Canvas", kind: "woven", thickness: 0.6, oneWay: false, facesAlike: true, stock },
  ];
  const wanted = kind === "straps" ? { straps } : { panels };
  return JSON.stringify({
    laywright: 1,
    name: "Many",
    unit: "mm",
    bags: 1,
    gap: 2,
    margin: 3,
    materials,
    ...wanted,
  });
}

/** Says at its end what a run took: seconds of processor time and MiB at most. */
const METER = `data:text/javascript,${encodeURIComponent(
  `process.on("exit", () => { const r = process.resourceUsage(); process.stderr.write("\\nMETER " + (r.userCPUTime + r.systemCPUTime) / 1e6 + " " + r.maxRSS / 1024 + "\\n"); })`,
)}`;

function laid(file: string, more: readonly string[]): readonly [seconds: number, mib: number] {
  const main = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
  const { stderr } = spawnSync(
    process.execPath,
    ["--import", METER, main, "lay", file, "--seconds", "0.2", ...more],
    {
      encoding: "utf8",
    },
  );
  const [, seconds, mib] = /METER (\S+) (\S+)/u.exec(stderr) ?? [];
  return [Number(seconds), Number(mib)];
}

const folder = mkdtempSync(join(tmpdir(), "laywright-bench-"));
for (const [count, kind] of [
  [1000, "straps"],
  [5000, "straps"],
  [1000, "panels"],
] as const) {
  const file = join(folder, "project.json");
  writeFileSync(file, projectOf(count, kind));
  const [alone] = laid(file, []);
  const out = join(folder, "out");
  const [seconds, mib] = laid(file, ["--out", out]);
  const bytes = readdirSync(out).reduce((sum, name) => sum + statSync(join(out, name)).size, 0);
  rmSync(out, { recursive: true });
  console.log(
    `${count} ${kind}, all files`.padEnd(30),
    `lay ${alone.toFixed(1)} s, files ${(seconds - alone).toFixed(1)} s, ${mib.toFixed(0)} MiB, ${(bytes / 2 ** 20).toFixed(0)} MiB written`,
  );
}
rmSync(folder, { recursive: true });
