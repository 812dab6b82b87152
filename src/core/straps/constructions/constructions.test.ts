// Each construction reckoned by hand: on paper without thickness, 40 mm wide, at the trade's usual figures (common
// practice, no source): seam and hem 6.35 mm, stitches 3.175 mm from the edge, edges shown 3.175 mm.
import { expect, test } from "vitest";
import { of, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import { buildStrap } from "../build/buildStrap.ts";
import type { StrapResult } from "../build/strapResult.ts";
import type { SolvedSection } from "../section/foldSection.ts";
import { levelThicknesses } from "../section/foldSection.ts";
import { CONSTRUCTION_IDS, type ConstructionId } from "../wish/strapWish.ts";
import { CONSTRUCTIONS } from "./catalogue.ts";

const MATERIALS = [
  of("paper", "vinyl", 0),
  of("vinyl", "vinyl", 1),
  of("foam", "padding", 5),
  of("thin", "vinyl", 0.5),
];
function strap(construction: ConstructionId, outer: string, more: Wish = {}): StrapResult {
  const width = construction === "corded" ? null : 40;
  const core = construction === "corded" ? { cordDiameter: 10 } : undefined;
  const built = buildStrap(wish(construction, outer, { width, core, ...more }), MATERIALS);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value;
}

interface Strip {
  readonly cut: number;
  readonly folds: readonly number[];
  readonly stitches: readonly number[];
}
/** Seams 6.35 mm in; the face begins and ends 1 mm in, behind a fold. */
const SEWN = [6.35, 5.35 + Math.PI + 2.175, 43.35 + Math.PI - 2.175, 42.35 + 2 * Math.PI];
const BY_HAND: readonly (readonly [string, ConstructionId, Wish, readonly Strip[]])[] = [
  [
    "quarters, the second one outside",
    "fourfold",
    {},
    [{ cut: 160, folds: [40, 80, 120], stitches: [43.175, 76.825] }],
  ],
  ["the same", "tab", {}, [{ cut: 160, folds: [40, 80, 120], stitches: [43.175, 76.825] }]],
  // Hidden run 40 − 3.175, face, back 40 − 3.175, hem 6.35; stitches as far from the hem's fold as from the other.
  [
    "in three with a hem",
    "three-hemmed",
    {},
    [{ cut: 120, folds: [36.825, 76.825, 113.65], stitches: [43.175, 73.65] }],
  ],
  [
    "two strips, the facing narrower by what shows",
    "two-layer",
    {},
    [
      { cut: 80, folds: [20, 60], stitches: [26.35, 53.65] },
      { cut: 67.3, folds: [16.825, 50.475], stitches: [20, 47.3] },
    ],
  ],
  [
    "two strips sewn together: the seam is stitched and folded",
    "sewn-turned",
    {},
    [
      { cut: 52.7, folds: [6.35, 46.35], stitches: [6.35, 9.525, 43.175, 46.35] },
      { cut: 52.7, folds: [6.35, 46.35], stitches: [6.35, 9.525, 43.175, 46.35] },
    ],
  ],
  // The outer strip goes round by 2 mm on each side, the facing stops as much before.
  [
    "the same with a reveal",
    "sewn-turned",
    { folds: { reveal: 2 } },
    [
      { cut: 56.7, folds: [8.35, 48.35], stitches: [6.35, 13.525, 43.175, 50.35] },
      { cut: 48.7, folds: [6.35, 42.35], stitches: [6.35, 9.525, 39.175, 42.35] },
    ],
  ],
  [
    "once round, the seam on its right edge",
    "tube",
    {},
    [{ cut: 92.7, folds: [6.35, 46.35, 86.35], stitches: [6.35, 49.525, 83.175, 86.35] }],
  ],
  // Padding of 5 mm, pressed to 2: folds 1 mm wide inside lie round it.
  [
    "with padding inside",
    "sewn-turned",
    { materials: { outer: "paper", padding: "foam" } },
    [{ cut: 2 * 5.35 + 38 + 2 * Math.PI, folds: [5.35 + Math.PI / 2, 5.35 + 38 + 1.5 * Math.PI], stitches: SEWN }],
  ],
  [
    "with padding, in three with a hem",
    "three-hemmed",
    { materials: { outer: "paper", padding: "foam" } },
    [
      {
        cut: 34.825 + 38 + 35.825 + 6.35 + 2 * Math.PI,
        folds: [34.825 + Math.PI / 2, 72.825 + 1.5 * Math.PI, 108.65 + 2 * Math.PI],
        stitches: [34.825 + Math.PI + 5.35, 72.825 + Math.PI - 2.175],
      },
    ],
  ],
  ["flat", "bonded", { folds: { layers: 1 } }, [{ cut: 40, folds: [], stitches: [3.175, 36.825] }]],
  // 3 mm of webbing bare on each side, 8 mm turned under.
  ["on a webbing", "webbing-overlay", {}, [{ cut: 50, folds: [8, 42], stitches: [11.175, 38.825] }]],
  // Four times the webbing and twice its 2 mm; each raw edge goes round half of them.
  ["round a webbing", "webbing-sleeve", {}, [{ cut: 164, folds: [41, 82, 123], stitches: [44.175, 77.825] }]],
  [
    "once round a webbing, edges turned under in the middle of the back",
    "webbing-sleeve",
    { folds: { layers: 1 } },
    [{ cut: 96.7, folds: [6.35, 27.35, 69.35, 90.35], stitches: [31.525, 65.175] }],
  ],
];

test.each(BY_HAND)("%s: %s", (_, construction, more, strips) => {
  const { pieces, finishedWidth } = strap(construction, "paper", more);
  expect(finishedWidth).toBe(40);
  const lines = (piece: number, role: string) =>
    pieces[piece]!.lines.filter((line) => line.role === role)
      .map(({ contour }) => contour.vertices[1]!)
      .sort((a, b) => a - b);
  const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 6));
  for (const [i, { cut, folds, stitches }] of strips.entries()) {
    expect(pieces[i]!.contour.vertices[7]).toBeCloseTo(cut, 9);
    expect(lines(i, "fold")).toEqual(near(folds));
    expect(lines(i, "stitch")).toEqual(near(stitches));
  }
});

