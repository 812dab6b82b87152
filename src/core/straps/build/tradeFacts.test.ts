import { expect, test } from "vitest";
import { ringBox } from "../../geometry/box.ts";
import { cautionText } from "../../materials/caution.ts";
import type { MaterialKind } from "../../materials/material.ts";
import type { Problem, Result } from "../../problems/problem.ts";
import { phraseText } from "../../words/phrase.ts";
import { CAUTION_TABLES, STRAP_WORDS } from "../../words/words.ts";
import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { TRADE } from "../constructions/construction.ts";
import type { ConstructionId, StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { rollLengthFor } from "./limits.ts";
import { adjustableRange, cutFromDrop } from "./strapLengths.ts";
import type { StrapResult } from "./strapResult.ts";
import { WEBBING_WIDTHS } from "./warnings.ts";

// Trade rules of strap making: common practice, no source, unless a line says otherwise.

const INCH = 25.4;

function material(kind: MaterialKind, thickness: number, id = "outer"): StrapMaterial {
  return { id, name: id, kind, thickness, backing: "woven", fold: {} };
}

function wish(construction: ConstructionId, width: number | null, more: Partial<StrapWish> = {}): StrapWish {
  return {
    id: "s",
    name: "strap",
    construction,
    count: 1,
    width: width === null ? undefined : { kind: "finished", mm: width },
    length: { kind: "finished", mm: 700 },
    materials: { outer: "outer" },
    ...more,
  };
}

function built(result: Result<StrapResult>): StrapResult {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const flat = [material("woven", 0), material("woven", 0, "facing"), material("padding", 0, "padding")];

function cutAtNoThickness(construction: ConstructionId, width: number, more: Partial<StrapWish> = {}): number {
  return built(buildStrap(wish(construction, width, more), flat)).cutWidth;
}

function codes(result: StrapResult): string[] {
  return result.warnings.map((warning) => warning.code);
}

test.each([1, 1.5, 2])("1.1: fourfold of %s in without thickness is four times as wide", (inches) => {
  expect(cutAtNoThickness("fourfold", inches * INCH)).toBeCloseTo(4 * inches * INCH, 9);
});

test("1.2: 3 cm fourfold is cut 12 cm", () => expect(cutAtNoThickness("fourfold", 30)).toBeCloseTo(120, 9));

test("1.3: 2.5 cm fourfold in faux leather: trade's round 10 cm, 4 layers, no interfacing asked for", () => {
  const strap = built(buildStrap(wish("fourfold", 25), [material("vinyl", 1)]));
  expect(strap.nominalWidth).toBeCloseTo(100, 9);
  expect(strap.layers).toBe(4);
  expect(codes(strap)).not.toContain("no-interfacing");
});

test("1.4: uncreased soft folds need more than 4 × width when raw edges meet the crease", () => {
  const of = (thickness: number) =>
    built(
      buildStrap(wish("fourfold", 25, { folds: { crease: "soft", edgeGap: 0 } }), [material("woven", thickness)]),
    ).cutWidth - 100;
  expect(of(0.3)).toBeGreaterThan(0);
  expect(of(1)).toBeGreaterThan(of(0.3));
});

test("1.5: the gap of faux leather at the centre crease is of the size of 3 mm; tape keeps 1/8 in off the edge", () => {
  const strap = built(buildStrap(wish("fourfold", 25, { folds: { clearance: 1 } }), [material("vinyl", 1.3)]));
  expect(strap.setback).toBeCloseTo(3.06, 1);
  expect(TRADE.tapeFromEdge).toBeCloseTo(INCH / 8, 9);
});

test("1.6: in three with a raw edge, 1 1/2 in is cut 4 1/2 in; three layers, one visible raw edge", () => {
  expect(cutAtNoThickness("three-raw", 1.5 * INCH)).toBeCloseTo(4.5 * INCH, 9);
  expect(CONSTRUCTIONS["three-raw"].layers({})).toBe(3);
  expect(CONSTRUCTIONS["three-raw"].visibleEdges({})).toBe(1);
});

test("1.7: where four layers pass a limit, three are offered and need less cloth", () => {
  const machine = { maxThickness: 3.5 };
  const strap = built(
    buildStrap(wish("fourfold", 25, { machine }), [{ ...material("vinyl", 1), usableWidth: 1370 }]),
  );
  expect(codes(strap)).toContain("machine-thickness");
  const three = strap.alternatives.find((one) => one.construction === "three-raw");
  expect(three?.thickness).toBe(3);
  expect(three!.cutWidth).toBeLessThan(strap.cutWidth);
});

test("1.8: in three over padding with a hemmed edge: 1.25 in is cut 3.75 in, padding under 1/16 in narrower", () => {
  const strap = built(
    buildStrap(wish("three-hemmed", 1.25 * INCH, { materials: { outer: "outer", padding: "padding" } }), flat),
  );
  expect(strap.cutWidth).toBeCloseTo(3.75 * INCH, 9);
  const padding = strap.pieces.find((piece) => piece.materialId === "padding")!;
  const narrower = strap.finishedWidth - ringBox(padding.outline.outer).maxY;
  expect(narrower).toBeGreaterThan(0);
  expect(narrower).toBeLessThan(INCH / 16);
});

test("1.9: a strip with its edges turned to the middle is cut twice its width", () => {
  expect(cutAtNoThickness("two-layer", 30)).toBeCloseTo(60, 9);
});

test("1.10: two strips sewn at 1/2 in and turned: 3 in makes 2 in", () => {
  expect(cutAtNoThickness("sewn-turned", 2 * INCH, { folds: { seamAllowance: INCH / 2 } })).toBeCloseTo(
    3 * INCH,
    9,
  );
});

test("1.11: the same at 1/4 in with padding: 1 3/4 in makes 1 1/4 in, padding as wide as the strap", () => {
  const folds = { seamAllowance: INCH / 4 };
  const materials = { outer: "outer", padding: "padding" };
  const strap = built(buildStrap(wish("sewn-turned", 1.25 * INCH, { folds, materials }), flat));
  expect(strap.cutWidth).toBeCloseTo(1.75 * INCH, 9);
  const padding = strap.pieces.find((piece) => piece.materialId === "padding")!;
  expect(ringBox(padding.outline.outer).maxY).toBeCloseTo(1.25 * INCH, 9);
});

test("1.12: vinyl cut 1/2 in wider than the cloth shows 1/4 in on the back, both sides together, less thickness", () => {
  // Exact arithmetic: with the same allowance on both, the outer goes round by half the difference. The trade's
  // "1/4 in each side" is the sum of both sides: 1/8 in each.
  const folds = { seamAllowance: INCH / 4, reveal: INCH / 8 };
  const materials = { outer: "outer", facing: "facing" };
  const strap = built(buildStrap(wish("sewn-turned", 1.5 * INCH, { folds, materials }), flat));
  const facing = strap.pieces.find((piece) => piece.materialId === "facing")!;
  expect(strap.cutWidth - ringBox(facing.outline.outer).maxY).toBeCloseTo(INCH / 2, 9);
});

test("1.13 and trap 0.2: a 1/2 in tube at 1/4 in is cut 1 1/2 in, not 1 1/4", () => {
  expect(cutAtNoThickness("tube", INCH / 2, { folds: { seamAllowance: INCH / 4 } })).toBeCloseTo(1.5 * INCH, 9);
});

test.each([
  ["1.14", 9, 6],
  ["1.15", 8, 7],
])("%s: a tube %s mm wide at %s mm is cut 30 mm", (_, width, seamAllowance) => {
  expect(cutAtNoThickness("tube", width, { folds: { seamAllowance } })).toBeCloseTo(30, 9);
});

test("1.16: a tube is sewn about 7 % longer and trimmed", () => {
  const tube = built(buildStrap(wish("tube", 9, { folds: { seamAllowance: 6 } }), [material("woven", 0.3)]));
  expect(tube.cautions.map((caution) => cautionText(caution, CAUTION_TABLES.en)).join(" ")).toContain("7 % longer");
  expect(built(buildStrap(wish("fourfold", 25), flat)).cautions).not.toContainEqual({ code: "tube-ends" });
});

test("1.17: a single raw-edge strap has no allowance", () => {
  const strap = built(buildStrap(wish("bonded", INCH, { folds: { layers: 1 } }), [material("leather", 2)]));
  expect(strap.cutWidth).toBeCloseTo(INCH, 9);
});

test("1.18: bonded layers may be cut 2 to 3 mm over on each side and trimmed (trim from memory)", () => {
  const strap = built(
    buildStrap(wish("bonded", 25, { folds: { layers: 2, trim: 2.5 } }), [material("leather", 2)]),
  );
  expect(strap.cutWidth).toBeCloseTo(30, 9);
  expect(strap.finishedWidth).toBeCloseTo(25, 9);
});

test("1.19: a sleeve of cloth round 38 × 2 mm webbing: 156 mm without thickness, and just under the trade's range with it", () => {
  const core = { webbingWidth: 38, webbingThickness: 2 };
  expect(cutAtNoThickness("webbing-sleeve", 38, { core })).toBeCloseTo(156, 9);
  const cotton = built(buildStrap(wish("webbing-sleeve", null, { core }), [material("woven", 0.3)]));
  expect(cotton.cutWidth).toBeGreaterThan(4 * 38 + 4);
  expect(cotton.cutWidth).toBeLessThan(4 * 38 + 13);
});

test.each([
  ["1.20", 1.25, 17 / 32, 3 + 9 / 16],
  ["1.21", 1, 1 / 4, 2.5],
])("%s: webbing of %s in covered once, edges turned %s in, takes %s in", (_, inches, turn, expected) => {
  const core = { webbingWidth: inches * INCH, webbingThickness: 0.1 };
  const cut = cutAtNoThickness("webbing-sleeve", inches * INCH, { core, folds: { layers: 1, turn: turn * INCH } });
  // The rule leaves the webbing's own thickness out.
  expect(cut - 0.2).toBeCloseTo(expected * INCH, 9);
});

test("1.20: webbing is bought 2 in longer than the strap", () => {
  const strap = built(buildStrap(wish("webbing-sleeve", 38), [material("woven", 0.3)]));
  const webbing = strap.consumables.find((one) => one.kind === "webbing")!;
  expect(webbing.mm - strap.lengths.cut).toBeCloseTo(2 * INCH, 9);
});

test("1.22: an overlay on 38 mm webbing, 3 mm bare, 8 mm turned under, is cut 48 mm", () => {
  const folds = { margin: 3, turn: 8 };
  expect(cutAtNoThickness("webbing-overlay", 38, { folds })).toBeCloseTo(48, 9);
});

test.each([
  ["1.23", 10, 0, 43.4],
  ["1.24", 10, 1, 46.6],
  ["1.24", 12, 1, 52.8],
])(
  "%s: a cord of %s mm in %s mm material at 6 mm is covered by %s mm (geometry; mid-plane model)",
  (_, cordDiameter, thickness, expected) => {
    const strap = built(
      buildStrap(wish("corded", null, { core: { cordDiameter }, folds: { seamAllowance: 6 } }), [
        material("leather", thickness),
      ]),
    );
    expect(strap.cutWidth).toBeCloseTo(expected, 1);
  },
);

test("1.25: the wrap is to be measured with the actual leather", () => {
  const strap = built(buildStrap(wish("corded", null, { core: { cordDiameter: 10 } }), [material("leather", 1.6)]));
  expect(strap.steps.map((step) => phraseText(step, String, STRAP_WORDS.en)).join(" ")).toMatch(
    /Wrap a piece .* measure it/u,
  );
});

test("1.26 and 1.27: a corded handle of 46 in with 4 in ends: cord 38 in, leather 54 in", () => {
  const length = { kind: "finished", mm: 46 * INCH } as const;
  const strap = built(
    buildStrap(wish("corded", null, { core: { cordDiameter: 10 }, length }), [material("leather", 1.6)]),
  );
  expect(strap.lengths.cut).toBeCloseTo(54 * INCH, 6);
  expect(strap.consumables.find((one) => one.kind === "cord")?.mm).toBeCloseTo(38 * INCH, 6);
});

test("1.28 and 1.29: a ring tab is cut 3 in: two legs of 1 in and an inch round the ring", () => {
  const length = { kind: "finished", mm: 3 * INCH } as const;
  const strap = built(buildStrap(wish("tab", INCH, { length }), [material("woven", 0.3)]));
  expect(strap.lengths.cut).toBeCloseTo(2 * INCH + INCH, 9);
  expect(phraseText(strap.steps.at(-1)!, String, STRAP_WORDS.en)).toContain("3/4 to 1 in below");
});

test.each([1, 1.25, 1.5])(
  "1.30 and 1.31: two-part strap for %s in hardware: short 10 in, long 52 in, both 4 × wide",
  (inches) => {
    const length = { kind: "cut", mm: 52 * INCH } as const;
    const strap = built(buildStrap(wish("fourfold", inches * INCH, { length, adjustment: "two-part" }), flat));
    const sizes = strap.pieces.map((piece) => ringBox(piece.outline.outer));
    expect(sizes.map((box) => box.maxX / INCH)).toEqual([expect.closeTo(10, 9), expect.closeTo(52, 9)]);
    for (const box of sizes) expect(box.maxY / INCH).toBeCloseTo(4 * inches, 9);
  },
);

test("1.32: a one-piece strap cut 60 in, ends folded 1/4 in then 1 in, topstitched 1/8 in: 57 1/2 in effective", () => {
  const length = { kind: "cut", mm: 60 * INCH } as const;
  const strap = built(
    buildStrap(wish("fourfold", 38, { length, adjustment: "one-piece" }), [material("woven", 0.3)]),
  );
  expect(strap.lengths.finished / INCH).toBeCloseTo(57.5, 9);
  expect(TRADE.topstitchFromEdge / INCH).toBeCloseTo(1 / 8, 9);
});

test("1.33 and 1.34: two folded ends take 3 to 4 in; leather and vinyl fold back about 2 in", () => {
  const length = { kind: "finished", mm: 1000 } as const;
  const strap = built(
    buildStrap(wish("fourfold", 38, { length, adjustment: "one-piece" }), [material("vinyl", 1)]),
  );
  const added = (strap.lengths.cut - 1000) / INCH;
  expect(added).toBeCloseTo(4, 9);
});

test("1.35: worn lengths of 152 cm with folds of 3.1 cm, 5 cm doubled (exact arithmetic on the stated model)", () => {
  const range = adjustableRange(152, 6.2, 5);
  expect(range).toMatchObject({ effective: 145.8, longest: 140.8, shortest: 72.9 });
});

test("1.36: the same in inches (exact arithmetic on the stated model)", () => {
  expect(adjustableRange(60, 2.5, 2)).toEqual({ effective: 57.5, longest: 55.5, shortest: 28.75 });
});

test("0.13: a drop of 8 in is cut 20 in", () => {
  expect(cutFromDrop(8 * INCH, 2 * INCH) / INCH).toBeCloseTo(20, 9);
  const strap = built(buildStrap(wish("fourfold", 25, { length: { kind: "drop", mm: 8 * INCH } }), flat));
  expect(strap.lengths.cut / INCH).toBeCloseTo(20, 9);
  expect(strap.lengths.items.reduce((sum, item) => sum + item.mm, 0)).toBeCloseTo(strap.lengths.cut, 9);
});

test("1.42: grocery handles 3 × 42 in: twelve from a yard of 45 in cloth", () => {
  expect(rollLengthFor(12, 3 * INCH, 42 * INCH, 45 * INCH)).toBeLessThanOrEqual(36 * INCH + 1e-6);
  expect(rollLengthFor(13, 3 * INCH, 42 * INCH, 45 * INCH)).toBeGreaterThan(36 * INCH);
});

test.each([
  [34, "problem"],
  [36, "fits"],
  [40, "fits"],
  [41, "loose"],
])("1.46: a strap of 38 mm and a ring of %s mm: %s", (innerWidth, outcome) => {
  const result = buildStrap(wish("fourfold", 38, { hardware: [{ kind: "ring", innerWidth }] }), [
    material("vinyl", 1),
  ]);
  if (outcome === "problem") {
    const problems: readonly Problem[] = result.ok ? [] : result.problems;
    expect(problems).toMatchObject([{ code: "strap-hardware-narrow", leastMm: 36 }]);
  } else expect(codes(built(result)).includes("ring-loose")).toBe(outcome === "loose");
});

test("1.47: four layers of 1 mm need a slider opening of 16 mm", () => {
  const slider = (opening: number) => [{ kind: "slider" as const, innerWidth: 38, opening }];
  const strap = (opening: number) =>
    built(buildStrap(wish("fourfold", 38, { hardware: slider(opening) }), [material("vinyl", 1)]));
  expect(codes(strap(16))).not.toContain("slider-tight");
  expect(codes(strap(15.9))).toContain("slider-tight");
  expect(strap(15.9).warnings.find((one) => one.code === "slider-tight")?.lengths["needed"]).toBe(16);
});

test("1.48: a thin strap slips on a slider with a fixed bar", () => {
  const hardware = [{ kind: "slider" as const, innerWidth: 25, opening: 6, fixedBar: true }];
  expect(codes(built(buildStrap(wish("fourfold", 25, { hardware }), [material("woven", 0.3)])))).toContain(
    "slider-fixed-bar",
  );
});

test("1.49: trade widths of webbing", () => expect(WEBBING_WIDTHS).toEqual([10, 15, 20, 25, 30, 38, 50, 75]));

test("2.16: tucked ends double a fourfold strap to eight layers", () => {
  const ends = [{ style: "tucked" }, { style: "raw" }] as const;
  const strap = built(buildStrap(wish("fourfold", 38, { ends }), [material("vinyl", 1)]));
  expect(strap.needle.at(-1)).toMatchObject({ layers: 8, thickness: 8 });
});

test("the strap of the trade: 1 in fourfold is 3 7/8 in at 1.0 mm, 4 in at 0.3 mm; in three 3 in at 0.95 mm stays 1/8 in short", () => {
  const vinyl = built(buildStrap(wish("fourfold", INCH), [material("vinyl", 1)]));
  expect(Math.abs(vinyl.cutWidth - 3.875 * INCH)).toBeLessThan(INCH / 32);
  const cotton = built(buildStrap(wish("fourfold", INCH), [material("woven", 0.3)]));
  expect(Math.abs(cotton.cutWidth - 4 * INCH)).toBeLessThan(INCH / 16);
  const cut = { width: { kind: "cut", mm: 3 * INCH } } as const;
  const three = built(buildStrap(wish("three-raw", null, cut), [material("vinyl", 0.95)]));
  expect(Math.abs(three.setback - INCH / 8)).toBeLessThan(INCH / 32);
});

test.each([
  ["6.1", "full", 5 * INCH, 5 * INCH],
  ["6.2", "reduced", 5 * INCH, 3.75 * INCH],
  ["6.2", "reduced", 6 * INCH, 4.5 * INCH],
  ["6.3", "quarter", 120, 30],
] as const)("%s: %s interfacing of a %s mm strip is %s mm wide", (_, interfacing, cut, expected) => {
  const materials = { outer: "outer", interfacing: "inside" };
  const width = { kind: "cut", mm: cut } as const;
  const strap = built(
    buildStrap(wish("fourfold", null, { width, interfacing, materials }), [
      ...flat,
      material("interfacing", 0, "inside"),
    ]),
  );
  const piece = strap.pieces.find((one) => one.materialId === "inside")!;
  expect(ringBox(piece.outline.outer).maxY).toBeCloseTo(expected, 6);
});
