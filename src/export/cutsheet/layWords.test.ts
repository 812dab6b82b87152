import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { PIECES, PLAN, STOCK } from "../../../tests/tools/samplePlan.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { Material } from "../../core/materials/material.ts";
import { USUAL_OUTPUT } from "../../core/project/outputSettings.ts";
import type { Project } from "../../core/project/project.ts";
import { layWords, ruleCostWords } from "./layWords.ts";

const project: Project = {
  name: "Quay satchel",
  unit: "mm",
  bags: 1,
  currency: "EUR",
  materials: [],
  straps: [],
  panels: [],
  gap: 0,
  margin: 0,
  pins: [],
  output: { paper: "A4", ...USUAL_OUTPUT, lengths: "mm" },
};
const material = sampleMaterial("canvas");
const problem = { materialId: "canvas", pieces: [], stocks: [STOCK], gap: 0, margin: 0, pinned: [] };
const atBound: LayPlan = { ...PLAN, placements: [], uses: [{ stockId: "roll", usedLength: 630, bound: 630 }] };
const first = (plan: LayPlan) => layWords({ material, problem, plan }, project, "en")[0];

test("a length is called proven only when every piece has a place", () => {
  expect(first(atBound)).toBe("The pieces take 630 mm: proven shortest.");
  const missing = [{ pieceId: "body", count: 1, reason: "too-long-for-width" as const }];
  expect(first({ ...atBound, unplaced: missing })).toBe("The pieces that fit take 630 mm.");
});

const laid = (
  more: Partial<LayProblem>,
  own: Partial<Project> = {},
  cloth: Partial<Material> = {},
  plan: Partial<LayPlan> = {},
) => {
  const pieces = more.pieces ?? [piece("strap", 2)];
  const placements = PLAN.placements.filter(({ pieceId }) => pieces.some(({ id }) => id === pieceId));
  const used: LayPlan = { ...atBound, placements, ...plan };
  return {
    cloth: { material: { ...material, ...cloth }, problem: { ...problem, ...more, pieces }, plan: used },
    own: { ...project, ...own },
  };
};
const spoken = (...given: Parameters<typeof laid>) => {
  const { cloth, own } = laid(...given);
  return layWords(cloth, own, "en");
};
const piece = (id: string, count: number, gives?: object) =>
  ({
    id,
    count,
    outline: PIECES[0]!.outline,
    orientations: [],
    freeTurn: false,
    gives,
  }) as unknown as LayProblem["pieces"][0];
const spread = (more: object) =>
  ({ layers: 2, folded: false, faces: "up", asked: [], ...more }) as unknown as LayProblem["spread"];
const ROLL = { kind: "roll", id: "roll", width: 500, selvedge: 10, length: null, squaring: 20, flaws: [] } as const;

// By hand: 630 mm and 20 at each end to square the cloth.
test("cloth in layers is told how it is laid: lengths, faces and nap, repeats and lines, pairs and halves", () => {
  const stock = [ROLL];
  const up = spoken({ spread: spread({}) }, {}, { stock });
  expect(up[0]).toBe(
    "Lay 2 lengths of 670 mm on one another, each right side up, with one long edge and one end flush. Pin or weight them and cut through all.",
  );
  expect(spoken({ spread: spread({}) }, {}, { stock, oneWay: "up" as never })[0]).toContain(
    "and the nap the same way",
  );
  expect(spoken({ spread: spread({ faces: "together" }) }, {}, { stock })[0]).toContain("right side to right side");
  expect(spoken({ spread: spread({ folded: true }) }, {}, { stock })[0]).toMatch(/^Fold the cloth lengthwise/u);
  const repeat = {
    along: 60,
    across: null,
    firstAlong: 0,
    firstAcross: 0,
    halfDrop: false,
    symmetric: true,
    tolerance: 1,
  } as never;
  const repeats = (more: object, own = repeat) =>
    spoken({ spread: spread(more) }, {}, { stock, repeat: own }).join(" ");
  expect(repeats({})).toContain("a whole number of repeats of 60 mm further on");
  expect(repeats({ folded: true })).not.toContain("a whole number of repeats");
  expect(repeats({}, null as never)).not.toContain("a whole number of repeats");
  const given = (...pieces: LayProblem["pieces"]) =>
    spoken({ spread: spread({}), pieces }, {}, { stock }).join(" ");
  expect(given(piece("strap", 2, { of: "strap", asDrawn: 1, mirrored: 1 }))).toContain("as many mirror images");
  expect(given(piece("strap", 2, { of: "strap", asDrawn: 2, mirrored: 0 }))).not.toContain("as many mirror images");
  expect(given(piece("strap", 2, { of: "strap", asDrawn: 0, mirrored: 2 }))).not.toContain("as many mirror images");
  expect(given(piece("strap", 2, { of: "strap", asDrawn: 1, mirrored: 0, onFold: true }))).toContain(
    "Halves on the fold",
  );
  expect(given(piece("strap", 2))).not.toContain("Halves");
  // Leftovers beside the roll are cut singly, unless they are kept back.
  const leftover = {
    kind: "remnant",
    id: "x",
    shape: { kind: "rectangle", along: 9, across: 9 },
    flaws: [],
    count: 1,
  } as const;
  expect(spoken({ spread: spread({}) }, {}, { stock: [ROLL, leftover] }).join(" ")).toContain(
    "Leftovers, hides and skins",
  );
  expect(
    spoken({ spread: spread({}) }, {}, { stock: [ROLL, { ...leftover, keptBack: true } as never] }).join(" "),
  ).not.toContain("Leftovers");
  expect(up.join(" ")).not.toContain("Leftovers");
  // Nothing laid, or one layer: nothing to say of it.
  expect(spoken({ spread: spread({}) }, {}, { stock }, { placements: [] })[0]).toMatch(/^The pieces take/u);
  expect(spoken({}, {}, { stock })[0]).toMatch(/^The pieces take/u);
  const both = spoken(
    { spread: spread({}) },
    {},
    { stock },
    { uses: [...atBound.uses, { stockId: "roll", usedLength: 0, bound: null }] },
  );
  expect(both.filter((line) => line.startsWith("Lay 2 lengths"))).toHaveLength(1);
});

