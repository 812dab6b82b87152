import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { COMMANDS } from "../commands.ts";
import { run } from "../run.ts";

/** Everything a run says, on both streams and as progress, one entry a line. */
async function lines(...words: string[]): Promise<string[]> {
  let said = "";
  const say = (text: string): void => {
    said += text.endsWith("\n") ? text : `${text}\n`;
  };
  await run(words, COMMANDS, { language: "en", out: say, err: say, progress: say });
  return said.split("\n").map((line) => line.replace(/ +/gu, " "));
}

/** What is alike in both languages: names of the demo and of the run, ids, options, units, money. */
const ALIKE = /Quay|"[\w-]+"|--\w+|vinyl|Canvas|\b(?:neutral|clearance|fourfold|mm|cm|m|in|yd|x|EUR|K)\b/gu;

const folder = mkdtempSync(join(tmpdir(), "words-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const POUCH = join(folder, "pouch.json");
const canvas = { id: "canvas", name: "Quay", kind: "woven", thickness: 0.5, price: { amount: 12, per: "m" } };
const strap = { construction: "fourfold", width: "1 in", length: "40 cm", materials: { outer: "canvas" } };
writeFileSync(
  POUCH,
  JSON.stringify({
    laywright: 1,
    name: "Quay",
    unit: "mm",
    bags: 2,
    currency: "EUR",
    pricing: { workPerBag: 20, by: "markup", share: "50 %" },
    materials: [{ ...canvas, stock: [{ kind: "roll", id: "roll", width: 500 }] }],
    straps: [{ ...strap, id: "quay", name: "Quay" }],
    panels: [
      {
        id: "front",
        name: "Quay",
        material: "canvas",
        shape: { kind: "rounded", along: 90, across: 80, radius: 9 },
      },
    ],
  }),
);

const FLAP = join(folder, "Quay.svg");
const RECT = '<rect id="Quay" x="20" y="30" width="240" height="160" rx="20" fill="none" stroke="black"/>';
const OPEN = '<path id="quay" d="M0 0H9V9H0V5" fill="none" stroke="black"/>';
const sized = 'xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200"';
writeFileSync(FLAP, `<svg ${sized}>${RECT}${OPEN}</svg>`);
const UNSIZED = join(folder, "unsized.svg");
writeFileSync(UNSIZED, `<svg xmlns="http://www.w3.org/2000/svg">${RECT}</svg>`);
const BROKEN = join(folder, "broken.svg");
writeFileSync(BROKEN, "<svg><rect");

const ORDERS = join(folder, "orders.csv");
writeFileSync(
  ORDERS,
  "order,due,bags,quay.width\nQ-1,2027-03-12,1,\nQ-2,,2,wide\nQ-3,2027-03-12,2,2 cm\n,,,\n,2027-03-12,1,",
);
const HEADLESS = join(folder, "headless.csv");
writeFileSync(HEADLESS, "order,quay.widht\nQ-1,2 cm");
const BATCH = ["--out", join(folder, "batch"), "--effort", "0.002", "--write", "cut-list"];

const SATCHEL = ["--length", "60 in", "--thickness", "1 mm", "--name", "Quay"];

test.each([
  ["check", POUCH],
  ["check", "nowhere.json"],
  ["check", "package.json"],
  ["bag", "--starter", "crossbody"],
  ["bag", "--body", "boxed", "--width", "30 cm", "--height", "25 cm", "--depth", "10 cm"],
  ["bag", "--body", "pouch", "--width", "3 cm", "--height", "9 in", "--depth", "4 cm"],
  [
    ...["bag", "--body", "gusset", "--width", "30 cm", "--height", "25 cm", "--depth", "10 cm"],
    ...["--opening", "flap", "--pockets", "both", "--interfacing", "inset", "--straps", "shoulder"],
  ],
  ["pattern", FLAP],
  ["pattern", UNSIZED],
  ["pattern", BROKEN],
  ["lay", POUCH, "--effort", "0.002"],
  ["lay", POUCH, "--effort", "0.002", "--choices"],
  ["lay", "src"],
  ["lay", POUCH, "--write", "everything"],
  ["lay", POUCH, "--queue", "nowhere"],
  ["batch", POUCH, ORDERS, ...BATCH],
  ["batch", POUCH, ORDERS, ...BATCH, "--together", "all"],
  ["batch", POUCH, HEADLESS, ...BATCH],
  ["batch", "src", ...BATCH],
  ["worker", "--queue", "nowhere"],
  ["serve", "--host", "0.0.0.0"],
  ["buy", POUCH, "--evaluations", "500", "--widths", "20 cm; 50 cm"],
  ["buy", POUCH, "--evaluations", "500", "--directions", "all", "--joins", "both", "--widths", "50 cm at 9"],
  ["buy", POUCH, "--widths", "wide"],
  ["shopping", POUCH, "--effort", "0.002"],
  ["cupboard", "show", "nowhere.json"],
  ["cupboard", "put", "nowhere.json", "--material", "Quay"],
  ["buy", POUCH, "--evaluations", "500", "--up-to", "3", "--have", "40 cm"],
  ["yield", "--strip", "10 cm x 70 cm", "--width", "107 cm", "--length", "1 m"],
  ["yield", "--strip", "10 cm x 70 cm", "--width", "107 cm", "--length", "20 cm", "--grain", "lengthwise"],
  ["yield", "--strip", "4 in x 28 in", "--width", "42 in", "--count", "7"],
  [
    "yield",
    "--strip",
    "9 cm x 40 cm",
    "--width",
    "1 m",
    "--length",
    "1 m",
    "--curve",
    "1.2 m",
    "--squaring",
    "1 cm",
  ],
  ["yield", "--strip", "9 cm x 40 cm + 2 of 5 cm x 9 cm", "--width", "50 cm", "--length", "50 cm"],
  ["yield", "--strip", "9 cm x 40 cm", "--on", POUCH],
  ["yield", "--strip", "10 cm", "--width", "42 in", "--count", "7"],
  ["yield", "--strip", "1 mm x 1 mm", "--width", "1 m", "--length", "10 m"],
  ["yield", "--strip", "10 cm x 70 cm", "--width", "50 cm", "--count", "3", "--grain", "crosswise"],
  ["strap", "--construction", "fourfold", "--width", "1 in", "--material", "vinyl", ...SATCHEL],
  [
    "strap",
    "--construction",
    "two-layer",
    "--width",
    "1 in",
    "--facing",
    "woven",
    "--interfacing",
    "full",
    ...SATCHEL,
  ],
  [
    "strap",
    "--construction",
    "fourfold",
    "--width",
    "1 in",
    "--material",
    "cork",
    "--machine-thickness",
    "1 mm",
    ...SATCHEL,
  ],
  [
    "strap",
    "--construction",
    "tube",
    "--width",
    "1 in",
    "--hem",
    "5 mm",
    "--layers",
    "2",
    "--short-part",
    "9 in",
    ...SATCHEL,
  ],
  ["strap", "--construction", "fourfold", "--width", "9 mm", "--topstitch", "9 mm", "--ring", "2 mm", ...SATCHEL],
  ["strap", "--compare", "table", "--width", "1 in", "--stock-width", "1 m", "--price", "9", ...SATCHEL],
  ["strap", "--construction", "corded", "--cord", "10 mm", "--machine-layers", "2", ...SATCHEL],
  [
    "strap",
    "--construction",
    "fourfold",
    "--width",
    "1 in",
    "--adjust",
    "two-part",
    "--stock-width",
    "1 m",
    ...SATCHEL,
  ],
  ["strap", "--fold-test", "--thickness", "1 mm"],
  ["strap", "--fold-test", "--thickness", "1 mm", "--measured-width", "34.2 mm", "--measured-setback", "2 mm"],
  [
    "strap",
    "--fold-test",
    "--thickness",
    "1 mm",
    "--measured-width",
    "34.2 mm",
    "--measured-setback",
    "2 mm",
    "--into",
    POUCH,
    "--of",
    "nothing",
  ],
])("%s %s … says nothing in English when German is asked for", async (...words) => {
  const [english, german] = [await lines(...words), await lines(...words, "--lang", "de")];
  const same = german.filter((line) => english.includes(line) && /\p{L}{2}/u.test(line.replace(ALIKE, "")));
  expect(same).toEqual([]);
  expect(german.join("").length).toBeGreaterThan(10);
  expect(german.join("\n")).not.toMatch(/Schlüssel|laywright \w+: /u);
});
