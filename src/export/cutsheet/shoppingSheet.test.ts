import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import type { CupboardPiece } from "../../core/cupboard/cupboard.ts";
import type { ShoppingList } from "../../core/job/shopping/shoppingList.ts";
import type { Language } from "../../core/units/language.ts";
import { moneyText, priceText } from "./moneyText.ts";
import { freeText, shelfLabel, sizeText } from "./shelfLabels.ts";
import { shoppingCsv, shoppingSheet, shoppingText } from "./shoppingSheet.ts";

const price = { amount: 12, basis: { kind: "length", mm: 1000 }, step: 100, least: 0 } as never;
const cloth = { price, needed: 1400, currency: "EUR", projects: ["Tote", "Pouch"] };
const LIST: ShoppingList = {
  cloths: [
    { ...cloth, name: "Lining", source: null, width: 1100, buy: 800, toPay: null },
    { ...cloth, name: "Canvas", source: "Fair, hall 2", width: 1500, buy: 1500, toPay: 1800 },
    { ...cloth, name: "Denim", source: null, width: 1400, buy: 700, toPay: 840 },
  ],
  pieces: [
    {
      name: "Cork",
      source: null,
      stockId: "q",
      kind: "remnant",
      count: 2,
      along: 460,
      across: 300,
      length: null,
      price,
      toPay: 900,
      currency: "EUR",
      project: "Tote",
    },
    {
      name: "Goat",
      source: null,
      stockId: "g",
      kind: "skin",
      count: 1,
      along: 900,
      across: 700,
      length: null,
      price: null,
      toPay: null,
      currency: "EUR",
      project: "Tote",
    },
    {
      name: "Felt",
      source: null,
      stockId: "f",
      kind: "roll",
      count: 1,
      along: 5000,
      across: 450,
      length: 1200,
      price,
      toPay: 1440,
      currency: "EUR",
      project: "Pouch",
    },
  ],
  hardware: [{ kind: "ring", innerWidth: 25.4, count: 6, opening: null, named: true }],
  consumables: [{ code: "topstitch-thread", mm: 24_010 }] as never,
  supplies: [
    { name: "snap", needed: 3, pack: 10, packs: 1, toPay: 350, currency: "EUR", projects: ["Tote"] },
    { name: "zip", needed: 3, pack: 1, packs: 3, toPay: 600, currency: "USD", projects: ["Tote"] },
  ],
};
const sheetIn = (language: Language, lengths: "mm" | "in/16" = "mm", list = LIST) =>
  shoppingSheet(list, ["Tote", "Pouch"], lengths, language);

test("a list goes group by group and shop by shop, what has no shop at the end of its group", () => {
  const { title, groups } = sheetIn("en");
  expect(title).toBe("To buy for Tote, Pouch");
  expect(groups.map(({ heading }) => heading)).toEqual([
    "Cloth, Fair, hall 2",
    "Cloth",
    "Cloth cut to size",
    "Hardware",
    "Thread, tape and the like",
    "Besides",
  ]);
  const rows = groups.map(({ rows: own }) => own);
  expect(rows[0]).toEqual([["Canvas, 150 cm wide", "1.5 m", "€18.00"]]);
  expect(rows[1]).toEqual([
    ["Lining, 110 cm wide", "0.8 m", ""],
    ["Denim, 140 cm wide", "0.7 m", "€8.40"],
  ]);
  expect(rows[2]).toEqual([
    ["Cork, 460 mm × 300 mm", "2", "€9.00"],
    ["Goat, hide or skin 900 mm × 700 mm", "1", ""],
    ["Felt, 45 cm wide", "1.2 m", "€14.40"],
  ]);
  expect(rows[3]!.map(([, amount, money]) => [amount, money])).toEqual([["6", ""]]);
  expect(rows[4]!.map(([, amount]) => amount)).toEqual(["24.01 m"]);
  expect(rows[5]).toEqual([
    ["snap", "1 pack of 10", "€3.50"],
    ["zip", "3", "$6.00"],
  ]);
});

