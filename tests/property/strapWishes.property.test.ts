import fc from "fast-check";
import { expect, test } from "vitest";
import { strapPictures } from "../../src/core/drawing/strap/strapPictures.ts";
import { ringBox } from "../../src/core/geometry/box.ts";
import { MATERIAL_KINDS } from "../../src/core/materials/material.ts";
import { problemLine } from "../../src/core/problems/describeProblem.ts";
import { buildStrap } from "../../src/core/straps/build/buildStrap.ts";
import type { StrapMaterial } from "../../src/core/straps/wish/strapWish.ts";
import { CONSTRUCTION_IDS, type StrapWish } from "../../src/core/straps/wish/strapWish.ts";
import { phraseText } from "../../src/core/words/phrase.ts";
import { STRAP_WORDS } from "../../src/core/words/words.ts";
import { svgText } from "../../src/export/svg/svgText.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Most makers say little: three in four leave a choice out. */
const maybe = <T>(of: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: of });
/** Mostly sound numbers, now and then one that no strap can have. */
const wild = (min: number, max: number) =>
  fc.oneof(
    { weight: 20, arbitrary: mm(min, max) },
    fc.constantFrom(0, -1, 1e9, Number.NaN, Number.POSITIVE_INFINITY),
  );

const material = (id: string): fc.Arbitrary<StrapMaterial> =>
  fc.record({
    id: fc.constant(id),
    name: fc.constant(id),
    kind: fc.constantFrom(...MATERIAL_KINDS),
    thickness: mm(0, 3),
    backing: fc.constantFrom("woven", "knit", "none", "unknown"),
    fold: fc.record({ neutral: maybe(mm(0, 1)), leastRadius: maybe(mm(0, 2)), clearance: maybe(mm(0, 1)) }),
    usableWidth: maybe(mm(200, 1600)),
    longestPiece: maybe(mm(200, 3000)),
  });

const end = fc.record({
  style: fc.constantFrom("raw", "seam", "tucked", "fold-back", "doubled"),
  allowance: maybe(wild(0, 120)),
});

const wishes: fc.Arbitrary<StrapWish> = fc.record({
  id: fc.constant("s"),
  name: fc.constantFrom("Strap", "Ω & <b>", "strap, long"),
  construction: fc.constantFrom(...CONSTRUCTION_IDS),
  count: fc.integer({ min: 1, max: 20 }),
  width: fc.option(fc.record({ kind: fc.constantFrom("finished", "cut"), mm: wild(5, 150) }), { nil: undefined }),
  length: fc.record({ kind: fc.constantFrom("finished", "cut", "drop", "worn"), mm: wild(50, 2500) }),
  materials: fc.record({
    outer: fc.constant("a"),
    facing: maybe(fc.constantFrom("b", "missing")),
    interfacing: maybe(fc.constant("c")),
    padding: maybe(fc.constant("d")),
  }),
  grain: maybe(fc.constantFrom("lengthwise", "crosswise", "either")),
  adjustment: maybe(fc.constantFrom("fixed", "one-piece", "two-part")),
  ends: maybe(fc.tuple(end, end)),
  interfacing: maybe(fc.constantFrom("none", "full", "reduced", "quarter")),
  core: maybe(
    fc.record({
      webbingWidth: maybe(wild(10, 75)),
      webbingThickness: maybe(mm(0.5, 4)),
      cordDiameter: maybe(wild(3, 20)),
    }),
  ),
  hardware: maybe(
    fc.array(
      fc.record({
        kind: fc.constantFrom("ring", "slider", "clasp"),
        innerWidth: wild(10, 80),
        opening: maybe(mm(2, 30)),
        bar: maybe(mm(1, 6)),
        fixedBar: maybe(fc.boolean()),
      }),
      { maxLength: 2 },
    ),
  ),
  machine: maybe(fc.record({ maxThickness: maybe(mm(1, 12)), maxLayers: maybe(fc.integer({ min: 1, max: 12 })) })),
  folds: maybe(
    fc.record({
      crease: maybe(fc.constantFrom("hard", "soft")),
      clearance: maybe(mm(0, 1)),
      edgeGap: maybe(mm(0, 8)),
      setback: maybe(mm(0, 15)),
      hem: maybe(mm(1, 15)),
      reveal: maybe(mm(0, 15)),
      seamAllowance: maybe(mm(1, 25)),
      margin: maybe(mm(0, 15)),
      turn: maybe(mm(2, 20)),
      trim: maybe(mm(0, 5)),
      layers: maybe(fc.integer({ min: 0, max: 4 })),
    }),
  ),
  joins: maybe(
    fc.record({ allowed: fc.boolean(), seam: maybe(fc.constantFrom("diagonal", "straight", "lapped")) }),
  ),
  cutBy: maybe(fc.constantFrom("fold", "trade")),
});

test("any wish is built soundly or refused in words", () => {
  let built = 0;
  fc.assert(
    fc.property(wishes, material("a"), material("b"), material("c"), material("d"), (wish, ...materials) => {
      const result = buildStrap(wish, materials);
      if (!result.ok) {
        expect(result.problems.length).toBeGreaterThan(0);
        for (const problem of result.problems) expect(problemLine(problem)).not.toMatch(/NaN mm|undefined/u);
        return;
      }
      built++;
      const strap = result.value;
      for (const piece of strap.pieces) {
        const box = ringBox(piece.outline.outer);
        expect(box.maxX, piece.id).toBeGreaterThan(0);
        expect(box.maxY, piece.id).toBeGreaterThan(0);
        for (const { contour } of piece.lines) {
          expect(contour.vertices[1]).toBeGreaterThanOrEqual(-1e-9);
          expect(contour.vertices[1]).toBeLessThanOrEqual(box.maxY + 1e-9);
        }
      }
      expect(strap.lengths.items.reduce((sum, item) => sum + item.mm, 0)).toBeCloseTo(strap.lengths.cut, 6);
      for (const said of [...strap.steps, ...strap.warnings]) {
        for (const words of Object.values(STRAP_WORDS))
          expect(phraseText(said, String, words)).not.toMatch(/[{}]|NaN|undefined|Infinity/u);
      }
      for (const one of strap.consumables) expect(one.mm).toBeGreaterThan(0);
      for (const { drawing, caption } of strapPictures(strap)) svgText(drawing, { title: caption });
    }),
    { numRuns: 1500 },
  );
  // The test would be worthless if nearly everything were refused.
  expect(built).toBeGreaterThan(150);
});
