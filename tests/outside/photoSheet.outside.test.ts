// Our photo sheet printed by poppler, laid beside a light pattern on a dark table and seen aslant by ImageMagick: what
// comes back is held against the pattern that was drawn. EXIF orientations are held against ImageMagick's own turning.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contourBox } from "../../src/core/geometry/contourArcs.ts";
import { understandPattern } from "../../src/core/patterns/understandPattern.ts";
import { PAPERS } from "../../src/core/project/papers.ts";
import { photoSheetPdf } from "../../src/export/pdf/photoSheetPdf.ts";
import { grayImage } from "../../src/reading/image/grayImage.ts";
import { readImage } from "../../src/reading/image/readImage.ts";
import { ifInstalled } from "../tools/systemPrograms.ts";

const folder = mkdtempSync(join(tmpdir(), "photo-sheet-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string): string => join(folder, name);
const understand = { tolerance: 0.05, mend: new Set<never>(), roles: new Map() };
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(path(name)));

/** Dots of the table to the mm, and the table: 520 mm by 360 mm. */
const DOTS = 4;
const TABLE = `${520 * DOTS}x${360 * DOTS}`;
/** The pattern: a rectangle of 180 mm by 240 mm with its lower right corner cut off by 60 mm. */
const PATTERN = [300, 50, 480, 50, 480, 230, 420, 290, 300, 290].map((mm) => mm * DOTS);

for (const pdftoppm of ifInstalled("pdftoppm"))
  for (const convert of ifInstalled("convert"))
    describe("a pattern beside the photo sheet", () => {
      beforeAll(async () => {
        for (const paper of ["A4", "Letter"]) {
          writeFileSync(path(`${paper}.pdf`), await photoSheetPdf(PAPERS.find(({ id }) => id === paper)!, "en"));
          execFileSync(pdftoppm, [
            "-r",
            String(25.4 * DOTS),
            "-png",
            "-singlefile",
            path(`${paper}.pdf`),
            path(paper),
          ]);
          execFileSync(convert, [
            ...["-size", TABLE, "xc:#333333", path(`${paper}.png`), "-geometry", `+${30 * DOTS}+${30 * DOTS}`],
            ...[
              "-composite",
              "-fill",
              "#eeeeee",
              "-draw",
              `polygon ${PATTERN.join(" ")}`,
              path(`flat-${paper}.png`),
            ],
          ]);
          const [w, h] = [520 * DOTS, 360 * DOTS];
          const corners = `0,0 140,90 ${w},0 1850,30 ${w},${h} 2010,1380 0,${h} 40,1290`;
          execFileSync(convert, [
            ...[path(`flat-${paper}.png`), "-virtual-pixel", "edge", "-distort", "Perspective", corners],
            path(`seen-${paper}.png`),
          ]);
        }
        for (const turn of [90, 180, 270])
          execFileSync(convert, [path("seen-A4.png"), "-rotate", String(turn), path(`turned-${turn}.png`)]);
      }, 120_000);

      /** Sides of the largest outline that came in, mm. */
      async function sides(name: string, more: object = {}) {
        const drawing = await readImage(bytesOf(name), more);
        const { outlines, problems } = understandPattern(drawing, understand);
        const [largest] = [...outlines].sort((a, b) => b.areaMm2 - a.areaMm2);
        const box = contourBox(largest!.contour);
        const error = problems.find(({ code }) => code === "pattern-photo-error");
        const errorMm = error?.code === "pattern-photo-error" ? error.errorMm : Number.NaN;
        return { outlines: outlines.length, w: box.maxX - box.minX, h: box.maxY - box.minY, errorMm };
      }

      test.each(["seen-A4.png", "seen-Letter.png"])(
        "%s: alone, true to half a millimetre, and the error told holds",
        async (name) => {
          const { outlines, w, h, errorMm } = await sides(name);
          expect(outlines).toBe(1);
          expect(Math.abs(w - 180)).toBeLessThan(0.5);
          expect(Math.abs(h - 240)).toBeLessThan(0.5);
          expect(Math.max(Math.abs(w - 180), Math.abs(h - 240))).toBeLessThan(2 * errorMm);
          expect(errorMm).toBeLessThan(1);
        },
      );

      test("the picture turned: the missing ring at the top says which way is up", async () => {
        for (const turn of [90, 180, 270]) {
          const { w, h } = await sides(`turned-${turn}.png`);
          expect(Math.abs(w - 180)).toBeLessThan(0.5);
          expect(Math.abs(h - 240)).toBeLessThan(0.5);
        }
      });

      test("a sheet printed too small is put right by what its line measures", async () => {
        const { w, h } = await sides("seen-A4.png", { lineMm: 97 });
        expect(Math.abs(w - 0.97 * 180)).toBeLessThan(0.5);
        expect(Math.abs(h - 0.97 * 240)).toBeLessThan(0.5);
      });

      test("a ring that is hidden is done without; two are too many", async () => {
        const hide = (out: string, ...spots: string[]) =>
          execFileSync(convert, [
            ...[path("seen-A4.png"), "-fill", "#333333"],
            ...spots.flatMap((spot) => ["-draw", `circle ${spot}`]),
            path(out),
          ]);
        // The middle of the left row of rings, and the lower right one, as the picture shows them.
        const drawing = await sides("seen-A4.png");
        expect(drawing.outlines).toBe(1);
        hide("one.png", "330,730 390,730");
        expect(Math.abs((await sides("one.png")).w - 180)).toBeLessThan(0.6);
        hide("two.png", "330,730 390,730", "330,300 390,300");
        await expect(readImage(bytesOf("two.png"), {})).rejects.toThrow("pattern-photo-unscaled");
      });

      test("each way up that a camera says is turned as ImageMagick turns it", async () => {
        execFileSync(convert, [
          "-size",
          "9x5",
          "gradient:black-white",
          "-fill",
          "black",
          "-draw",
          "point 1,1",
          path("small.png"),
        ]);
        for (let way = 1; way <= 8; way++) {
          execFileSync(convert, [path("small.png"), "-quality", "100", path("plain.jpg")]);
          writeFileSync(path("kept.jpg"), withWay(bytesOf("plain.jpg"), way));
          execFileSync(convert, [path("kept.jpg"), "-auto-orient", path("shown.png")]);
          const [ours, theirs] = [await grayImage(bytesOf("kept.jpg")), await grayImage(bytesOf("shown.png"))];
          expect([ours.width, ours.height]).toEqual([theirs.width, theirs.height]);
          const off = ours.values.map((value, i) => Math.abs(value - theirs.values[i]!));
          expect(Math.max(...off), `way ${way}`).toBeLessThan(12);
        }
      });
    });

/** A JPEG with an Exif head that says which way up it is kept. Source: Exif 2.32, 4.5 and 4.6.4 A. */
function withWay(jpeg: Uint8Array, way: number): Uint8Array {
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, way, 0, 0, 0, 0, 0, 0];
  const body = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, body.length + 2, ...body, ...jpeg.subarray(2)]);
}