test("pieces that come of the layers besides are told by name and hand", () => {
  const pieces = [
    piece("strap", 2, { of: "strap", asDrawn: 1, mirrored: 1 }),
    piece("flap", 1, { of: "flap", asDrawn: 2, mirrored: 0 }),
  ];
  const asked = [
    { pieceId: "strap", asDrawn: 1, mirrored: 2 },
    { pieceId: "flap", asDrawn: 1, mirrored: 0 },
  ];
  const panels = [{ id: "flap", name: "Front flap" }] as never;
  const lines = spoken({ spread: spread({ asked }), pieces }, { panels }, { stock: [ROLL] });
  expect(lines).toContain("Comes out besides, not asked for: 1 × strap, 1 × Front flap.");
  const hands = [{ pieceId: "strap", asDrawn: 2, mirrored: 1 }];
  expect(spoken({ spread: spread({ asked: hands }), pieces }, {}, { stock: [ROLL] }).join(" ")).toContain(
    "besides, not asked for: 1 × strap, mirrored.",
  );
  expect(spoken({ spread: spread({ asked: [] }), pieces }, {}, { stock: [ROLL] }).join(" ")).not.toContain(
    "Comes out besides",
  );
});

test("which way pieces lie is told by the first of them, a mirror image read the other way round", () => {
  const way = (turnDeg: number, mirrored = false) =>
    spoken({ sameWay: true }, {}, {}, { placements: [{ ...PLAN.placements[0]!, turnDeg, mirrored }] }).join(" ");
  for (const turn of [0, 45, 90, 359]) expect(way(turn), `${turn}`).toContain("arrows up the roll");
  for (const turn of [180, 225, 270]) expect(way(turn), `${turn}`).toContain("arrows down the roll");
  expect(way(0, true)).toContain("arrows down the roll");
  expect(way(180, true)).toContain("arrows up the roll");
  expect(spoken({}).join(" ")).not.toContain("arrows");
  expect(spoken({ sameWay: true }, {}, {}, { placements: [] }).join(" ")).not.toContain("arrows");
});