test("sums are told by currency, none where a price is missing; what has no price comes on top where there is any", () => {
  expect(sheetIn("en").totals).toEqual([
    "Some prices in EUR are missing, so there is no sum.",
    "To pay: $6.00",
    "What has no price here comes on top.",
  ]);
  const priced = { ...LIST, cloths: [LIST.cloths[1]!], pieces: [], supplies: [] };
  expect(sheetIn("en", "mm", priced).totals).toEqual(["To pay: €18.00", "What has no price here comes on top."]);
  expect(sheetIn("en", "mm", { ...priced, hardware: [] }).totals).toHaveLength(2);
  expect(sheetIn("en", "mm", { ...priced, consumables: [] }).totals).toHaveLength(2);
  expect(sheetIn("en", "mm", { ...priced, consumables: [], hardware: [] }).totals).toEqual(["To pay: €18.00"]);
  expect(sheetIn("en", "mm", { ...priced, cloths: [] }).totals).toEqual([]);
});

test("thread is bought by the yard where lengths are in inches", () => {
  const [line] = sheetIn("en", "in/16").lines.filter(({ group }) => group === "consumables");
  // 24.01 m are 26.26 yd.
  expect(line!.amount).toBe("≈26 1/4 yd");
  expect(sheetIn("de").groups[4]!.rows[0]![1]).toBe("24,01 m");
});

test("as text every column begins at the same place; an empty list says so", () => {
  const text = shoppingText(sheetIn("en"));
  const lines = text.split("\n");
  const rows = lines.filter((line) => line.startsWith("  "));
  expect(rows).toHaveLength(10);
  const longest = Math.max(...sheetIn("en").lines.map(({ what }) => what.length));
  for (const row of rows) {
    const { what, amount } = sheetIn("en").lines.find((line) => row.startsWith(`  ${line.what} `))!;
    expect(row.slice(2 + longest, 4 + longest)).toBe("  ");
    expect(row.slice(4 + longest).startsWith(amount), row).toBe(true);
    expect(row).toBe(row.trimEnd());
    expect(what.length).toBeLessThanOrEqual(longest);
  }
  const priced = rows.filter((row) => /[€$]/u.test(row)).map((row) => row.search(/[€$]/u));
  expect(new Set(priced).size).toBe(1);
  expect(text.startsWith("To buy for Tote, Pouch\n\nCloth, Fair, hall 2\n")).toBe(true);
  expect(
    text.endsWith(
      "\n\nSome prices in EUR are missing, so there is no sum.\nTo pay: $6.00\nWhat has no price here comes on top.\n",
    ),
  ).toBe(true);
  const none = { cloths: [], pieces: [], hardware: [], consumables: [], supplies: [] };
  expect(shoppingText(sheetIn("en", "mm", none))).toBe("There is nothing to buy.\n");
});

test("as comma-separated values: a line each with money as a number, shop and projects (read by csv-parse)", () => {
  const [heads, ...records]: string[][] = parse(shoppingCsv(sheetIn("en")));
  expect(heads).toEqual(["group", "what", "amount", "to pay", "currency", "shop", "for"]);
  expect(records).toHaveLength(10);
  expect(records[1]).toEqual(["Cloth", "Canvas, 150 cm wide", "1.5 m", "18", "EUR", "Fair, hall 2", "Tote; Pouch"]);
  expect(records[0]).toEqual(["Cloth", "Lining, 110 cm wide", "0.8 m", "", "EUR", "", "Tote; Pouch"]);
  expect(records[3]!.slice(3)).toEqual(["9", "EUR", "", "Tote"]);
  expect(records[6]!.slice(2)).toEqual(["6", "", "", "", ""]);
  expect(records[8]!.slice(1)).toEqual(["snap", "1 pack of 10", "3.5", "EUR", "", "Tote"]);
});

