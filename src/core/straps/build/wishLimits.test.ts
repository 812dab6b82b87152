// Every number of a wish has a least and a most, both taken; a hair beyond is refused with both. Our own limits.
import { expect, test } from "vitest";
import { MATERIALS, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import type { ConstructionId, FoldChoices, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";

type Row = readonly [
  path: string,
  least: number,
  most: number,
  construction: ConstructionId,
  of: (mm: number) => Partial<StrapWish>,
];
const fold =
  (choice: keyof FoldChoices, more: FoldChoices = {}) =>
  (mm: number): Partial<StrapWish> => ({ folds: { ...more, [choice]: mm } });
const padded = { outer: "cotton", padding: "foam" };

const ROWS: readonly Row[] = [
  ["width", 0.1, 2000, "fourfold", (mm) => ({ width: { kind: "finished", mm } })],
  ["length", 1, 100_000, "fourfold", (mm) => ({ length: { kind: "finished", mm } })],
  ["core.cordDiameter", 0.5, 100, "corded", (cordDiameter) => ({ width: undefined, core: { cordDiameter } })],
  ["core.webbingWidth", 1, 500, "webbing-sleeve", (webbingWidth) => ({ width: undefined, core: { webbingWidth } })],
  ["core.webbingThickness", 0.1, 25, "webbing-sleeve", (webbingThickness) => ({ core: { webbingThickness } })],
  ["shortPart", 10, 10_000, "fourfold", (shortPart) => ({ adjustment: "two-part", shortPart })],
  [
    "endThickness",
    0.1,
    50,
    "fourfold",
    (endThickness) => ({ endThickness, ends: [{ style: "tucked" }, { style: "tucked" }] }),
  ],
  ["stitch.length", 0.5, 15, "fourfold", (length) => ({ stitch: { length } })],
  ["stitch.fromEdge", 0.5, 100, "fourfold", (fromEdge) => ({ stitch: { fromEdge } })],
  ["machine.maxThickness", 0.1, 100, "fourfold", (maxThickness) => ({ machine: { maxThickness } })],
  ["hardware[0].innerWidth", 1, 1000, "fourfold", (innerWidth) => ({ hardware: [{ kind: "ring", innerWidth }] })],
  [
    "hardware[1].innerWidth",
    1,
    1000,
    "fourfold",
    (innerWidth) => ({
      hardware: [
        { kind: "ring", innerWidth: 38 },
        { kind: "clasp", innerWidth },
      ],
    }),
  ],
  [
    "ends[1].allowance",
    0,
    1000,
    "fourfold",
    (allowance) => ({ ends: [{ style: "raw" }, { style: "seam", allowance }] }),
  ],
  ["folds.edgeGap", 0, 100, "fourfold", fold("edgeGap")],
  ["folds.clearance", 0, 1, "fourfold", fold("clearance")],
  ["folds.setback", 0, 100, "three-raw", fold("setback")],
  ["folds.hem", 1, 50, "three-hemmed", fold("hem")],
  ["folds.paddingPressed", 0.05, 1, "three-hemmed", (mm) => ({ ...fold("paddingPressed")(mm), materials: padded })],
  ["folds.reveal", 0, 50, "two-layer", fold("reveal")],
  ["folds.seamAllowance", 1, 50, "tube", fold("seamAllowance")],
  ["folds.margin", 0, 50, "webbing-overlay", fold("margin")],
  ["folds.turn", 2, 50, "webbing-overlay", fold("turn")],
  ["folds.trim", 0, 25, "bonded", fold("trim")],
  ["folds.layers", 1, 3, "bonded", fold("layers")],
];

/** What is refused at a place as too little or too much, with the limits that are told. */
function refused(path: string, construction: ConstructionId, more: Partial<StrapWish>): readonly unknown[] {
  const outer = construction === "webbing-sleeve" || construction === "tube" ? "cotton" : "vinyl";
  const built = buildStrap({ ...wish(construction, outer), ...more }, MATERIALS);
  const problems = built.ok ? [] : built.problems;
  return problems.flatMap((problem) => {
    if (!("path" in problem) || problem.path !== path) return [];
    if (problem.code === "length-out-of-range") return [[problem.minMm, problem.maxMm]];
    return problem.code === "strap-choice-out-of-range" ? [[problem.least, problem.most]] : [];
  });
}

test.each(ROWS)("%s from %d to %d", (path, least, most, construction, of) => {
  // Layers are whole numbers.
  const hair = path === "folds.layers" ? 1 : 1e-6;
  for (const good of [least, most]) expect(refused(path, construction, of(good)), String(good)).toEqual([]);
  for (const bad of [least - hair, most + hair])
    expect(refused(path, construction, of(bad)), String(bad)).toContainEqual([least, most]);
});

test("skived to a tenth of a millimetre at least; to no layers and a half", () => {
  const skived = (mm: number) => refused("folds.turnedThickness", "two-layer", fold("turnedThickness")(mm));
  expect(skived(0.1)).toEqual([]);
  expect(skived(0.09)).toEqual([[0.1, 50]]);
  expect(skived(50.1)).toEqual([[0.1, 50]]);
  expect(skived(1.2)).toEqual([[0.1, 1]]);
  expect(refused("folds.layers", "bonded", fold("layers")(1.5))).not.toEqual([]);
  for (const layers of [2, 3])
    expect(refused("folds.layers", "webbing-sleeve", fold("layers")(layers))).toEqual([[1, 1]]);
});

// Common practice, no source: 0.9 mm faux leather is folded in four by hand, 2.1 mm is not; see each construction.
const THICKEST: readonly (readonly [ConstructionId, number, Wish])[] = [
  ["fourfold", 2, {}],
  ["three-raw", 2.5, {}],
  ["three-hemmed", 1.5, {}],
  ["two-layer", 2, {}],
  ["sewn-turned", 1.5, {}],
  ["tube", 1.2, {}],
  ["bonded", 6, {}],
  ["webbing-overlay", 1.5, {}],
  ["webbing-sleeve", 1.2, {}],
  ["corded", 2.5, { width: null, core: { cordDiameter: 30 } }],
  ["tab", 2, {}],
];

test.each(THICKEST)("%s takes a layer of %d mm and none thicker", (construction, most, more) => {
  for (const [thickness, isTaken] of [
    [most, true],
    [most + 1e-6, false],
  ] as const) {
    const outer = { id: "hide", name: "hide", kind: "leather", thickness, backing: "none", fold: {} } as const;
    const built = buildStrap(wish(construction, "hide", { width: 90, ...more }), [outer]);
    const thick = (built.ok ? [] : built.problems).filter(({ code }) => code === "strap-too-thick");
    expect(thick.length, `${thickness} mm`).toBe(isTaken ? 0 : 1);
    if (!isTaken) expect(thick).toMatchObject([{ mostMm: most, thicknessMm: thickness }]);
    if (isTaken) expect(built.ok).toBe(true);
  }
});
