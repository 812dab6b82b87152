import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";
import { CONSTRUCTION_IDS } from "../../core/straps/wish/strapWish.ts";

const folder = mkdtempSync(join(tmpdir(), "strap-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const strap = (...words: string[]) => runCli("strap", ...words);

const INCH = 25.4;

test("the contract: a 1 in fourfold strap of 1.0 mm is cut 3 7/8 in, a 0.3 mm one 4 in (common practice, no source)", async () => {
  const json = async (thickness: string) => {
    const done = await strap(
      "--construction",
      "fourfold",
      "--width",
      "1 in",
      "--length",
      "60 in",
      "--thickness",
      thickness,
      "--json",
    );
    expect(done.code).toBe(0);
    return JSON.parse(done.out);
  };
  const vinyl = await json("1.0 mm");
  expect(Math.abs(vinyl.cutWidthMm - 3.875 * INCH)).toBeLessThan(INCH / 32);
  expect(vinyl).toMatchObject({ layers: 4, thicknessMm: 4, nominalWidthMm: 4 * INCH, finishedWidthMm: INCH });
  expect(vinyl.pieces).toMatchObject([{ widthMm: vinyl.cutWidthMm, lengthMm: 60 * INCH, count: 1 }]);
  expect(vinyl.foldLinesMm).toHaveLength(3);
  for (const list of ["warnings", "steps", "cautions"]) expect(Array.isArray(vinyl[list])).toBe(true);
  expect(Math.abs((await json("0.3 mm")).cutWidthMm - 4 * INCH)).toBeLessThan(INCH / 16);
});

test("the contract the other way: 3 in of 0.95 mm folded in three stays 1/8 in short (common practice, no source)", async () => {
  const done = await strap(
    "--construction",
    "three-raw",
    "--cut-width",
    "3 in",
    "--length",
    "1 m",
    "--thickness",
    "0.95 mm",
    "--json",
  );
  const answer = JSON.parse(done.out);
  expect(answer.cutWidthMm).toBeCloseTo(3 * INCH, 9);
  expect(Math.abs(answer.setbackMm - INCH / 8)).toBeLessThan(INCH / 32);
});

test.each(CONSTRUCTION_IDS)("%s prints a sheet without holes and writes pictures", async (id) => {
  const size = id === "corded" ? ["--cord", "10 mm"] : ["--width", "30 mm"];
  const out = join(folder, id);
  const done = await strap(
    "--construction",
    id,
    ...size,
    "--length",
    "60 cm",
    "--thickness",
    "1 mm",
    "--material",
    "vinyl",
    "--out",
    out,
  );
  expect(done.err).toContain("wrote");
  expect(done.code).toBe(0);
  expect(done.out).toMatch(/Cut width .*mm \(.*in\)/u);
  expect(done.out).not.toMatch(/NaN|undefined|Infinity|\{/u);
  const svg = readFileSync(join(out, "section.svg"), "utf8");
  expect(svg).toMatch(/<svg [^>]*width="[\d.]+mm"/u);
  expect(svg).not.toContain("NaN");
  // Every fold is an arc, not a chain of chords.
  if (id !== "bonded") expect(svg).toMatch(/A[\d.]+ [\d.]+ 0 [01] [01] /u);
});

test("bad input ends with 1 and says the limit; nothing is written", async () => {
  const out = join(folder, "never");
  const base = ["--length", "60 in", "--thickness", "1 mm", "--out", out];
  const narrow = await strap("--construction", "fourfold", "--width", "2 mm", ...base);
  expect(narrow).toMatchObject({ code: 1, out: "" });
  expect(narrow.err).toContain("at least 3 mm");
  const thick = await strap(
    "--construction",
    "tube",
    "--width",
    "30 mm",
    "--length",
    "60 in",
    "--thickness",
    "3 mm",
  );
  expect(thick.code).toBe(1);
  expect(thick.err).toContain("up to 1.2 mm");
  const cord = await strap("--construction", "corded", ...base);
  expect(cord.code).toBe(1);
  expect(cord.err).toContain("diameter");
  const ring = await strap("--construction", "fourfold", "--width", "38 mm", "--ring", "25 mm", ...base);
  expect(ring.code).toBe(1);
  expect(ring.err).toContain("36 mm");
  const bias = await strap("--construction", "fourfold", "--width", "38 mm", "--grain", "bias", ...base);
  expect(bias.code).toBe(1);
  expect(bias.err).toContain("bias");
  const unreadable = await strap("--construction", "fourfold", "--width", "wide", ...base, "--json");
  expect(unreadable.code).toBe(1);
  expect(JSON.parse(unreadable.out).problems).toMatchObject([{ path: "--width" }]);
  expect(existsSync(out)).toBe(false);
});

test("wrong usage ends with 2", async () => {
  for (const words of [
    [],
    ["--construction", "sixfold", "--width", "1 in", "--length", "60 in"],
    ["--construction", "fourfold", "--width", "1 in"],
    ["--construction", "fourfold", "--width", "1 in", "--cut-width", "4 in", "--length", "1 m"],
    ["--construction", "fourfold", "--width", "1 in", "--length", "60 in", "--material", "moonstone"],
  ]) {
    expect((await strap(...words)).code).toBe(2);
  }
});

test("20: a fraction without a unit is asked about, not taken for millimetres", async () => {
  const said = await strap("--construction", "fourfold", "--width", "1 1/2", "--length", "60 in");
  expect(said.code).toBe(1);
  expect(said.err).toContain("--width: ");
  expect(said.err).toContain("1 1/2 in");
});

test("a cord or webbing that the construction has no place for is refused, not ignored", async () => {
  const said = await strap(
    "--construction",
    "fourfold",
    "--width",
    "25 mm",
    "--length",
    "600 mm",
    "--cord",
    "8 mm",
    "--webbing",
    "25 mm",
  );
  expect(said.code).toBe(1);
  expect(said.err).toContain("--cord: This construction (folded in four) has no cord.");
  expect(said.err).toContain("--webbing: This construction (folded in four) has no webbing.");
});

test("what cannot be made is told at the option that asked for it", async () => {
  const said = async (...words: string[]) => (await strap("--construction", "fourfold", ...words)).err;
  const length = ["--length", "60 in"];
  expect(await said("--cut-width", "1 mm", ...length, "--thickness", "1 mm")).toMatch(/^--cut-width: /u);
  expect(await said("--width", "1 in", "--drop", "2 cm", "--ends", "seam 1 in", "--ring", "10 mm")).toMatch(
    /^--ring: /u,
  );
  expect(await said("--width", "1 in", ...length, "--padding", "3 mm", "--seam", "0")).toMatch(
    /^--seam: .*\n--padding: /u,
  );
});

test("padding and the short half are as the maker says", async () => {
  const words = ["--construction", "three-hemmed", "--width", "38 mm", "--length", "600 mm", "--padding", "5 mm"];
  const soft = JSON.parse((await strap(...words, "--json")).out);
  const firm = JSON.parse((await strap(...words, "--padding-pressed", "0.8", "--json")).out);
  // Own arithmetic: 0.8 − 0.4 of 5 mm is 2 mm more in the strap.
  expect(firm.thicknessMm - soft.thicknessMm).toBeCloseTo(2, 6);
  const halves = ["--construction", "fourfold", "--width", "25 mm", "--worn", "1200 mm", "--adjust", "two-part"];
  const { pieces } = JSON.parse((await strap(...halves, "--short-part", "300 mm", "--json")).out);
  expect(pieces.map((piece: { lengthMm: number }) => piece.lengthMm)).toContain(300);
});

test("a name in another writing is drawn in the pictures, so that it shows wherever they are opened", async () => {
  const dir = join(folder, "writing");
  const words = ["--construction", "fourfold", "--width", "25 mm", "--length", "600 mm", "--name", "肩ひも"];
  expect((await strap(...words, "--out", dir)).code).toBe(0);
  const svg = readFileSync(join(dir, "strip-outer.svg"), "utf8");
  expect(svg).not.toMatch(/<text[^>]*>[^<]*肩/u);
  expect(svg).toMatch(/<path fill="[^"]*" stroke="none" d="M/u);
  expect(svg).toMatch(/<text[^>]*>[^<]*cut width/u);
});

test("constructions side by side: a line each, as a table and as CSV", async () => {
  const words = [
    "--width",
    "38 mm",
    "--length",
    "700 mm",
    "--material",
    "vinyl",
    "--stock-width",
    "1370 mm",
    "--price",
    "20",
  ];
  const table = await strap(...words, "--compare", "table");
  expect(table).toMatchObject({ code: 0 });
  expect(table.out.trimEnd().split("\n")).toHaveLength(10);
  expect(table.out).toContain("folded in three, raw edge");
  // Read by a library that we did not write (npm `csv-parse`), which refuses rows of unequal length.
  const [heads, ...rows]: string[][] = parse((await strap(...words, "--compare", "csv")).out, { bom: true });
  expect(heads).toHaveLength(11);
  expect(rows).toHaveLength(9);
  const german = await strap(...words, "--compare", "table", "--lang", "de");
  expect(german.out).toContain("Schnittbreite");
});

test("options that say nothing beside the others are refused, in every mode", async () => {
  const plain = ["strap", "--construction", "fourfold", "--width", "1 in", "--length", "20 in"];
  const refused = async (code: number, said: string, ...words: string[]) => {
    const result = await runCli(...words);
    expect(result).toMatchObject({ code, out: "" });
    expect(result.err).toContain(said);
  };
  await refused(1, "--hem: This construction (folded in four) has no use for a hem.", ...plain, "--hem", "9 mm");
  await refused(1, "--edge:", ...plain, "--edge", "paint");
  await refused(1, "--short-part:", ...plain, "--short-part", "9 in");
  await refused(1, "--ends:", ...plain, "--ends", "doubled");
  await refused(
    1,
    "--trade:",
    "strap",
    "--construction",
    "tube",
    "--cut-width",
    "6 cm",
    "--length",
    "1 m",
    "--trade",
  );
  await refused(2, "--fixed-bar says something only with --slider", ...plain, "--fixed-bar");
  await refused(2, "only with --compare", ...plain, "--price", "12");
  await refused(2, "only with --interfacing", ...plain, "--interfacing-thickness", "0.3 mm");
  await refused(
    2,
    "--compare has no use for --round",
    ...plain.toSpliced(1, 2),
    "--compare",
    "table",
    "--round",
    "1 mm",
  );
  await refused(2, "--fold-test has no use for --length", "strap", "--fold-test", "--length", "1 m");
  await refused(
    ...([1, "--round:", "strap", "--construction", "webbing-sleeve", "--webbing", "38 mm x 2 mm"] as const),
    ...["--length", "1 m", "--round", "1 mm"],
  );
});

test("a preset fills in the measures that are not given, in mm or inches, and says where they come from", async () => {
  const bag = async (...more: string[]) =>
    JSON.parse((await runCli("strap", "--construction", "fourfold", "--json", ...more)).out);
  expect(await bag("--preset", "tote-hand")).toMatchObject({ finishedWidthMm: 25, finishedLengthMm: 450 });
  expect(await bag("--preset", "tote-hand in")).toMatchObject({
    finishedWidthMm: 25.4,
    finishedLengthMm: 18 * 25.4,
  });
  expect(await bag("--preset", "tote-hand", "--width", "30 mm")).toMatchObject({ finishedWidthMm: 30 });
  expect((await bag("--preset", "crossbody")).longestMm).toBeCloseTo(1300, 9);
  const { out } = await runCli("strap", "--construction", "fourfold", "--preset", "backpack");
  expect(out).toContain("2 x Strap");
  expect(out).toContain("common practice, no source");
  expect((await runCli("strap", "--construction", "fourfold", "--preset", "sack")).code).toBe(2);
});
