import { expect, test } from "vitest";
import { problemLine } from "../../problems/describeProblem.ts";
import { phraseText } from "../../words/phrase.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import { coreFor } from "../constructions/catalogue.ts";
import type { StrapMaterial } from "../wish/strapWish.ts";
import { CONSTRUCTION_IDS, type ConstructionId, type StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";

function material(id: string, kind: StrapMaterial["kind"], thickness: number): StrapMaterial {
  return { id, name: id, kind, thickness, backing: "unknown", fold: {}, usableWidth: 1370, longestPiece: 1500 };
}

const MATERIALS = [
  material("vinyl", "vinyl", 1),
  material("cotton", "woven", 0.3),
  material("thick", "vinyl", 2.6),
  material("fuse", "interfacing", 0.2),
  material("foam", "padding", 4),
];

function wish(construction: ConstructionId, more: Partial<StrapWish> = {}): StrapWish {
  return {
    id: "s",
    name: "strap",
    construction,
    count: 2,
    width: construction === "corded" ? undefined : { kind: "finished", mm: 38 },
    length: { kind: "finished", mm: 700 },
    materials: { outer: "vinyl" },
    core: construction === "corded" ? { cordDiameter: 10 } : undefined,
    ...more,
  };
}

function problemsOf(bad: StrapWish) {
  const result = buildStrap(bad, MATERIALS, "straps[0].");
  return result.ok ? [] : result.problems;
}

test.each(CONSTRUCTION_IDS)("%s: sizes, lines, consumables, steps and cautions all come out", (construction) => {
  const result = buildStrap(wish(construction), MATERIALS);
  if (!result.ok) throw new Error(result.problems.map((problem) => problemLine(problem)).join("\n"));
  const strap = result.value;
  expect(strap.cutWidth).toBeGreaterThan(10);
  expect(strap.pieces.length).toBeGreaterThan(0);
  expect(new Set(strap.pieces.map((piece) => piece.id)).size).toBe(strap.pieces.length);
  for (const piece of strap.pieces) expect(piece.count % 2).toBe(0);
  expect(strap.consumables.some((one) => one.kind.endsWith("thread") && one.mm > 0)).toBe(true);
  expect(strap.cautions.map(({ code }) => code)).toContain("not-load-rated");
  expect(strap.steps.length).toBeGreaterThan(3);
  // Every fact named in a sentence is there, in each language.
  for (const words of Object.values(STRAP_WORDS))
    for (const said of [...strap.steps, ...strap.warnings])
      expect(phraseText(said, String, words)).not.toMatch(/[{}]|NaN|undefined/u);
  for (const line of strap.foldLines) {
    expect(line).toBeGreaterThan(0);
    expect(line).toBeLessThan(strap.cutWidth);
  }
});

test("the word for folded in three never stands without its layers", () => {
  for (const id of CONSTRUCTION_IDS) {
    const result = buildStrap(wish(id), MATERIALS);
    const words = JSON.stringify(result).toLowerCase();
    expect(words).not.toContain("trifold");
  }
});

test.each<[string, Partial<StrapWish>, string, object]>([
  [
    "narrower than its folds",
    { width: { kind: "finished", mm: 2.9 } },
    "straps[0].width",
    { code: "strap-too-narrow", leastMm: 3 },
  ],
  [
    "strip too narrow to fold",
    { width: { kind: "cut", mm: 5 } },
    "straps[0].width",
    { code: "strap-strip-too-narrow" },
  ],
  [
    "too thick to fold",
    { materials: { outer: "thick" } },
    "straps[0].materials.outer",
    { code: "strap-too-thick", mostMm: 2 },
  ],
  ["no width", { width: undefined }, "straps[0].width", { code: "strap-width-missing" }],
  [
    "unknown material",
    { materials: { outer: "silk" } },
    "straps[0].materials.outer",
    { code: "strap-material-missing", id: "silk" },
  ],
  [
    "a role it has not",
    { materials: { outer: "vinyl", facing: "cotton" } },
    "straps[0].materials.facing",
    { code: "strap-role-unused" },
  ],
  [
    "a cord it has not",
    { core: { cordDiameter: 8 } },
    "straps[0].core.cordDiameter",
    { code: "strap-role-unused", role: "cord" },
  ],
  [
    "webbing it has not",
    { core: { webbingWidth: 25, webbingThickness: 2 } },
    "straps[0].core.webbingWidth",
    { code: "strap-role-unused", role: "webbing" },
  ],
  [
    "a gap at the crease no strap has",
    { folds: { edgeGap: 200 } },
    "straps[0].folds.edgeGap",
    { code: "length-out-of-range", maxMm: 100 },
  ],
  [
    "interfacing without a material",
    { interfacing: "full" },
    "straps[0].materials.interfacing",
    { code: "strap-material-missing", id: null },
  ],
  [
    "clearance over 1",
    { folds: { clearance: 2 } },
    "straps[0].folds.clearance",
    { code: "strap-choice-out-of-range", most: 1 },
  ],
  [
    "ends longer than the strap",
    { length: { kind: "cut", mm: 20 }, ends: [{ style: "seam" }, { style: "seam" }] },
    "straps[0].length",
    { code: "strap-too-short" },
  ],
  [
    "no number at all",
    { width: { kind: "finished", mm: Number.NaN } },
    "straps[0].width",
    { code: "length-not-finite" },
  ],
  [
    "length without end",
    { length: { kind: "finished", mm: Infinity } },
    "straps[0].length",
    { code: "length-not-finite" },
  ],
  [
    "ring narrower than the strap",
    { hardware: [{ kind: "ring", innerWidth: 30 }] },
    "straps[0].hardware[0].innerWidth",
    { code: "strap-hardware-narrow", leastMm: 36 },
  ],
])("refuses a fourfold strap: %s", (_, change, path, problem) => {
  const problems = problemsOf(wish("fourfold", change));
  expect(problems).toMatchObject([{ path, ...problem }]);
  expect(problemLine(problems[0]!)).toMatch(/\. .+\.$/u);
});

test("refuses a corded handle without a cord, and a width that is not the cord's", () => {
  expect(problemsOf(wish("corded", { core: undefined }))).toMatchObject([{ code: "strap-cord-missing" }]);
  expect(problemsOf(wish("corded", { width: { kind: "finished", mm: 30 } }))).toMatchObject([
    { code: "strap-width-conflict", followsMm: 12 },
  ]);
  expect(problemsOf(wish("corded", { width: { kind: "cut", mm: 30 } }))).toMatchObject([
    { code: "strap-strip-too-narrow" },
  ]);
});

test("several problems are told at once", () => {
  const bad = wish("fourfold", { width: undefined, materials: { outer: "silk" }, folds: { clearance: -1 } });
  expect(problemsOf(bad).length).toBe(3);
});

test("a strap longer than the stock is refused a join until it is asked for, and then avoids the zones", () => {
  const long = { length: { kind: "finished", mm: 1800 } as const, grain: "lengthwise" as const };
  const without = buildStrap(wish("fourfold", long), MATERIALS);
  const joined = buildStrap(wish("fourfold", { ...long, joins: { allowed: true } }), MATERIALS);
  if (!without.ok || !joined.ok) throw new Error("no strap");
  expect(without.value.pieces).toHaveLength(1);
  expect(without.value.warnings.map((one) => one.code)).toContain("longer-than-stock");
  expect(without.value.warnings.map((one) => phraseText(one, String, STRAP_WORDS.en)).join(" ")).toContain(
    "two parts",
  );
  expect(joined.value.pieces).toHaveLength(2);
  expect(joined.value.warnings.map((one) => one.code)).toContain("joined");
});

test("interfacing under the face alone thickens one layer, not four", () => {
  const materials = { outer: "cotton", interfacing: "fuse" };
  const of = (interfacing: "none" | "full" | "quarter") => {
    const result = buildStrap(wish("fourfold", { materials, interfacing }), MATERIALS);
    if (!result.ok) throw new Error("no strap");
    return result.value.thickness;
  };
  expect(of("quarter") - of("none")).toBeCloseTo(0.2, 9);
  expect(of("full") - of("none")).toBeCloseTo(0.8, 9);
});

test("cutting by the round rule gives the round width, and the finished width that follows", () => {
  const result = buildStrap(wish("fourfold", { cutBy: "trade" }), MATERIALS);
  if (!result.ok) throw new Error("no strap");
  expect(result.value.cutWidth).toBeCloseTo(152, 9);
  expect(result.value.finishedWidth).toBeGreaterThan(38);
});

test("knit backing keeps straps along the roll", () => {
  const knit: StrapMaterial = { ...MATERIALS[0]!, backing: "knit" };
  const result = buildStrap(wish("fourfold"), [knit]);
  if (!result.ok) throw new Error("no strap");
  expect(result.value.pieces[0]!.grain).toBe("lengthwise");
  expect(result.value.warnings.map((one) => one.code)).toContain("knit-backing");
});

test("thickness along a strap: doubled where its ends are folded back", () => {
  const ends = [{ style: "fold-back", allowance: 40 }, { style: "raw" }] as const;
  const result = buildStrap(wish("fourfold", { ends }), MATERIALS);
  if (!result.ok) throw new Error("no strap");
  expect(result.value.along).toEqual([
    { from: 0, to: 40, layers: 8, thickness: 8 },
    { from: 40, to: 700, layers: 4, thickness: 4 },
  ]);
  expect(result.value.across?.at(-1)).toMatchObject({ to: 38 });
});

test("built another way, a strap keeps only the cord or webbing that has a place there", () => {
  const core = { cordDiameter: 8, webbingWidth: 25, webbingThickness: 2 };
  expect(coreFor("corded", core)).toEqual({ cordDiameter: 8 });
  expect(coreFor("webbing-sleeve", core)).toEqual({ webbingWidth: 25, webbingThickness: 2 });
  expect(coreFor("fourfold", core)).toBeUndefined();
  for (const id of CONSTRUCTION_IDS) {
    const built = buildStrap({ ...wish(id), core: coreFor(id, core), width: undefined }, MATERIALS);
    const codes = built.ok ? [] : built.problems.map(({ code }) => code);
    expect(codes).not.toContain("strap-role-unused");
  }
});
