import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { PDF_DRAWERS } from "../../../tests/tools/pdfReaders.ts";
import { runCli } from "../../../tests/tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "shopping-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A project of one panel that takes 62 cm of canvas, and a zip a bag. */
function project(name: string): string {
  const path = join(folder, `${name}.json`);
  const canvas = { id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, grain: "lengthwise" };
  const sold = { source: "Quay market", price: { amount: 12, per: "m", step: "10 cm" } };
  const stock = [{ kind: "roll", id: "roll", width: 1000, squaring: 0 }];
  const front = { id: "front", material: "canvas", shape: { kind: "rectangle", along: 620, across: 900 } };
  const supplies = [{ id: "zip", name: "=Zip", perBag: 1, price: 2.5, pack: 5 }];
  const file = {
    laywright: 1,
    name,
    unit: "mm",
    materials: [{ ...canvas, ...sold, stock }],
    panels: [front],
    supplies,
  };
  writeFileSync(path, JSON.stringify(file));
  return path;
}

test("two projects on one list: cloth of a shop cut once, packs shared, the sum to the cent, and the same as CSV", async () => {
  const csv = join(folder, "list.csv");
  const words = [project("Tote"), project("Pouch"), "--effort", "0.002"];
  const { code, out } = await runCli("shopping", ...words, "--csv", csv);
  expect(code).toBe(0);
  expect(out).toContain("To buy for Tote, Pouch");
  expect(out).toMatch(/Cloth, Quay market\n {2}Canvas, 100 cm wide +1\.3 m +€15\.60/u);
  expect(out).toMatch(/=Zip +1 pack of 5 +€2\.50/u);
  expect(out).toContain("To pay: €18.10");
  const rows = readFileSync(csv, "utf8").split("\r\n");
  expect(rows[1]).toBe('Cloth,"Canvas, 100 cm wide",1.3 m,15.6,EUR,Quay market,Tote; Pouch');
  // What a spreadsheet would reckon with is written as words.
  expect(rows[2]).toContain("'=Zip");
  // On paper, read by a program that we did not write.
  const pdf = join(folder, "list.pdf");
  expect((await runCli("shopping", ...words, "--pdf", pdf)).code).toBe(0);
  const page = await PDF_DRAWERS[0]!.draw(pdf, 1, 50);
  expect(page.data.some((grey) => grey < 100)).toBe(true);
  expect((await runCli("shopping", ...words, "--paper", "A4")).code).toBe(2);
  const data = JSON.parse((await runCli("shopping", ...words, "--json")).out);
  expect(data).toMatchObject({ laywrightShopping: 1, cloths: [{ needed: 1240, buy: 1300, toPay: 1560 }] });
});

test("a project with a fault is told, and nothing is listed", async () => {
  const broken = join(folder, "broken.json");
  writeFileSync(broken, "{");
  expect(await runCli("shopping", project("Sound"), broken)).toMatchObject({ code: 1, out: "" });
});
