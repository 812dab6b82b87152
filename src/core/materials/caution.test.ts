import { expect, test } from "vitest";
import { CAUTION_TABLES } from "../words/words.ts";
import { type Caution, type CautionCode, cautionText, mergedCautions } from "./caution.ts";

test("each caution comes once, materials named together, what hurts most first", () => {
  const merged = mergedCautions([
    { code: "tape-gums" },
    { code: "laser-pvc", materials: ["Quay vinyl"] },
    { code: "rotary-cutter" },
    { code: "tape-gums" },
    { code: "laser-pvc", materials: ["Quay vinyl", "Mole vinyl"] },
  ]);
  expect(merged).toEqual([
    { code: "laser-pvc", materials: ["Quay vinyl", "Mole vinyl"] },
    { code: "rotary-cutter" },
    { code: "tape-gums" },
  ]);
  expect(cautionText(merged[0]!, CAUTION_TABLES.en)).toMatch(/^Never cut Quay vinyl, Mole vinyl with a laser/u);
});

test("every caution is a sentence of its own in every language", () => {
  const codes = Object.keys(CAUTION_TABLES.en) as CautionCode[];
  for (const table of Object.values(CAUTION_TABLES)) {
    const texts = codes.map((code) => cautionText({ code, materials: [] } as Caution, table));
    expect(new Set(texts).size).toBe(codes.length);
    for (const text of texts) expect(text).toMatch(/^\p{Lu}.*\.$/u);
  }
  for (const code of codes) {
    const [en, de] = [CAUTION_TABLES.en, CAUTION_TABLES.de].map((table) =>
      cautionText({ code, materials: [] } as Caution, table),
    );
    expect(en, code).not.toBe(de);
  }
});