/** Layers from the left edge to the right one, cloth of 1 mm; what lies in a fold counts on both its sides. */
const LAYERS: readonly (readonly [ConstructionId, Wish, readonly number[]])[] = [
  ["fourfold", {}, [4, 2]],
  ["three-raw", {}, [2, 3, 2]],
  ["three-hemmed", {}, [2, 4, 3, 2]],
  ["two-layer", {}, [2, 4, 2, 4, 2]],
  ["sewn-turned", {}, [4, 2, 4]],
  ["tube", {}, [2, 4]],
  ["bonded", {}, [2]],
  ["bonded", { folds: { layers: 3 } }, [3]],
  ["webbing-overlay", {}, [1, 3, 2, 3, 1]],
  ["webbing-sleeve", {}, [5, 4, 2]],
  ["webbing-sleeve", { folds: { layers: 1 } }, [2, 3, 4, 3, 2]],
  ["sewn-turned", { materials: { outer: "vinyl", padding: "foam" } }, [4, 5, 3, 5, 4]],
];

test.each(LAYERS)("layers across a strap %s, %o", (construction, more, layers) => {
  const { across, section } = strap(construction, "vinyl", more);
  expect(across!.map((span) => span.layers)).toEqual(layers);
  expect([across![0]!.from, across!.at(-1)!.to]).toEqual([0, 40]);
  for (const [i, span] of across!.entries()) if (i > 0) expect(span.from).toBe(across![i - 1]!.to);
  expect(section.kind).toBe("layered");
});

test("padding in three lies a shade inside the strap: half of 1.5 mm and the cloth on its right, behind the fold on its left", () => {
  const { across } = strap("three-hemmed", "vinyl", { materials: { outer: "vinyl", padding: "foam" } });
  // Cloth of 1 mm and padding of 2 mm.
  const padded = across!.filter(({ thickness }) => thickness >= 4);
  expect([padded[0]!.from, padded.at(-1)!.to]).toEqual([expect.closeTo(1.75, 9), expect.closeTo(40 - 1.75, 9)]);
});

test("a sleeve in cloth of 1 mm round 2 mm of webbing, by hand: four runs, its folds, and a corner at each raw edge", () => {
  // From the left fold's axis, 1 mm in, to the axis on the right, 2 mm in: 37 of 40 mm. Folds at mid-depth round nothing,
  // round two layers and the webbing, and round nothing; a quarter turn and what is left of 1 mm at each edge.
  const folds = Math.PI * (0.5 + 1.5 + 0.5) + 2;
  expect(strap("webbing-sleeve", "vinyl").cutWidth).toBeCloseTo(4 * 37 + folds + 2 * (Math.PI / 4 + 0.5), 9);
});