test("parts of a bag that are kept together are told how far apart they lie, or why they are not kept", () => {
  const shade = { band: 900, bags: 2 } as never;
  const said = (
    more: Partial<LayProblem>,
    own: Partial<Project> = { bags: 2 },
    cloth: Partial<Material> = {},
    plan: Partial<LayPlan> = {},
  ) => spoken(more, own, { shadeBand: 900, stock: [ROLL], ...cloth } as never, plan).join(" ");
  expect(said({ shade })).toContain("The parts of each bag lie within 900 mm of the roll");
  expect(said({ shade, spread: spread({ folded: true }) })).toContain("The parts of each bag lie within");
  expect(said({ shade, spread: spread({ folded: true }) }, { bags: 4 })).toContain(
    "The parts of two bags at a time lie within",
  );
  expect(said({ shade, spread: spread({}) })).toContain("In each layer the parts of each bag");
  // 630 mm are the shortest that can be; 631 are not.
  expect(said({ shade })).not.toContain("reckoned without keeping bags together");
  const longer = { uses: [{ stockId: "roll", usedLength: 631, bound: 630 }] };
  expect(said({ shade }, { bags: 2 }, {}, longer)).toContain("reckoned without keeping bags together");
  expect(said({}, { bags: 2 }, {}, longer)).not.toContain("reckoned without");
  expect(
    said({ shade }, { bags: 2 }, {}, { uses: [{ stockId: "roll", usedLength: 631, bound: null }] }),
  ).not.toContain("reckoned without");
  expect(said({ pieces: [piece("strap", 3)] })).toContain("not every piece comes in the same number for each bag");
  expect(said({ pieces: [piece("strap", 3)], spread: spread({}) }, { bags: 3 })).toContain(
    "2 layers give 2 bags at a time",
  );
  expect(said({ pieces: [piece("strap", 3)] }, { bags: 2 }, { shadeBand: undefined } as never)).not.toContain(
    "not every piece",
  );
});

test("offcuts are told largest first, three of them and how many more, of each layer", () => {
  const stock = [{ ...ROLL, selvedge: 0, squaring: 0 }];
  const words = spoken({ stocks: [STOCK] }, {}, { stock });
  const offcuts = words.find((line) => line.startsWith("Useful offcuts"))!;
  const sizes = [...offcuts.matchAll(/(\d+) mm × (\d+) mm/gu)].map(
    ([, along, across]) => Number(along) * Number(across),
  );
  expect(sizes.length).toBeGreaterThan(0);
  expect(sizes.length).toBeLessThanOrEqual(3);
  expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
});

test("what is matched is told by name, with where the pattern has to lie on each roll that is used", () => {
  const repeat = {
    along: 60,
    across: null,
    firstAlong: 25,
    firstAcross: 0,
    halfDrop: false,
    symmetric: true,
    tolerance: 1,
  } as never;
  const matched = { ...piece("strap", 2), match: { along: true, across: false } } as never;
  const panels = [{ id: "strap", name: "Front" }] as never;
  const said = (cloth: Partial<Material>, own: Partial<Project> = { panels }, plan: Partial<LayPlan> = {}) =>
    spoken({ pieces: [matched], pattern: repeat }, own, { repeat, stock: [ROLL], ...cloth }, plan).join(" ");
  expect(said({})).toContain("Matched on the pattern: Front.");
  expect(said({}, {})).toContain("Matched on the pattern: strap.");
  expect(said({})).toContain("a line of the pattern lies 25 mm from its cut end; the plan starts there.");
  const own = { ...ROLL, firstLine: { along: 40, across: 7 } } as never;
  expect(said({ stock: [own] })).toContain("lies 40 mm from its cut end;");
  const checks = { ...(repeat as object), across: 30 } as never;
  expect(said({ stock: [own], repeat: checks })).toContain("40 mm from its cut end and 7 mm from its lower edge");
  // Of a roll that nothing lies on nothing is told, nor where nothing repeats.
  const unused = { ...ROLL, id: "other", firstLine: { along: 33, across: 0 } } as never;
  expect(said({ stock: [ROLL, unused] })).not.toContain("33 mm");
  const zero = { uses: [...atBound.uses, { stockId: "other", usedLength: 0, bound: null }] };
  expect(said({ stock: [ROLL, unused] }, { panels }, zero)).not.toContain("33 mm");
  expect(said({ repeat: null })).not.toContain("starts there");
  expect(said({})).not.toContain("reckoned without the matching");
  const longer = (usedLength: number, bound: number | null) =>
    said({}, { panels }, { uses: [{ stockId: "roll", usedLength, bound }] });
  expect(longer(631, 630)).toContain("The shortest possible is reckoned without the matching.");
  expect(longer(631, null)).not.toContain("reckoned without");
  // What is matched is not told to be unmatched.
  expect(said({})).not.toContain("does not match it");
});

test("what matching two panels costs is told by their names, the same panel twice as the next one", () => {
  const own = {
    ...project,
    panels: [
      { id: "a", name: "Front" },
      { id: "b", name: "Flap" },
    ],
    matches: [
      { first: { panel: "a" }, second: { panel: "b" } },
      { first: { panel: "a" }, second: { panel: "a" } },
    ],
  } as unknown as Project;
  const told = (index: number) =>
    ruleCostWords([{ rule: { kind: "match", index }, extraLength: 30 } as never], own, "en");
  expect(told(0)).toEqual(["Matching Front to Flap: 30 mm more."]);
  expect(told(1)).toEqual(["Matching Front to the next one: 30 mm more."]);
});
