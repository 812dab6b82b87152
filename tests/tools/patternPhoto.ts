// Makes fixtures/paper-pattern.jpg: the paper pattern of a flap, cut from light card, and our photo sheet beside it on a
// dark table, seen aslant. `npx tsx tests/tools/patternPhoto.ts` needs poppler and ImageMagick; the data is made up.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument, rgb } from "pdf-lib";
import { flattenContour, poseContour } from "../../src/core/geometry/contourArcs.ts";
import { PAPERS } from "../../src/core/project/papers.ts";
import { photoSheetPdf } from "../../src/export/pdf/photoSheetPdf.ts";

/** The flap, mm: 240 wide, 180 high, lower corners rounded by 60, the upper edge straight. */
const PAPER_FLAP = {
  vertices: Float64Array.of(
    60,
    0,
    0,
    180,
    0,
    Math.tan(Math.PI / 8),
    240,
    60,
    0,
    240,
    180,
    0,
    0,
    180,
    0,
    0,
    60,
    Math.tan(Math.PI / 8),
  ),
  closed: true,
} as const;

const DOTS = 4;
const MM = 72 / 25.4;
const [WIDTH, HEIGHT] = [560 * DOTS, 350 * DOTS];

async function make(out: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "pattern-photo-"));
  const path = (name: string): string => join(folder, name);
  try {
    writeFileSync(path("sheet.pdf"), await photoSheetPdf(PAPERS.find(({ id }) => id === "A4")!, "en"));
    execFileSync("pdftoppm", ["-r", String(25.4 * DOTS), "-png", "-singlefile", path("sheet.pdf"), path("sheet")]);
    const doc = await PDFDocument.create({ updateMetadata: false });
    const page = doc.addPage([(WIDTH / DOTS) * MM, (HEIGHT / DOTS) * MM]);
    page.drawRectangle({
      x: 0,
      y: 0,
      width: page.getWidth(),
      height: page.getHeight(),
      color: rgb(0.23, 0.21, 0.18),
    });
    const points = flattenContour(poseContour(PAPER_FLAP, { mirrored: false, turnDeg: 0, x: 280, y: 90 }), 0.02);
    // The path counts down from the page's origin.
    const steps = Array.from(points, (mm, i) => (i % 2 === 0 ? `${i === 0 ? "M" : "L"}${mm * MM}` : `${-mm * MM}`));
    page.drawSvgPath(`${steps.join(" ")}Z`, { x: 0, y: 0, color: rgb(0.91, 0.89, 0.82) });
    writeFileSync(path("table.pdf"), await doc.save());
    execFileSync("pdftoppm", ["-r", String(25.4 * DOTS), "-png", "-singlefile", path("table.pdf"), path("table")]);
    const seen = `0,0 120,70 ${WIDTH},0 2130,40 ${WIDTH},${HEIGHT} 2220,1370 0,${HEIGHT} 30,1330`;
    execFileSync("convert", [
      ...[path("table.png"), path("sheet.png"), "-geometry", `+${25 * DOTS}+${25 * DOTS}`, "-composite"],
      ...["-virtual-pixel", "edge", "-distort", "Perspective", seen, "-blur", "0x0.7", "-colorspace", "Gray"],
      ...["-strip", "-quality", "82", out],
    ]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await make("fixtures/paper-pattern.jpg");
