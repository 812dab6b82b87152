import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument } from "pdf-lib";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { UnderstoodPattern } from "../../src/core/patterns/patternOutline.ts";
import { readPatternOnThread } from "../../src/reading/nodeReading.ts";
import { lockedPdf } from "../tools/pdfReaders.ts";

const folder = mkdtempSync(join(tmpdir(), "hostile-"));
/** Whoever opens an address of this server is found out. */
const fetched: string[] = [];
const server = createServer((request, response) => {
  fetched.push(request.url ?? "");
  response.end("");
});
let home = "";

beforeAll(async () => {
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  home = `http://127.0.0.1:${typeof address === "object" ? address?.port : 0}`;
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Reads on a thread, which may take so many seconds, and says how much processor time that and this thread took, s. */
async function read(
  data: string | Uint8Array,
  limit?: number,
): Promise<{ found: UnderstoodPattern; seconds: number }> {
  const bytes = typeof data === "string" ? new TextEncoder().encode(data) : data;
  const before = process.cpuUsage();
  const options = { tolerance: 0.05, mend: new Set<never>(), roles: new Map() };
  const found = await readPatternOnThread({ bytes, options }, { seconds: limit });
  const { user, system } = process.cpuUsage(before);
  return { found, seconds: (user + system) / 1e6 };
}

const svg = (inside: string, head = 'width="100mm" height="100mm"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${head}>${inside}</svg>`;
const dxf = (entities: string, blocks = ""): string =>
  `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;

/** Ten entities, each ten of the one before. */
const BOMB = `<!DOCTYPE svg [<!ENTITY a0 "ha">${Array.from({ length: 10 }, (_, i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`).join("")}]>`;
const USES = `<defs><g id="u0"><path d="M0 0H1V1Z"/></g>${Array.from({ length: 12 }, (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`).join("")}</defs><use href="#u12"/>`;
const NESTED_BLOCKS = Array.from({ length: 12 }, (_, i) => {
  const inside =
    i === 0
      ? "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n"
      : `0\nINSERT\n8\n0\n2\nB${i - 1}\n10\n0\n20\n0\n`.repeat(10);
  return `0\nBLOCK\n8\n0\n2\nB${i}\n70\n0\n10\n0\n20\n0\n${inside}0\nENDBLK\n`;
}).join("");

const FILES: Readonly<Record<string, () => string | Uint8Array>> = {
  "an entity bomb": () => `${BOMB}${svg("<text>&a10;</text><path d='M0 0H9V9Z'/>")}`,
  "an entity of a file": () =>
    `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname"><!ENTITY % p SYSTEM "${home}/p"> %p;]>${svg("<text>&x;</text>")}`,
  "uses of uses": () => svg(USES),
  "100,000 elements": () => svg('<path d="M0 0H1V1Z"/>'.repeat(100_001)),
  "deep nesting": () => svg(`${"<g>".repeat(100_000)}<path d="M0 0H9V9Z"/>${"</g>".repeat(100_000)}`),
  "100,000 style rules": () =>
    svg(
      `<style>${".a b c d e{fill:red}".repeat(100_000)}</style>${'<g><g><g><g><path class="a" d="M0 0H1V1Z"/></g></g></g></g>'.repeat(2000)}`,
    ),
  "numbers that are none": () =>
    svg('<path d="M0 0L1e999 5L5 5Z"/><rect width="NaN" height="5"/><circle r="1e300"/>'),
  "a scale of nothing": () => svg('<g transform="scale(0)"><rect width="50" height="50"/></g>'),
  "a viewBox of nothing": () =>
    svg('<rect width="50" height="50"/>', 'viewBox="0 0 0 0" width="10mm" height="10mm"'),
  "an SVG cut short": () => svg('<rect width="50" height="50"/>').slice(0, -12),
  "a DXF cut short": () => dxf("0\nCIRCLE\n8\n0\n10\n0\n20\n0\n40\n5\n").slice(0, -30),
  "blocks of blocks": () => dxf("0\nINSERT\n8\n0\n2\nB11\n10\n0\n20\n0\n", NESTED_BLOCKS),
  "a block in itself": () =>
    dxf(
      "0\nINSERT\n8\n0\n2\nA\n10\n0\n20\n0\n",
      "0\nBLOCK\n8\n0\n2\nA\n70\n0\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nA\n10\n1\n20\n0\n0\nENDBLK\n",
    ),
  "a million rows of inserts": () =>
    dxf(
      "0\nINSERT\n8\n0\n2\nA\n10\n0\n20\n0\n70\n30000\n71\n30000\n44\n1\n45\n1\n",
      "0\nBLOCK\n8\n0\n2\nA\n70\n0\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n",
    ),
  "DXF numbers that are none": () => dxf("0\nCIRCLE\n8\n0\n10\nnan\n20\ninf\n40\n1e999\n"),
  "half a million DXF lines": () => dxf("0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n".repeat(500_000)),
  "a PDF cut short": () => new TextEncoder().encode("%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>"),
  "a picture of 100 megapixels": () => pictureHead(10_000, 10_000),
  "random bytes": () => Uint8Array.from({ length: 10_000 }, (_, i) => (i * 7919) % 251),
  nothing: () => "",
};

/** A closed path of 100,000 nodes that crosses itself millions of times. */
const SCRIBBLE = `<path d="M0 0${Array.from({ length: 100_000 }, (_, i) => `L${(i * 7919) % 997} ${(i * 104_729) % 991}`).join("")}Z"/>`;

/** The beginning of a PNG that says it is so large. */
function pictureHead(width: number, height: number): Uint8Array {
  const bytes = new Uint8Array(64);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return bytes;
}

test.each(Object.entries(FILES))(
  "%s is told soon after the 1.7 seconds of processor time that reading may take, or before",
  async (_, make) => {
    const { found, seconds } = await read(make());
    expect(found.outlines).toEqual([]);
    expect(found.problems.length).toBeGreaterThan(0);
    expect(found.problems.every(({ code }) => code.startsWith("pattern-"))).toBe(true);
    // The limit is looked at now and then, and this thread has its share; a busy core counts for more.
    expect(seconds).toBeLessThan(3);
  },
);

test("a scribble is told as one by what it is and not by the time it takes, and so is a DXF with too many lines", async () => {
  // Time enough on any machine.
  const scribble = await read(svg(SCRIBBLE), 20);
  expect(scribble.seconds).toBeLessThan(5);
  expect(scribble.found.problems).toMatchObject([{ code: "pattern-crosses-itself", count: 1000, more: true }]);
  const lines = await read(FILES["half a million DXF lines"]!(), 20);
  expect(lines.found.problems).toMatchObject([{ code: "pattern-too-much", of: "lines" }]);
});

test("a locked PDF is told as such", async () => {
  const doc = await PDFDocument.create();
  doc.addPage([100, 100]).drawRectangle({ x: 10, y: 10, width: 50, height: 50 });
  const { found } = await read(await lockedPdf(await doc.save()));
  expect(found.problems).toEqual([{ code: "pattern-encrypted", path: "" }]);
});

test("nothing outside the file is fetched and nothing in it is run", async () => {
  const evil = `<?xml-stylesheet href="${home}/xsl" type="text/css"?><!DOCTYPE svg SYSTEM "${home}/dtd">${svg(
    `<script href="${home}/script">globalThis.wasRun = true</script><style>@import url(${home}/css); rect { fill: url(${home}/fill) }</style>
     <image href="${home}/image"/><use href="${home}/use#a"/><foreignObject><iframe src="${home}/frame"/></foreignObject>
     <rect width="50" height="20" onload="globalThis.wasRun = true"/><a href="javascript:globalThis.wasRun=1"><circle r="9"/></a>`,
  )}`;
  const { found } = await read(evil);
  expect(found.outlines).toHaveLength(2);
  const js = `%PDF-1.4
1 0 obj<</Type/Catalog/Pages 2 0 R/OpenAction<</S/JavaScript/JS(app.launchURL("${home}/pdf"))>>>>endobj
2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj
3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 100 100]/Contents 4 0 R>>endobj
4 0 obj<</Length 15>>stream
10 10 50 20 re S
endstream endobj
trailer<</Root 1 0 R>>`;
  expect((await read(js)).found.outlines).toHaveLength(1);
  expect(fetched).toEqual([]);
  expect((globalThis as Record<string, unknown>)["wasRun"]).toBeUndefined();
});

test("reading that takes too long or too much memory is stopped", async () => {
  const bytes = new TextEncoder().encode(svg('<path d="M0 0H1V1Z"/>'.repeat(40_000)));
  const options = { tolerance: 0.05, mend: new Set<never>(), roles: new Map() };
  const slow = await readPatternOnThread({ bytes, options }, { seconds: 0.05 });
  expect(slow.problems).toEqual([{ code: "pattern-too-much", path: "", of: "seconds", limit: 0.05 }]);
  const large = await readPatternOnThread({ bytes, options }, { megabytes: 16, seconds: 60 });
  expect(large.problems).toEqual([{ code: "pattern-too-much", path: "", of: "memory", limit: 16 }]);
});
