import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { matsOfAll } from "../../../src/core/job/matsOf.ts";
import { jobOf } from "../../../src/core/job/projectJob.ts";
import { chooseEngines } from "../../../src/core/lay/engines/chooseEngines.ts";
import { arrange } from "../../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../../src/core/lay/search/breath.ts";
import { readProject } from "../../../src/core/project/file/readProject.ts";
import type { PlanFile } from "../../../src/export/planFile.ts";
import { planFiles } from "../../../src/export/planFiles.ts";
import { type PagePicture, PDF_DRAWERS } from "../../tools/pdfReaders.ts";
import { freshFolder } from "../../tools/programs.ts";

// The cloth's pattern on paper, seen in the pixels of programs that we did not write: poppler and PDFium.

const font = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = { regular: font("DejaVuSansCondensed"), bold: font("DejaVuSansCondensed-Bold"), fallbacks: [] };

const DPI = 100;
const REPEAT = 60;
const FIRST = 25;
/** Cut off a roll to square its end, mm. */
const SQUARED = 20;
/** A stripe is drawn 0.3 of the repeat wide about its line. */
const HALF_STRIPE = 0.15 * REPEAT;

async function filesOf(isMatched: boolean): Promise<readonly PlanFile[]> {
  const panel = (id: string, along: number, across: number) => ({
    ...{ id, name: id, material: "c", count: 1, seamAllowance: 10 },
    shape: { kind: "rounded", along, across, radius: 30 },
  });
  const file = {
    ...{ laywright: 1, name: "Stripes", gap: 2, margin: 4 },
    panels: [panel("front", 300, 200), panel("flap", 260, 120)],
    materials: [
      {
        ...{ id: "c", name: "Deck stripe", kind: "woven", thickness: 0.6, grain: "lengthwise" },
        repeat: { along: REPEAT, firstAlong: FIRST + SQUARED, symmetric: true, tolerance: 0.5 },
        stock: [{ kind: "roll", id: "r", width: 700 }],
      },
    ],
    ...(isMatched ? { centred: [{ part: "front", on: "line" }] } : {}),
    output: { rollWidth: 800, machine: { bedWidth: 400, bedHeight: 400, grip: 6, tool: "knife" } },
  };
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { project, pieces, straps, lays } = jobOf(read.value);
  const laid = lays.map((cloth) => ({
    ...cloth,
    plan: inOneGo(arrange(cloth.problem, (one) => chooseEngines(one, "free"), { evaluations: 20_000 }, 1)),
  }));
  const mats = matsOfAll(laid, project.output.machine);
  const { files } = await planFiles({ project, pieces, straps, lays: laid, mats, fonts });
  return files;
}

const fileNamed = (files: readonly PlanFile[], name: string): PlanFile["data"] =>
  files.find((file) => file.name === name)!.data;

function saved(data: PlanFile["data"]): string {
  const path = join(freshFolder(), "page.pdf");
  writeFileSync(path, data);
  return path;
}

/** The light blue of the pattern, as grey. */
const isPattern = (grey: number): boolean => grey > 208 && grey < 226;

function share({ data }: PagePicture): number {
  let found = 0;
  for (const grey of data) if (isPattern(grey)) found++;
  return found / data.length;
}

test.each(PDF_DRAWERS)(
  "stripes lie on the long sheet where the cloth has them, in the pixels of $name",
  async (drawer) => {
    const long = saved(fileNamed(await filesOf(true), "deck-stripe-one-sheet.pdf"));
    const picture = await drawer.draw(long, 1, DPI);
    // Along a line 20 mm below the cloth's upper edge, where no piece lies; the cloth begins 10 mm from the left of the
    // sheet of 800 mm and 22 mm from its lower edge.
    const row = Math.round((800 - 22 - 700 + 20) * picture.perMm.y);
    const edges: number[] = [];
    let before = false;
    for (let x = 0; x < picture.width; x++) {
      const now = isPattern(picture.data[row * picture.width + x]!);
      if (now !== before) edges.push(x / picture.perMm.x - 10);
      before = now;
    }
    expect(edges.length).toBeGreaterThan(6);
    const pixel = 25.4 / DPI;
    for (const [i, at] of edges.slice(0, -2).entries()) {
      const line = FIRST + REPEAT * Math.floor(i / 2);
      expect(Math.abs(at - (line + (i % 2 === 0 ? -HALF_STRIPE : HALF_STRIPE)))).toBeLessThan(1.5 * pixel);
    }
  },
);

test("the pattern is on the sheets to tape and in SVG, on no projector, in no drawing for a machine, and only where matched", async () => {
  const poppler = PDF_DRAWERS[0]!;
  const [matched, plain] = [await filesOf(true), await filesOf(false)];
  const sheet = async (files: readonly PlanFile[], name: string, page: number): Promise<number> =>
    share(await poppler.draw(saved(fileNamed(files, name)), page, 40));
  for (const name of ["deck-stripe-one-sheet.pdf", "deck-stripe-a4.pdf"]) {
    expect(await sheet(matched, name, name.includes("a4") ? 2 : 1)).toBeGreaterThan(0.1);
    expect(await sheet(plain, name, name.includes("a4") ? 2 : 1)).toBeLessThan(0.02);
  }
  // On the cut sheet the lay is a small picture.
  const [picture, none] = [await sheet(matched, "cut-sheet.pdf", 1), await sheet(plain, "cut-sheet.pdf", 1)];
  expect(picture).toBeGreaterThan(none + 0.01);
  expect(await sheet(matched, "deck-stripe-projector.pdf", 1)).toBeLessThan(0.02);
  expect(fileNamed(matched, "deck-stripe.svg")).toContain('<g id="pattern"');
  expect(fileNamed(plain, "deck-stripe.svg")).not.toContain('<g id="pattern"');
  expect(fileNamed(matched, "deck-stripe-mat-1.svg")).not.toContain('id="pattern"');
  expect(fileNamed(matched, "deck-stripe.dxf")).not.toMatch(/pattern/iu);
});
