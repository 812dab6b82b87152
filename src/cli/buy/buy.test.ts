import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";
import { moneyText, priceText } from "../../export/cutsheet/moneyText.ts";

const folder = mkdtempSync(join(tmpdir(), "buy-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const POUCH = join(folder, "pouch.json");
writeFileSync(
  POUCH,
  JSON.stringify({
    ...{ laywright: 1, name: "Quay pouch", unit: "mm", bags: 4, currency: "EUR", gap: 0, margin: 0 },
    materials: [
      {
        ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5 },
        price: { amount: 12, per: "m", step: "10 cm" },
        stock: [{ kind: "roll", id: "roll", width: 1500 }],
      },
      { id: "hide", name: "Hide", kind: "leather", thickness: 2, stock: [] },
    ],
    straps: [
      { id: "strap", construction: "fourfold", width: "1 in", length: "40 cm", materials: { outer: "canvas" } },
    ],
    panels: [{ id: "front", material: "canvas", shape: { kind: "rectangle", along: 300, across: 400 }, count: 2 }],
  }),
);

const buy = (...words: string[]) => runCli("buy", POUCH, "--evaluations", "2000", ...words);

test("a row for every width and construction, each a whole plan, and the best in a sentence", async () => {
  const { code, out } = await buy("--material", "Canvas");
  expect(code).toBe(0);
  const lines = out.trimEnd().split("\n");
  // Title, price, heads, seven widths (the project's own is one of them) in four constructions, the best.
  expect(lines.filter((line) => /^\d+ (?:cm|in) /u.test(line))).toHaveLength(7 * 4);
  expect(lines.at(-1)).toMatch(/^Best: \d+ (?:cm|in), .+: [\d.]+ m for €\d+\.\d\d, the least money of 28 ways\./u);
});

test("as data: money in whole cents, the best row's place, every piece placed", async () => {
  const { code, out } = await buy("--json", "--widths", "110 cm at 9.99, 150 cm", "--constructions", "own");
  expect(code).toBe(0);
  const document = JSON.parse(out);
  expect(document).toMatchObject({ laywrightBuy: 1, bags: 4, currency: "EUR", minorDigits: 2 });
  const [{ rows, best, stopped }] = document.materials;
  expect(stopped).toBe(false);
  expect(rows.map(({ widthMm, amount }: { widthMm: number; amount: number }) => [widthMm, amount])).toEqual([
    [1100, 9.99],
    [1500, null],
  ]);
  for (const row of rows) {
    const price = row.amount ?? 12;
    expect(row.toPayMinor).toBe(Math.round((price * 100 * row.buyMm) / 1000));
    expect(row.placements).toHaveLength(4 * 3);
  }
  const least = Math.min(...rows.map(({ toPayMinor }: { toPayMinor: number }) => toPayMinor));
  expect(rows[best.row].toPayMinor).toBe(least);
});

test("widths are read with a decimal comma and in inches; what is no width is told", async () => {
  const { out } = await buy(
    "--json",
    "--lang",
    "de",
    "--constructions",
    "own",
    "--widths",
    "137,5 cm zu 12,50; 54 in,60 in",
  );
  const rows = JSON.parse(out).materials[0].rows;
  expect(rows.map(({ widthMm }: { widthMm: number }) => widthMm)).toEqual([1371.6, 1375, 1524]);
  expect(rows[1].amount).toBe(12.5);
  for (const wrong of ["wide", "110 cm at much", "110 cm at 3 at 4"])
    expect((await buy("--widths", wrong)).code).toBe(1);
  expect((await buy("--constructions", "own, sideways")).code).toBe(2);
});

test("a cloth that is not there or not sold off a roll", async () => {
  expect((await buy("--material", "canvass")).err).toContain('Did you mean "canvas"');
  const hide = await buy("--material", "Hide");
  expect([hide.code, hide.err]).toEqual([1, expect.stringContaining("not sold off a roll")]);
});

test("told to stop at once, one row stands and it is said", async () => {
  const { code, out, err } = await runCli(
    "buy",
    "fixtures/harbour-bags.json",
    "--material",
    "sailcloth",
    "--seconds",
    "0",
    "--json",
  );
  const [{ rows, stopped, best }] = JSON.parse(out).materials;
  expect([code, stopped, best.row]).toEqual([0, true, 0]);
  expect(rows.length).toBeLessThan(28);
  expect(err).toContain("Stopped");
});

// Outside: ECMA-402 by the machine's own tables; the same amounts by hand.
test("amounts are written as the language writes them", () => {
  expect(moneyText(123_450, "EUR", "en")).toBe("€1,234.50");
  expect(moneyText(123_450, "EUR", "de").replace(/\s/u, " ")).toBe("1.234,50 €");
  expect(moneyText(1234, "JPY", "en")).toBe("¥1,234");
  expect(moneyText(1234, "shells", "en")).toBe("12.34 shells");
  // A price keeps the digits it was given with; alone where the currency stands beside it.
  expect(priceText(1234.5, "EUR", "en")).toBe("€1,234.50");
  expect(priceText(0.085, "EUR", "de").replace(/\s/u, " ")).toBe("0,085 €");
  expect(priceText(1234.5, "EUR", "de", true)).toBe("1.234,50");
  expect(priceText(900, "JPY", "en", true)).toBe("900");
});

test("bag by bag: what each costs more, what a length makes, and the curve as SVG", async () => {
  const picture = join(folder, "growth.svg");
  const { code, out } = await buy("--up-to", "6", "--have", "50 cm", "--picture", picture);
  expect(code).toBe(0);
  expect(out).toContain("this bag costs no cloth");
  expect(out.trimEnd().split("\n").at(-1)).toMatch(/^0\.5 m makes \d bags?\.$/u);
  expect(out).toMatch(/^0\.\d m \(€\d+\.\d\d\) makes \d, \d\.\d m \(€/mu);
  expect(out).toMatch(/^Bags? \d(?:, \d)* costs? no cloth: /mu);
  expect(readFileSync(picture, "utf8")).toContain("<svg");
  const { growth, makes } = JSON.parse((await buy("--up-to", "6", "--have", "50 cm", "--json")).out);
  expect(growth.map(({ bags }: { bags: number }) => bags)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(makes).toBe(growth.filter(({ usedMm }: { usedMm: number }) => usedMm <= 500).length);
  expect((await buy("--up-to", "3", "--own-stock")).code).toBe(2);
  // Before anything is laid.
  const nowhere = await buy("--up-to", "3", "--picture", join(folder, "nowhere", "growth.svg"));
  expect([nowhere.code, nowhere.out]).toEqual([1, ""]);
});

test("what a piece makes: bags, straps alone, straps beside the bags", async () => {
  const { code, out } = await buy("--material", "canvas", "--have", "42 cm x 80 cm");
  expect(code).toBe(0);
  expect(out).toMatch(
    /^Canvas\n42 cm × 80 cm makes \d bags?\.\nOf "strap" alone it makes \d+; beside the bags? \d+ more\.\n$/u,
  );
  const { bags, straps, pieceMm } = JSON.parse((await buy("--material", "canvas", "--have", "1 m", "--json")).out);
  expect(pieceMm).toEqual([1000, 1500]);
  expect(bags).toBeGreaterThan(2);
  expect(straps[0].alone).toBeGreaterThan(straps[0].besides);
  const wrong = await buy("--material", "canvas", "--have", "much");
  expect([wrong.code, wrong.err]).toEqual([1, expect.stringContaining("45 cm x 60 cm")]);
});

test("what to cut into: own stock first, then least money; no choice is told", async () => {
  const project = new URL("../../../fixtures/harbour-quarters.json", import.meta.url).pathname;
  const { code, out } = await runCli("buy", project, "--open", "--evaluations", "3000");
  expect(code).toBe(0);
  expect(out).toContain("From what you have: ripple leftover.");
  const [{ best, others }] = JSON.parse(
    (await runCli("buy", project, "--open", "--json", "--evaluations", "3000")).out,
  ).materials;
  const paid = best.stocks.reduce(
    (sum: number, { source, costMinor }: { source: string; costMinor: number }) =>
      sum + (source === "buy" ? costMinor : 0),
    0,
  );
  expect(best.toPayMinor).toBe(paid);
  expect(best.placements).toHaveLength(4 * 3);
  for (const other of others)
    if (other.leftOut === 0) expect(other.toPayMinor).toBeGreaterThanOrEqual(best.toPayMinor);
  const none = await buy("--open");
  expect([none.code, none.err]).toEqual([1, expect.stringContaining("one roll only")]);
  expect((await buy("--open", "--up-to", "3")).code).toBe(2);
});

test("the same words give the same table", async () => {
  const [one, other] = [await buy("--constructions", "own"), await buy("--constructions", "own")];
  expect(one.out).toBe(other.out);
  expect(readFileSync(POUCH, "utf8")).toContain("Quay pouch");
});
