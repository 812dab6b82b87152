import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import type { PatternDrawing } from "../../src/core/patterns/patternDrawing.ts";
import { understandPattern } from "../../src/core/patterns/understandPattern.ts";
import { readPdf } from "../../src/reading/pdf/readPdf.ts";
import { readSvg } from "../../src/reading/svg/readSvg.ts";
import { ifInstalled } from "../tools/systemPrograms.ts";

const folder = mkdtempSync(join(tmpdir(), "programs-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string): string => join(folder, name);

/** Sizes and areas by closed formulas: a turned rectangle, a circle, a rounded rectangle, a leaning ellipse. */
const SOURCE = `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200" fill="none" stroke="#000" stroke-width="0.3">
  <rect width="80" height="40" transform="translate(20 30) rotate(90 20 20)"/><circle cx="200" cy="60" r="35"/>
  <rect x="30" y="120" width="100" height="60" rx="12"/><g transform="translate(220 150) skewX(20)"><ellipse rx="40" ry="20"/></g></svg>`;
const AREAS = [80 * 40, Math.PI * 35 ** 2, 100 * 60 - (4 - Math.PI) * 144, Math.PI * 40 * 20];
const WIDTHS = [40, 70, 100, 2 * Math.hypot(40, 20 * Math.tan((20 * Math.PI) / 180))];

writeFileSync(path("source.svg"), SOURCE);

function inkscape(program: string, name: string): void {
  const plain = name.endsWith(".svg") ? ["--export-plain-svg"] : [];
  execFileSync(program, [path("source.svg"), ...plain, `--export-filename=${path(name)}`], { stdio: "ignore" });
}

function librsvg(program: string, name: string): void {
  execFileSync(program, ["-f", name.slice(-3), "-o", path(name), path("source.svg")]);
}

/** Poppler writes what it has from a PDF: that of librsvg. */
function pdftocairo(program: string, name: string): void {
  for (const rsvg of ifInstalled("rsvg-convert")) librsvg(rsvg, "for-poppler.pdf");
  // Else it shrinks every page a little onto a paper of whole points.
  execFileSync(program, [
    "-noshrink",
    name.endsWith(".svg") ? "-svg" : "-pdf",
    path("for-poppler.pdf"),
    path(name),
  ]);
}

async function read(name: string): Promise<PatternDrawing> {
  const bytes = new Uint8Array(readFileSync(path(name)));
  return name.endsWith("pdf") ? readPdf(bytes, {}) : readSvg(new TextDecoder().decode(bytes));
}

const WRITERS = { inkscape, "rsvg-convert": librsvg, pdftocairo };
const cases = Object.entries(WRITERS).flatMap(([program, write]) =>
  ifInstalled(program).flatMap((found) =>
    ["svg", "pdf"].map((ending) => [`${program}.${ending}`, found, write] as const),
  ),
);

test.each(cases)("%s comes in true", async (name, program, write) => {
  write(program, name);
  await expectTrue(name);
});

test("the drawing that they were given comes in true", () => expectTrue("source.svg"));

async function expectTrue(name: string): Promise<void> {
  const drawing = await read(name);
  const { outlines } = understandPattern(drawing, { tolerance: 0.02, mend: new Set(), roles: new Map() });
  expect(outlines.map(({ closed }) => closed)).toEqual([true, true, true, true]);
  for (const [i, { areaMm2, box }] of outlines.entries()) {
    // Circles are Béziers in these files: 0.03 % of their radius.
    expect(Math.abs(areaMm2 / AREAS[i]! - 1), `area ${i}`).toBeLessThan(5e-4);
    expect(Math.abs(box.maxX - box.minX - WIDTHS[i]!), `width ${i}`).toBeLessThan(0.05);
  }
}
