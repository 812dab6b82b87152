import { expect, test } from "vitest";
import { describeProblem } from "../problems/describeProblem.ts";
import type { Problem } from "../problems/problem.ts";
import { LANGUAGES, SENTENCES } from "./words.ts";

/** Every fact that any problem has, so that each sentence finds its own. */
const FACTS = {
  path: "straps[0]",
  ...{ text: "3 el", unit: "el", asDecimal: "1.5", asThousands: "1500", first: "cm", second: "m" },
  ...{ mm: 1, minMm: 2, maxMm: 3, share: 0.5, min: 0.1, max: 0.2, count: 3, lowMm: 1, highMm: 2 },
  ...{ line: 4, column: 5, reason: "bad-text", characters: 6, limit: 7, version: 8, known: ["k"], value: "v" },
  ...{ key: "wdth", nearest: "width", expected: "length", choices: ["a", "b"], least: 1, most: 9, id: "canvas" },
  ...{ firstPath: "materials[0]", edges: [1, 2], xMm: 1, yMm: 2, points: 3, point: 4, widthMm: 5, selvedgeMm: 6 },
  ...{ radiusMm: 1, mostMm: 2, bowMm: 3, wish: "crosswise", materialId: "canvas", rule: "lengthwise", atMm: 4 },
  ...{ edgeMm: 5, edge: 6, leastMm: 7, cutMm: 8, construction: "fourfold", thicknessMm: 9, core: "cord" },
  ...{ toleranceMm: 1, repeatMm: 2 },
  ...{ allowanceMm: 8, fromEdgeMm: 9, choice: "hem", heededBy: ["three-hemmed"] },
  ...{ followsMm: 1, lengthMm: 2, kind: "ring", innerMm: 3, role: "facing", neutral: 1.5, clearance: 2 },
  ...{ pieceId: "flap", copy: 0, stockId: "roll", turnDeg: 90, mirrored: true, areaMm2: 5, distanceMm: 1 },
  ...{
    other: { pieceId: "body", copy: 1 },
    flaw: 0,
    wanted: 4,
    placed: 3,
    given: 3,
    unplaced: 0,
    toldMm: 5,
    measuredMm: 6,
  },
  ...{ toleranceMm: 1, repeatMm: 20, offMm: 2, axis: "along", byDeg: 12, part: "front", isMirrored: false },
  ...{ boundMm: 7, neededWidthMm: 8, widestMm: 9, fitsTurned: true, alongMm: 1, acrossMm: 2, moreLengthMm: 3 },
  ...{ layer: "CUT", kerfMm: 1, gripMm: 2, sideMm: 3, marginMm: 4, overlapMm: 5 },
  ...{ name: "rim", names: ["a", "b"], of: "body", sizeMm: 1, start: 2, allowanceMm: 3, insetMm: 4 },
  ...{ parts: ["a", "b"], firstRow: 2, bag: 2, bandMm: 300, neededMm: 420 },
  ...{ label: "K7M2P", project: "Harbour tote", on: "2027-01-04", cloth: "Sailcloth", shades: ["rust", "navy"] },
  ...{ labels: ["K7M2P", "QX4Y2"], mostKb: 40 },
};

const PATTERN_FACTS = {
  ...{
    reason: "not-xml",
    of: "lines",
    thing: "picture",
    unit: "px96",
    ofMm: 0.26,
    sideMm: 3,
    wouldBeMm: 4,
    sizeMm: 5,
  },
  ...{ errorMm: 8, hasPerspective: true, at: 6, gapMm: 7, doubledMm: 9, other: "flap", mended: false },
};

/** Figures of a sentence, by size; a decimal sign of either kind. */
const figures = (text: string): string[] =>
  (text.match(/\d+([.,]\d+)?/gu)?.map((figure) => figure.replace(",", ".")) ?? []).sort();

test("every problem has whole sentences in every language, with the same figures in them", () => {
  const codes = Object.keys(SENTENCES.en) as Problem["code"][];
  for (const code of codes) {
    const edges = code === "no-such-edge" ? 4 : FACTS.edges;
    const own = code.startsWith("pattern-") ? PATTERN_FACTS : {};
    const problem = { ...FACTS, ...own, edges, code } as unknown as Problem;
    const english = describeProblem(problem, SENTENCES.en);
    for (const language of LANGUAGES) {
      const said = describeProblem(problem, SENTENCES[language]);
      const at = `${language} ${code}`;
      expect(`${said.what} ${said.remedy}`, at).not.toMatch(/undefined|NaN|\[object/u);
      expect(said.what, at).toMatch(/[.?]$/u);
      expect(said.remedy, at).toMatch(/[.?)]$/u);
      expect(figures(said.what), at).toEqual(figures(english.what));
      if (language === "en") continue;
      expect(said.what, at).not.toBe(english.what);
      expect(said.remedy, at).not.toBe(english.remedy);
    }
  }
});
