// Labels as they are printed: the code is read off the drawn page by jsQR, a reader that shares nothing with what wrote
// it, and its size is measured on the page (ISO/IEC 18004: version 1 has 21 modules a side, 4 white ones round it).
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import jsQr from "jsqr";
import { afterAll, describe, expect, test } from "vitest";
import { PDF_DRAWERS } from "../../tools/pdfReaders.ts";
import { runCli } from "../../tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "shelf-labels-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = join(folder, "cupboard.json");
const pdf = join(folder, "labels.pdf");
const DPI = 150;
/** 3 by 8 on A4, mm. */
const [WIDE, TALL] = [210 / 3, 297 / 8];

interface Cut {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

describe.each(PDF_DRAWERS)("drawn by $name", ({ draw }) => {
  test("every label's code is read, is 21 mm wide, and finds its piece", async () => {
    const codes: string[] = [];
    for (let i = 0; codes.length < 5; i++) {
      const size = `${300 + i} x 200 mm`;
      const put = await runCli(
        "cupboard",
        "put",
        file,
        "--material",
        "Wave-print lining",
        "--size",
        size,
        "--json",
      );
      codes.push(JSON.parse(put.out).pieces[0].code);
    }
    expect((await runCli("cupboard", "labels", file, ...codes, "--out", pdf)).code).toBe(0);
    const page = await draw(pdf, 1, DPI);
    for (const [i, code] of codes.entries()) {
      const left = Math.round((i % 3) * WIDE * page.perMm.x);
      const top = Math.round(Math.floor(i / 3) * TALL * page.perMm.y);
      const cut = cutFrom(page, left, top, Math.floor(WIDE * page.perMm.x), Math.floor(TALL * page.perMm.y));
      const read = jsQr(cut.data, cut.width, cut.height);
      expect(read?.data).toBe(code);
      const { topLeftCorner, topRightCorner } = read!.location;
      expect((topRightCorner.x - topLeftCorner.x) / page.perMm.x).toBeCloseTo(21, 0);
      const found = await runCli("cupboard", "show", file, read!.data, "--json");
      expect(JSON.parse(found.out).pieces[0].stock.shape.along).toBe(300 + i);
    }
  });
});

test("a page that is filled goes on with the next; a code that is not there prints nothing", async () => {
  for (let i = 0; i < 22; i++)
    await runCli("cupboard", "put", file, "--material", "Canvas", "--size", "30 x 20 cm", "--shade", "navy");
  expect((await runCli("cupboard", "labels", file, "--out", pdf)).code).toBe(0);
  const second = await PDF_DRAWERS[0]!.draw(pdf, 2, 50);
  expect(second.data.some((grey) => grey < 100)).toBe(true);
  expect((await runCli("cupboard", "labels", file, "AAAAA", "--out", join(folder, "none.pdf"))).code).toBe(1);
});

/** A part of a grey picture as RGBA. */
function cutFrom(
  { data, width }: { readonly data: ArrayLike<number>; readonly width: number },
  left: number,
  top: number,
  wide: number,
  tall: number,
): Cut {
  const rgba = new Uint8ClampedArray(4 * wide * tall);
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      const grey = data[(top + y) * width + left + x]!;
      rgba.set([grey, grey, grey, 255], 4 * (y * wide + x));
    }
  return { data: rgba, width: wide, height: tall };
}
