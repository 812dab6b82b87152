import { expect, test } from "vitest";
import { cutLength } from "./cutLength.ts";
import { formatLength } from "./formatLength.ts";
import { listedNumbers, pluralOf, withDecimalSign } from "./numberWords.ts";
import { parseLength } from "./parseLength.ts";

// The decimal sign is a comma in German: DIN 1338, and the International System of Units brochure, 5.4.4 (either sign).
test("German has a comma before the decimals and nothing else changes", () => {
  expect(withDecimalSign("101.6 mm (4 in). 2.50 EUR", "de")).toBe("101,6 mm (4 in). 2,50 EUR");
  expect(withDecimalSign("101.6 mm", "en")).toBe("101.6 mm");
  expect(formatLength(98.425, "mm", "de")).toBe("98,4 mm");
  expect(formatLength(98.425, "in/16", "de")).toBe("3 7/8 in");
  expect(cutLength(499.1, "m", "de")).toBe("0,499 m");
});

// Decimal signs: Unicode CLDR; French and Esperanto have the comma, Japanese the point.
test("a language's tag says how it writes numbers", () => {
  expect(["fr", "eo", "ja"].map((tag) => withDecimalSign("12.5 mm", tag))).toEqual([
    "12,5 mm",
    "12,5 mm",
    "12.5 mm",
  ]);
  expect(formatLength(98.425, "mm", "fr")).toBe("98,4 mm");
  expect(listedNumbers(["12,5", "20"], "fr")).toBe("12,5; 20");
  // French counts nought as one: CLDR plural rules.
  expect([0, 1, 2].map((n) => pluralOf("fr")(n, "one", "several"))).toEqual(["one", "one", "several"]);
});

test("what is shown in German reads back to what is shown in English", () => {
  for (let mm = 0.1; mm < 3000; mm = mm * 1.37 + 0.1)
    expect(parseLength(formatLength(mm, "mm", "de"), "mm", "")).toEqual(
      parseLength(formatLength(mm, "mm"), "mm", ""),
    );
});

test("numbers in a row are parted by what no decimal sign is", () => {
  expect(listedNumbers(["12.5", "20"], "en")).toBe("12.5, 20");
  expect(listedNumbers(["12,5", "20"], "de")).toBe("12,5; 20");
});

// Plural categories: Unicode CLDR, "one" for 1 and 1 alone in both languages.
test("one has its own word, nought and several another", () => {
  for (const language of ["en", "de"] as const)
    expect([0, 1, 2, 101].map((n) => pluralOf(language)(n, "one", "several"))).toEqual([
      "several",
      "one",
      "several",
      "several",
    ]);
});
