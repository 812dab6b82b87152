// Words that makers were shown and chose (common practice, no source): they stand where they were asked for, and what
// they took the place of is nowhere.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { CATALOGUES, type Texts } from "../../src/web/texts/texts.ts";

const root = fileURLToPath(new URL("../../src/", import.meta.url));

const said: readonly (readonly [
  where: string,
  of: (texts: Texts) => string,
  english: string,
  german: string | null,
])[] = [
  [
    "how far from proven",
    ({ lay, terms }) => lay.gap("12 %").replace("{bound}", terms.bound.word),
    "At most 12 % longer than the best possible.",
    null,
  ],
  ["the proven length", ({ terms }) => terms.bound.word, "best possible", "kürzestmögliche Länge"],
  ["a search that stopped", ({ lay }) => lay.findings.rested, "stopped: no improvement", null],
  ["other ways", ({ lay }) => lay.ways.couldBe, "If you change one thing (estimate)", null],
  ["what is kept", ({ keeping }) => keeping.kept, "Saved on this device", null],
  ["an empty project", ({ project }) => project.startEmpty, "New project", null],
  ["the example", ({ project }) => project.startDemo, "Open the example", null],
  ["a leftover of leather", ({ cloth }) => cloth.addStock.skin, "Hide or skin", "Lederhaut"],
  ["the test square", ({ table }) => table.paper.printer, "Does your printer print to scale?", null],
  [
    "before a strap works out",
    ({ bag }) => bag.strap.noPicture,
    "The picture comes when the strap works out.",
    "Das Bild kommt, sobald sich der Riemen berechnen lässt.",
  ],
  ["a plan", ({ lay }) => lay.plan("Canvas"), "Lay plan for Canvas", "Zuschnittplan für Canvas"],
  [
    "as many as can be",
    ({ lay }) => lay.stripsOf("Strap", 4, true),
    "4 × Strap (proven maximum)",
    "4 × Strap (nachweislich das Maximum)",
  ],
  ["the machine's bed", ({ table }) => table.machine.bedWidth, "Width of the bed", "Breite der Schneidefläche"],
  ["what there is", ({ cloth }) => cloth.stockHeading, "What there is of it", "Bestand"],
];

test.each(said)("%s", (_, of, english, german) => {
  expect(of(CATALOGUES.en)).toBe(english);
  if (german !== null) expect(of(CATALOGUES.de)).toBe(german);
});

/** The words of every table, by language. */
function tables(language: "en" | "de"): readonly (readonly [string, string])[] {
  const folders = ["web/texts", "core/words"].map((room) => join(root, room, language));
  return folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith(".ts"))
      .map((name) => [name, readFileSync(join(folder, name), "utf8")] as const),
  );
}

/** What the words above took the place of. */
const GONE = {
  en: [
    /nothing better comes/iu,
    /over the shortest possible/iu,
    /\brests\b/u,
    /"could be/iu,
    /start empty/iu,
    /the demo\b/iu,
    /kept here/iu,
    /(?<!hide or )\bskin"/iu,
    /prints? true\b/iu,
  ],
  de: [
    /wenn der Riemen aufgeht/iu,
    /Lageplan|Legeplan/u,
    /kürzeste mögliche/iu,
    /bewiesen|erwiesen/iu,
    /\bBett(es|s)?\b/u,
    /"Haut"|"Fell"/u,
    /Vorrat/u,
  ],
} as const;

test.each(["en", "de"] as const)("%s has none of the words that these took the place of", (language) => {
  const found = tables(language).flatMap(([name, text]) =>
    GONE[language].flatMap((word) =>
      (text.match(new RegExp(word, `g${word.flags}`)) ?? []).map((hit) => `${name}: ${hit}`),
    ),
  );
  expect(found).toEqual([]);
  expect(tables(language).length).toBeGreaterThan(15);
});
