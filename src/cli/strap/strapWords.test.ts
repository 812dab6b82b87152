import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "strap-words-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const strap = (...words: string[]) => runCli("strap", ...words);

test("a picture's folder is never made silently", async () => {
  const file = join(folder, "no-such-folder", "strap.svg");
  const words = ["--construction", "fourfold", "--width", "38 mm", "--length", "700 mm", "--picture", file];
  expect(await strap(...words)).toMatchObject({ code: 1 });
  expect(existsSync(dirname(file))).toBe(false);
});

test("what is bought is rounded up in either unit", async () => {
  const words = [
    "--construction",
    "fourfold",
    "--width",
    "38 mm",
    "--length",
    "700 mm",
    "--stock-width",
    "1100 mm",
  ];
  const { out } = await strap(...words);
  // Four widths off the roll crosswise: 152 mm, up to 16 cm and to a quarter of a yard.
  expect(out).toMatch(/Off the roll +0\.16 m \(1\/4 yd\)/u);
});

test("23: no thirty-second on cotton, in words and pictures; vinyl keeps them", async () => {
  const strap = (material: string) =>
    runCli(
      "strap",
      "--construction",
      "fourfold",
      "--width",
      "1 1/32 in",
      "--length",
      "28 in",
      "--material",
      material,
    );
  expect((await strap("cotton")).out).not.toMatch(/\d\/32 in/u);
  expect((await strap("vinyl")).out).toMatch(/\d\/32 in/u);
});

test("23: German names constructions and materials, and writes decimals its way", async () => {
  const thick = ["--width", "38 mm", "--length", "70 cm", "--material", "cork", "--machine-thickness", "2 mm"];
  const { out } = await runCli("strap", "--construction", "fourfold", ...thick, "--lang", "de");
  expect(out).toContain("in drei gefaltet, offene Kante (--construction three-raw)");
  expect(out).not.toMatch(/\bcork\b/u);
  const rows = ["--width", "38 mm", "--length", "70 cm", "--stock-width", "1 m", "--price", "12"];
  const compared = await runCli("strap", "--compare", "table", ...rows, "--lang", "de");
  expect(compared.out).toMatch(/ \d+,\d\d /u);
  expect(compared.out).not.toMatch(/\d\.\d/u);
  const press = ["--width", "38 mm", "--length", "70 cm", "--clearance", "1.5", "--lang", "de"];
  expect((await runCli("strap", "--construction", "fourfold", ...press)).err).toContain("von 0 bis 1 sein");
  const pressed = ["--padding", "3 mm", "--padding-pressed", "0.01", "--lang", "de"];
  expect((await runCli("strap", "--construction", "three-hemmed", ...rows.slice(0, 4), ...pressed)).err).toContain(
    "von 0,05 bis 1",
  );
});