test("every level of a stack holds something, but for the padding's where there is none", () => {
  for (const construction of CONSTRUCTION_IDS) {
    if (construction === "corded") continue;
    for (const folds of [{}, ...CONSTRUCTIONS[construction].layerChoices.map((layers) => ({ layers }))])
      for (const padding of [undefined, "foam"]) {
        if (padding && !CONSTRUCTIONS[construction].roles.padding) continue;
        const { section } = strap(construction, "thin", { folds, materials: { outer: "thin", padding } });
        const levels = levelThicknesses((section as SolvedSection).plan);
        const empty = levels.flatMap((thickness, level) => (thickness === 0 ? [level] : []));
        expect(empty, construction).toEqual(construction === "three-hemmed" && !padding ? [1] : []);
      }
  }
});

test("seam allowances and edges turned to the middle let what lies on them sink; whole layers keep it level", () => {
  const settled = CONSTRUCTION_IDS.filter(
    (id) => id !== "corded" && (strap(id, "thin").section as SolvedSection).plan.settles,
  );
  expect(settled).toEqual(["three-hemmed", "sewn-turned", "tube", "webbing-overlay"]);
  expect((strap("webbing-sleeve", "thin", { folds: { layers: 1 } }).section as SolvedSection).plan.settles).toBe(
    true,
  );
});

test("raw edges are held back: half a layer or a whole one, where the construction's usual clearance says so", () => {
  // The sleeve's edges come half a layer short of the middle of a 2 mm webbing's edge.
  expect(strap("webbing-sleeve", "vinyl").setback).toBeCloseTo(0.5, 9);
  expect(strap("webbing-sleeve", "vinyl", { folds: { clearance: 0 } }).setback).toBeCloseTo(0, 9);
  // A thin webbing is gone before that: its edges do not come out.
  const thin = { core: { webbingWidth: 38, webbingThickness: 0.4 }, width: null };
  expect(strap("webbing-sleeve", "vinyl", thin).setback).toBeCloseTo(0.2, 9);
  expect(strap("two-layer", "vinyl").setback).toBeCloseTo(0.5, 9);
  expect(strap("three-hemmed", "vinyl").setback).toBeCloseTo(3.175, 9);
  expect(strap("three-hemmed", "vinyl", { folds: { setback: 5 } }).setback).toBe(5);
  expect([strap("tube", "vinyl").setback, strap("bonded", "vinyl").setback]).toEqual([0, 0]);
  expect(strap("tab", "vinyl").setback).toBeCloseTo(strap("fourfold", "vinyl").setback, 9);
  for (const layers of [1, 2, 3]) expect(strap("tab", "vinyl", { folds: { layers } }).setback).toBe(0);
});

test("with its own facing and in three layers the last one alone is faced", () => {
  const faced = (layers: number) =>
    strap("bonded", "vinyl", { folds: { layers }, materials: { outer: "vinyl", facing: "thin" } }).pieces.map(
      ({ materialId, count }) => [materialId, count],
    );
  expect(faced(3)).toEqual([
    ["vinyl", 2],
    ["thin", 1],
  ]);
  expect(faced(2)).toEqual([
    ["vinyl", 1],
    ["thin", 1],
  ]);
  expect(faced(1)).toEqual([["vinyl", 1]]);
});

test("layers, tape, raw edges and what may be asked for, by construction", () => {
  const facts = CONSTRUCTION_IDS.map((id) => {
    const { layers, tapeRuns, visibleEdges } = CONSTRUCTIONS[id];
    return [id, layers({}), tapeRuns({}), visibleEdges({})];
  });
  expect(facts).toEqual([
    ["fourfold", 4, 2, 0],
    ["three-raw", 3, 2, 1],
    ["three-hemmed", 3, 2, 0],
    ["two-layer", 4, 6, 0],
    ["sewn-turned", 2, 0, 0],
    ["tube", 2, 0, 0],
    ["bonded", 2, 0, 2],
    ["webbing-overlay", 1, 4, 0],
    ["webbing-sleeve", 4, 2, 0],
    ["corded", 1, 0, 2],
    ["tab", 4, 2, 0],
  ]);
  const tab = CONSTRUCTIONS.tab;
  expect([tab.layers({ layers: 1 }), tab.tapeRuns({ layers: 1 }), tab.visibleEdges({ layers: 1 })]).toEqual([
    1, 0, 2,
  ]);
  expect([tab.trim({}), tab.trim({ layers: 2 }), tab.trim({ layers: 2, trim: 3 })]).toEqual([0, 0, 3]);
});