// ISO 4217: a yen has no smaller coin, a dinar of Kuwait a thousand; written as Unicode's CLDR has it.
test("money is written with its currency's digits and the language's signs", () => {
  const plain = (text: string) => text.replace(/[\u00a0\u202f]/gu, " ");
  expect(plain(moneyText(123_450, "EUR", "en"))).toBe("€1,234.50");
  expect(plain(moneyText(123_450, "EUR", "de"))).toBe("1.234,50 €");
  expect(plain(moneyText(1234, "JPY", "en"))).toBe("¥1,234");
  expect(plain(moneyText(1234, "KWD", "en"))).toBe("KWD 1.234");
  expect(plain(moneyText(500, "shells", "en"))).toBe("5.00 shells");
  expect(plain(moneyText(500, "", "de"))).toBe("5,00");
  expect(plain(priceText(0.0525, "EUR", "en"))).toBe("€0.0525");
  expect(plain(priceText(12, "EUR", "en"))).toBe("€12.00");
  expect(plain(priceText(0.123_456, "EUR", "en"))).toBe("€0.1235");
  expect(plain(priceText(12.5, "EUR", "de", true))).toBe("12,50");
});

const remnant = (along: number, across: number): CupboardPiece =>
  ({
    code: "K7M2P",
    material: "Canvas",
    shade: null,
    stock: { kind: "remnant", id: "x", shape: { kind: "rectangle", along, across }, flaws: [], count: 1 },
    largest: null,
    strip: null,
    kept: "2026-11-30",
    source: null,
  }) as never;

test("a shelf label tells cloth, shade, size, the largest free rectangle and strip, and since when it is kept", () => {
  const telling = { lengths: "mm", language: "en" } as const;
  expect(shelfLabel(remnant(612.3, 405.98), telling)).toEqual({
    code: "K7M2P",
    lines: ["Canvas", "612 × 405 mm", "2026-11-30"],
  });
  const more = {
    ...remnant(612, 405),
    shade: "navy",
    largest: { along: 500, across: 400 },
    strip: { along: 612, across: 80 },
    source: "Tote",
  } as unknown as CupboardPiece;
  expect(shelfLabel(more, telling).lines).toEqual([
    "Canvas",
    "navy",
    "612 × 405 mm",
    "□ 500 × 400 mm",
    "↔ 612 × 80 mm",
    "2026-11-30, Tote",
  ]);
  const skin = { ...more, stock: { ...more.stock, kind: "skin" } } as CupboardPiece;
  expect(shelfLabel(skin, telling).lines.slice(2, 5)).toEqual([
    "hide or skin 612 × 405 mm",
    "□ 500 × 400 mm",
    "↔ 612 × 80 mm",
  ]);
  const roll = { ...more, stock: { kind: "roll", id: "r", width: 1400, length: 3200 } } as unknown as CupboardPiece;
  expect(shelfLabel(roll, telling).lines).toEqual(["Canvas", "navy", "roll 3200 × 1400 mm", "2026-11-30, Tote"]);
  const open = { ...more, stock: { kind: "roll", id: "r", width: 1400, length: null } } as unknown as CupboardPiece;
  expect(sizeText(open, telling)).toBe("roll 0 × 1400 mm");
});

test("sides are rounded down to whole millimetres where these are written, told in inches as they are", () => {
  const free = (along: number, across: number) => ({ along, across }) as never;
  expect(freeText(null, { lengths: "mm", language: "en" })).toBe("–");
  // A hair less than a whole millimetre is one.
  expect(freeText(free(99.995, 49.5), { lengths: "mm", language: "en" })).toBe("100 × 49 mm");
  expect(freeText(free(99.98, 49.5), { lengths: "mm", language: "en" })).toBe("99 × 49 mm");
  expect(freeText(free(612.9, 405.9), { lengths: "cm", language: "de" })).toBe("61,2 × 40,5 cm");
  expect(freeText(free(254, 127), { lengths: "in/16", language: "en" })).toBe("10 in × 5 in");
  expect(freeText(free(914.4, 457.2), { lengths: "yd/8", language: "en" })).toBe("1 yd × 1/2 yd");
});
