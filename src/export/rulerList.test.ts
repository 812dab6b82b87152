import { expect, test } from "vitest";
import { choiceWords } from "../cli/lay/choiceWords.ts";
import { rectangleRing, solid } from "../core/geometry/ring.ts";
import { choicesFrom } from "../core/lay/alternatives/searchChoices.ts";
import type { LayPiece, LayPlan, LayProblem, StockPlacement } from "../core/lay/problem/layProblem.ts";
import { rulerText } from "./rulerList.ts";

const piece = (id: string, along: number, across: number, count: number): LayPiece => ({
  id,
  outline: solid(rectangleRing(0, 0, along, across)),
  count,
  orientations: [{ turnDeg: 0, mirrored: false }],
  freeTurn: false,
});
const problem: LayProblem = {
  materialId: "canvas",
  pieces: [piece("strap", 700, 100, 3), piece("pocket", 180, 150, 2)],
  stocks: [{ kind: "roll", id: "bolt", width: 480, length: null, flaws: [] }],
  gap: 2,
  margin: 5,
  pinned: [],
};
const CANVAS = { name: "Canvas", stock: [] };
const at = (pieceId: string, copy: number, x: number, y: number): StockPlacement => {
  return { pieceId, copy, stockId: "bolt", x, y, turnDeg: 0, mirrored: false };
};
const plan: LayPlan = {
  materialId: "canvas",
  placements: [
    at("strap", 0, 5, 5),
    at("strap", 1, 5, 107),
    at("strap", 2, 5, 209),
    at("pocket", 0, 5, 311),
    at("pocket", 1, 187, 311),
  ],
  unplaced: [],
  uses: [{ stockId: "bolt", usedLength: 710, bound: null }],
  evaluations: 0,
  seed: 1,
};

test("the list of ruler cuts: no cut for the gaps, equal settings named as such, every piece once", () => {
  const text = rulerText("Pier pouch", { material: CANVAS, problem, plan }, [], "mm")!;
  const steps = text.split("\n").filter((line) => /^ +\d+\. /u.test(line));
  expect(steps.map((line) => line.trim())).toEqual([
    "1. Straighten the cut end, square to the selvedge, 5 mm in, and trim one long edge as much.",
    "2. Cut the cloth crosswise at 700 mm: A",
    "3. Cut A lengthwise at 150 mm: A1",
    "4. Cut A lengthwise at 100 mm: strap",
    "5. Cut A lengthwise at 100 mm again: strap",
    "6. Cut A lengthwise at 100 mm again: strap; leaves offcut 700 mm × 25 mm",
    "7. Cut A1 crosswise at 180 mm: pocket",
    "8. Cut A1 crosswise at 180 mm again: pocket; leaves offcut 340 mm × 150 mm",
  ]);
  expect(text).toContain("8 cuts, 4 ruler settings");
});

test("without an edge nothing is trimmed off; where a cut leaves nothing over, no offcut is named", () => {
  const whole: LayProblem = {
    ...problem,
    gap: 0,
    margin: 0,
    pieces: [piece("strap", 700, 100, 3)],
    stocks: [{ ...problem.stocks[0]!, width: 300 } as LayProblem["stocks"][0]],
  };
  const laid = {
    ...plan,
    placements: [0, 1, 2].map((copy) => at("strap", copy, 0, 100 * copy)),
    uses: [{ stockId: "bolt", usedLength: 700, bound: null }],
  };
  const text = rulerText("Pier pouch", { material: CANVAS, problem: whole, plan: laid }, [], "mm")!;
  expect(text).toMatch(/1\. Straighten the cut end, square to the selvedge[^,\d]*\.\n/u);
  expect(text).not.toContain("offcut");
  expect(text).not.toMatch(/\b0 mm/u);
});

test("no list for a plan that straight cuts do not part", () => {
  const crossing = [at("strap", 0, 0, 0), at("strap", 1, 600, 50)];
  const laid = { material: CANVAS, problem, plan: { ...plan, placements: crossing } };
  expect(rulerText("Pier pouch", laid, [], "mm")).toBeNull();
});

test("choices tell length, price, ruler cuts and offcut", () => {
  const lines = choicesFrom(problem, [plan]).map((choice) => choiceWords(problem, choice, "mm", "en"));
  expect(lines[0]).toMatch(/^shortest.*710 mm; ruler cuts: 8, ruler settings: 4; largest offcut/u);
});

test("a choice is called shortest only where every piece has a place and cloth comes off a roll", () => {
  const told = (job: LayProblem, laid: LayPlan, language: "en" | "de" = "en") =>
    choicesFrom(job, [laid]).map((choice) => choiceWords(job, choice, "mm", language))[0];
  const placements = plan.placements.slice(0, 4);
  const unplaced = [{ pieceId: "pocket", count: 1, reason: "stock-used-up" }] as const;
  const part = { ...plan, placements, unplaced };
  expect(told(problem, part)).toMatch(/^fits most, easiest to cut.*: 710 mm; 1 piece does not fit; ruler cuts/u);
  expect(told(problem, part, "de")).toMatch(/^legt am meisten, .*: 710 mm; 1 Teil passt nicht; /u);
  const outline = solid(rectangleRing(0, 0, 800, 480));
  const leftover: LayProblem = { ...problem, stocks: [{ kind: "remnant", id: "bolt", outline, flaws: [] }] };
  expect(told(leftover, plan)).toMatch(/^all from stock, /u);
  expect(told(leftover, part)).toMatch(/^fits most, /u);
});

test("a plan that leaves no useful rectangle is not chosen for its offcut", () => {
  const narrow: LayProblem = {
    ...problem,
    stocks: [{ ...problem.stocks[0]!, width: 318 } as LayProblem["stocks"][0]],
  };
  const straps = { ...plan, placements: plan.placements.slice(0, 3) };
  expect(choicesFrom(narrow, [straps]).map(({ best }) => best)).toEqual([["shortest", "easiest"]]);
});

test("no list of a plan laid freely that a ruler would cut into strips; one laid for the ruler, or taken, keeps its own", () => {
  // Four millimetres between the straps, and the ruler takes off nothing under ten.
  const placements = [at("strap", 0, 5, 5), at("strap", 1, 5, 109), at("strap", 2, 5, 213)];
  const pattern = {
    along: 104,
    across: 104,
    firstAlong: 0,
    firstAcross: 0,
    halfDrop: false,
    symmetric: false,
    tolerance: 1,
  };
  const match = { group: "s", x: 0, y: 0, senseX: 1, senseY: 1, along: false, across: true } as const;
  const held: LayProblem = {
    ...{ ...problem, pattern, leastStrip: 10 },
    pieces: [{ ...piece("strap", 700, 100, 3), match }],
  };
  const laid = { material: CANVAS, problem: held, plan: { ...plan, placements } };
  expect(rulerText("Pier pouch", laid, [], "mm")).toBeNull();
  expect(rulerText("Pier pouch", { ...laid, mode: "ruler" }, [], "mm")).toContain("lengthwise at 4 mm");
  const taken = { ...laid, problem: { ...held, pinned: placements } };
  expect(rulerText("Pier pouch", taken, [], "mm")).toContain("lengthwise at 4 mm");
  const any = { ...laid, problem: { ...held, leastStrip: 4 } };
  expect(rulerText("Pier pouch", any, [], "mm")).toContain("lengthwise at 4 mm");
});
