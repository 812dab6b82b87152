// The same SVG opened by readers we did not write: resvg and libxml2, and Chromium, librsvg and Inkscape where they are.
import { chromium } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { contourBox } from "../../../src/core/geometry/contourArcs.ts";
import { svgText } from "../../../src/export/svg/svgText.ts";
import { lineCentre, passingFile, run } from "../../tools/programs.ts";
import { PIECES, samplePiece, sampleSheet } from "../../tools/samplePlan.ts";
import { SVG_DRAWERS, xpathOf } from "../../tools/svgReaders.ts";
import { browserPath, ifInstalled } from "../../tools/systemPrograms.ts";

const sheet = sampleSheet();
const svg = svgText(sheet.drawing, { title: "Quay satchel" });
let path: string;
beforeAll(() => {
  path = passingFile("lay.svg", svg);
});

/** Box of the cut lines in the drawing, y down from its top: what a reader should find for the group `cut`. */
const cuts = sheet.drawing.items.flatMap((item) =>
  item.kind === "line" && item.role === "cut" ? [contourBox(item.contour)] : [],
);
const { box } = sheet.drawing;
const expected = {
  x: Math.min(...cuts.map((cut) => cut.minX)) - box.minX,
  y: box.maxY - Math.max(...cuts.map((cut) => cut.maxY)),
  width: Math.max(...cuts.map((cut) => cut.maxX)) - Math.min(...cuts.map((cut) => cut.minX)),
  height: Math.max(...cuts.map((cut) => cut.maxY)) - Math.min(...cuts.map((cut) => cut.minY)),
};

test("libxml2 finds it well formed, without transforms, without text on the cut layer", () => {
  expect(svg).not.toMatch(/transform/iu);
  expect(xpathOf(svg, "count(//*[@id='cut']/*)")).toBeGreaterThanOrEqual(PIECES.length);
  expect(xpathOf(svg, "count(//*[@id='cut']//*[local-name()='text'])")).toBe(0);
});

for (const program of ifInstalled("chromium"))
  test(`${program} shows the cut lines at the same millimetres (CSS Values: 1 mm = 96 / 25.4 px)`, async () => {
    const browser = await chromium.launch({
      executablePath: browserPath()!,
      args: ["--no-sandbox", "--disable-gpu", "--no-first-run"],
    });
    try {
      const page = await browser.newPage();
      await page.setContent(`<body style="margin:0">${svg.slice(svg.indexOf("<svg"))}</body>`);
      const found = await page.evaluate(() => {
        const root = document.querySelector("svg")!.getBoundingClientRect();
        // The fill box leaves the line width out, as the drawing's own box does.
        const group = document.querySelector<SVGGElement>("#cut")!;
        const { x, y, width, height } = group.getBBox();
        const matrix = group.getScreenCTM()!;
        return {
          root: [root.width, root.height],
          x,
          y,
          width,
          height,
          scale: [matrix.a, matrix.b, matrix.c, matrix.d],
        };
      });
      const px = 96 / 25.4;
      expect(found.root[0]! / px).toBeCloseTo(box.maxX - box.minX, 1);
      expect(found.root[1]! / px).toBeCloseTo(box.maxY - box.minY, 1);
      // One user unit is one millimetre, in both directions.
      expect(found.scale[0]! / px).toBeCloseTo(1, 4);
      expect(found.scale[3]! / px).toBeCloseTo(1, 4);
      for (const key of ["x", "y", "width", "height"] as const) {
        expect(Math.abs(found[key] - expected[key]), key).toBeLessThan(0.01);
      }
    } finally {
      await browser.close();
    }
  });

test.each(SVG_DRAWERS)("$name draws it at the same size: two edges of a strap are 560 mm apart", async (drawer) => {
  const dpi = 127;
  const picture = await drawer.draw(path, dpi);
  const px = dpi / 25.4;
  expect(Math.abs(picture.width / px - (box.maxX - box.minX))).toBeLessThan(0.21);
  expect(Math.abs(picture.height / px - (box.maxY - box.minY))).toBeLessThan(0.21);
  // Strap from x = 5 to 565; level y = 40 crosses its ends and none of its fold lines.
  const down = (box.maxY - 40) * px;
  const edge = (x: number): number => lineCentre(picture, "x", (x - 0.6) * px, (x + 0.6) * px, down) / px;
  expect(Math.abs(edge(565) - edge(5) - 560)).toBeLessThan(0.1);
});

for (const program of ifInstalled("inkscape"))
  test("Inkscape's own query gives the cut layer the same box", () => {
    const asked = run(program, [
      "--query-id=cut",
      "--query-x",
      "--query-y",
      "--query-width",
      "--query-height",
      path,
    ]);
    // Inkscape answers in px of 1/96 in, line width included on both sides.
    const [x, y, width, height] = asked
      .trim()
      .split("\n")
      .map((line) => (Number(line) * 25.4) / 96);
    const line = 0.35;
    expect(Math.abs(x! + line / 2 - expected.x)).toBeLessThan(0.01);
    expect(Math.abs(y! + line / 2 - expected.y)).toBeLessThan(0.01);
    expect(Math.abs(width! - line - expected.width)).toBeLessThan(0.01);
    expect(Math.abs(height! - line - expected.height)).toBeLessThan(0.01);
  });

test("hostile names print as text and touch nothing else", () => {
  const names = [
    "<script>alert(1)</script>",
    "../../x",
    "]]><g id='cut'/>",
    "&lt;&amp;",
    'a" onload="x',
    "a".repeat(200),
    "\u0000\u0007\ud800\u202ename\r\nline",
    "\ufffe\uffff",
  ];
  for (const name of names) {
    const pieces = PIECES.map((piece) =>
      piece.id === "body" ? samplePiece("body", piece.contour, { name }) : piece,
    );
    const text = svgText(sampleSheet(pieces).drawing, { title: name });
    expect(xpathOf(text, "count(//*)"), name).toBeLessThanOrEqual(xpathOf(svg, "count(//*)") as number);
    expect(xpathOf(text, "count(//*[local-name()='script'] | //@onload)")).toBe(0);
  }
});
