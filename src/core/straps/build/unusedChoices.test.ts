import { expect, test } from "vitest";
import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { CONSTRUCTION_IDS, type ConstructionId, type StrapMaterial, type StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import { rebuiltAs, unusedChoices } from "./unusedChoices.ts";

const of = (id: string, kind: StrapMaterial["kind"], thickness: number): StrapMaterial => ({
  ...{ id, name: id, kind, thickness, backing: "woven", fold: {} },
});
const MATERIALS = [of("vinyl", "vinyl", 0.8), of("cloth", "woven", 0.5), of("foam", "padding", 3)];

/** A strap that works out in every construction. */
function plain(construction: ConstructionId): StrapWish {
  const { roles } = CONSTRUCTIONS[construction];
  const cord = roles.cord === "needed";
  return {
    ...{ id: "s", name: "strap", construction, count: 1 },
    width: cord ? undefined : { kind: "finished", mm: 38 },
    length: { kind: "finished", mm: 700 },
    materials: { outer: "vinyl" },
    core: cord ? { cordDiameter: 10 } : undefined,
  };
}

/** Every choice there is, none of them the usual one. */
const CHOICES: readonly [string, Partial<StrapWish>][] = [
  ["crease", { folds: { crease: "soft" } }],
  ["clearance", { folds: { clearance: 0.2 } }],
  ["edgeGap", { folds: { edgeGap: 3.1 } }],
  ["setback", { folds: { setback: 4.4 } }],
  ["hem", { folds: { hem: 9 } }],
  ["reveal", { folds: { reveal: 2 } }],
  ["seamAllowance", { folds: { seamAllowance: 8 } }],
  ["margin", { folds: { margin: 5 } }],
  ["turn", { folds: { turn: 6 } }],
  ["trim", { folds: { trim: 2 } }],
  ["paddingPressed", { folds: { paddingPressed: 0.7 }, materials: { outer: "vinyl", padding: "foam" } }],
  ["layers", { folds: { layers: 1 } }],
  ["adjustment", { adjustment: "one-piece" }],
  ["shortPart", { adjustment: "two-part", shortPart: 300 }],
  ["shortPart of a strap in one", { shortPart: 300 }],
  ["raw ends", { ends: [{ style: "raw" }, { style: "seam" }] }],
  ["seam ends", { ends: [{ style: "seam" }, { style: "seam" }] }],
  ["tucked ends", { ends: [{ style: "tucked" }, { style: "tucked" }] }],
  ["folded ends", { ends: [{ style: "fold-back" }, { style: "fold-back" }] }],
  [
    "doubled ends",
    {
      ends: [
        { style: "doubled", allowance: 60 },
        { style: "doubled", allowance: 60 },
      ],
    },
  ],
  ["fromEdge", { stitch: { fromEdge: 2.2 } }],
  ["extraRows", { stitch: { extraRows: 2 } }],
  ["stitchLength", { stitch: { length: 4.5 } }],
  ["stitchType", { stitch: { type: 401 } }],
  ["edgeFinish", { edgeFinish: "paint" }],
  ["cutBy", { cutBy: "trade" }],
  ["facing", { materials: { outer: "vinyl", facing: "cloth" } }],
  ["padding", { materials: { outer: "vinyl", padding: "foam" } }],
];

const said = (wish: StrapWish): string => {
  const built = buildStrap(wish, MATERIALS);
  return JSON.stringify(built.ok ? { ...built.value, wish: null } : built.problems);
};

test.each(CHOICES)("%s changes the strap or is refused, in every construction", (name, choice) => {
  for (const id of CONSTRUCTION_IDS) {
    const base = { ...plain(id), ...(name === "paddingPressed" ? { materials: choice.materials! } : {}) };
    const before = buildStrap(base, MATERIALS);
    const built = buildStrap({ ...base, ...choice }, MATERIALS);
    if (!built.ok) {
      const codes = built.problems.map(({ code }) => code);
      expect(codes.length, id).toBeGreaterThan(0);
      continue;
    }
    expect(before.ok, id).toBe(true);
    // Flat layers are cut by the trade's rule anyway.
    if (name === "cutBy" && id === "bonded") continue;
    expect(said({ ...base, ...choice }) === said(base), `${name} is without effect: ${id}`).toBe(false);
  }
});

test("what is refused is told with its place and who would use it", () => {
  const wish: StrapWish = { ...plain("tube"), folds: { setback: 4, layers: 3, seamAllowance: 5 }, shortPart: 200 };
  expect(unusedChoices(wish, "straps[2].")).toMatchObject([
    { path: "straps[2].folds.setback", choice: "setback", heededBy: ["three-raw", "three-hemmed"] },
    { path: "straps[2].folds.layers", choice: "layers", heededBy: ["bonded", "webbing-sleeve", "tab"] },
    { path: "straps[2].shortPart", choice: "shortPart" },
  ]);
  const built = buildStrap(wish, MATERIALS, "straps[2].");
  expect(built.ok ? [] : built.problems.map(({ code }) => code)).toEqual(Array(3).fill("strap-choice-unused"));
});

test("a strap built another way keeps what the other way uses, and nothing else", () => {
  for (const from of CONSTRUCTION_IDS)
    for (const to of CONSTRUCTION_IDS)
      for (const [, choice] of CHOICES) {
        const next = rebuiltAs({ ...plain(from), ...choice }, to);
        expect(unusedChoices(next, ""), `${from} ${to}`).toEqual([]);
      }
  const soft = { ...plain("three-raw"), folds: { crease: "soft", clearance: 0.3 } } as const;
  // A clearance belongs to the construction it was chosen for, a crease to the cloth.
  expect(rebuiltAs(soft, "fourfold").folds).toEqual({ crease: "soft" });
  expect(rebuiltAs(soft, "three-raw").folds).toEqual({ crease: "soft", clearance: 0.3 });
});
