import { type Geom, union } from "polyclip-ts";
import { expect, test } from "vitest";
import { strapSectionArt } from "../../src/core/drawing/strap/foldPicture.ts";
import { ringBox } from "../../src/core/geometry/box.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { type Ring, signedArea } from "../../src/core/geometry/ring.ts";
import { buildStrap } from "../../src/core/straps/build/buildStrap.ts";
import type { StrapResult } from "../../src/core/straps/build/strapResult.ts";
import { rebuiltAs } from "../../src/core/straps/build/unusedChoices.ts";
import { CONSTRUCTIONS } from "../../src/core/straps/constructions/catalogue.ts";
import {
  CONSTRUCTION_IDS,
  type ConstructionId,
  type EndWish,
  type FoldChoices,
  type StrapMaterial,
  type StrapWish,
} from "../../src/core/straps/wish/strapWish.ts";

// Every construction × 8 materials × 5 widths × 4 kinds of ends × 4 of hardware; thicknesses from memory.
// Source of the judge of drawn sections: polyclip-ts, a general polygon clipping library.

const LONG = process.env["LONG_TESTS"] === "1";

const of = (id: string, kind: StrapMaterial["kind"], thickness: number): StrapMaterial => ({
  ...{ id, name: id, kind, thickness, backing: "woven", fold: {}, usableWidth: 1400 },
});
const OUTERS = [
  of("cotton", "woven", 0.3),
  of("canvas", "woven", 0.7),
  of("denim", "woven", 0.85),
  of("vinyl", "vinyl", 0.9),
  of("stout-vinyl", "vinyl", 1.2),
  of("leather", "leather", 1.2),
  of("cork", "cork", 0.6),
  of("felt", "felt", 1.5),
];
const FUSE = of("fuse", "interfacing", 0.2);
const WIDTHS = [12.7, 19.05, 25.4, 38.1, 50.8];
const ENDS: readonly (readonly [EndWish, EndWish] | undefined)[] = [
  undefined,
  [
    { style: "seam", allowance: 21 },
    { style: "seam", allowance: 27 },
  ],
  [
    { style: "tucked", allowance: 11 },
    { style: "fold-back", allowance: 43 },
  ],
  [
    { style: "fold-back", allowance: 37 },
    { style: "fold-back", allowance: 53 },
  ],
];
const HARDWARE: readonly {
  readonly kinds: readonly ("ring" | "clasp" | "slider")[];
  readonly adjustment: StrapWish["adjustment"];
}[] = [
  { kinds: [], adjustment: undefined },
  { kinds: ["ring"], adjustment: undefined },
  { kinds: ["ring", "slider"], adjustment: "one-piece" },
  { kinds: ["clasp", "slider"], adjustment: "two-part" },
];

/** Choices in mm that a construction may heed, none of them its usual. */
const LENGTHS: FoldChoices = {
  setback: 2.3,
  hem: 7.1,
  reveal: 1.9,
  seamAllowance: 4.7,
  margin: 2.1,
  turn: 4.3,
  trim: 1.7,
};

function wishOf(id: ConstructionId, outer: string, mm: number, ends: number, hardware: number): StrapWish {
  const construction = CONSTRUCTIONS[id];
  const heeded = Object.entries(LENGTHS).filter(([name]) =>
    (construction.heeds({}) as readonly string[]).includes(name),
  );
  // Every second strap of what can be skived has its turned edges at six tenths.
  const { kind: cloth, thickness } = OUTERS.find((one) => one.id === outer)!;
  if (cloth !== "woven" && hardware % 2 === 1 && construction.heeds({}).includes("turnedThickness"))
    heeded.push(["turnedThickness", thickness * 0.6]);
  const { kinds, adjustment } = HARDWARE[hardware]!;
  const cord = construction.roles.cord === "needed";
  const interfaced = construction.interfaced !== null && (ends + hardware) % 2 === 1;
  const wish: StrapWish = {
    id: "s",
    name: "strap",
    construction: id,
    count: 1,
    width: cord ? undefined : { kind: "finished", mm },
    length: { kind: "finished", mm: 1300 },
    materials: { outer, interfacing: interfaced ? "fuse" : undefined },
    interfacing: interfaced ? (["full", "reduced", "quarter"] as const)[ends % 3] : undefined,
    core: cord ? { cordDiameter: mm / 2 } : undefined,
    ends: ENDS[ends],
    adjustment,
    hardware: kinds.map((kind) => ({
      kind,
      innerWidth: mm + 1,
      ...(kind === "slider" ? { opening: 30 } : { length: 20 }),
    })),
    folds: Object.fromEntries(heeded),
    edgeFinish: construction.visibleEdges({}) > 0 ? "paint" : undefined,
    stitch: hardware === 1 && !cord ? { extraRows: 1 } : undefined,
  };
  // A tab has no slider and no folded ends: what it has no use for is left out, as everything else refuses it.
  return rebuiltAs(wish, id);
}

interface Run {
  readonly wish: StrapWish;
  readonly result: StrapResult;
}

function sweep(): { runs: Run[]; refused: Set<string>; asked: number } {
  const runs: Run[] = [];
  const refused = new Set<string>();
  let asked = 0;
  for (const id of CONSTRUCTION_IDS)
    for (const outer of OUTERS)
      for (const width of WIDTHS)
        for (const ends of ENDS.keys())
          for (const hardware of HARDWARE.keys()) {
            asked++;
            const wish = wishOf(id, outer.id, width, ends, hardware);
            const built = buildStrap(wish, [outer, FUSE]);
            if (built.ok) runs.push({ wish, result: built.value });
            else for (const { code } of built.problems) refused.add(code);
          }
  return { runs, refused, asked };
}

const { runs, refused, asked } = sweep();

test("the sweep is wide, and what it refuses is refused for room, thickness or width", () => {
  expect(asked).toBeGreaterThanOrEqual(5000);
  expect(runs.length).toBeGreaterThan(asked / 2);
  const known = [
    "strap-too-narrow",
    "strap-too-thick",
    "strap-turned-edge-wide",
    "strap-choice-out-of-range",
    "strap-hardware-narrow",
  ];
  expect([...refused].filter((code) => !known.includes(code))).toEqual([]);
});

/** Every length named in the steps, by name. */
const lengthsOf = ({ steps }: StrapResult): [string, number][] =>
  steps.flatMap(({ lengths }) => Object.entries(lengths));
const parts = ({ steps }: StrapResult): string[] => steps.flatMap((step) => step.parts);
const say = ({ construction, materials, width, ends, hardware }: StrapWish): string =>
  JSON.stringify([
    construction,
    materials.outer,
    width?.mm,
    ends?.map(({ style }) => style),
    hardware?.map(({ kind }) => kind),
  ]);

test("the steps mention every option that changes the strap", () => {
  for (const { wish, result } of runs) {
    const values = lengthsOf(result).map(([, mm]) => mm);
    const named = (mm: number): boolean => values.some((value) => Math.abs(value - mm) < 1e-9);
    for (const [name, mm] of Object.entries(wish.folds ?? {}) as [string, number][]) {
      const { topstitch, raw } = Object.fromEntries(lengthsOf(result)) as Record<string, number | undefined>;
      const trimmed = name === "trim" && raw !== undefined && Math.abs(raw - topstitch! - mm) < 1e-9;
      expect(named(mm) || trimmed, `${name} ${say(wish)}`).toBe(true);
    }
    for (const [i, { style, allowance }] of (wish.ends ?? []).entries()) {
      if (CONSTRUCTIONS[wish.construction].overRing || allowance === undefined) continue;
      const whole = result.steps.some(
        ({ lengths: { back = 0, under = 0 } }) => Math.abs(back + under - allowance) < 1e-9,
      );
      expect(named(allowance) || whole, `end ${i} ${style} ${say(wish)}`).toBe(true);
    }
    const has = (start: string): boolean => parts(result).some((part) => part.startsWith(start));
    if (wish.interfacing !== undefined) expect(has("interface-"), say(wish)).toBe(true);
    if (wish.adjustment !== undefined && !CONSTRUCTIONS[wish.construction].overRing)
      expect(has("end-thread"), say(wish)).toBe(true);
    if (wish.adjustment === "two-part" && !CONSTRUCTIONS[wish.construction].overRing)
      expect(has("end-short-part"), say(wish)).toBe(true);
    if (wish.edgeFinish !== undefined) expect(has("edge-paint") || has("three-paint"), say(wish)).toBe(true);
    if (wish.stitch?.extraRows !== undefined) expect(has("extra-rows"), say(wish)).toBe(true);
  }
});

test("no length has two values under one name", () => {
  // Ends may differ from each other; each is a step of its own.
  const each = new Set(["back", "under", "tucked", "seam"]);
  for (const { wish, result } of runs) {
    const known = new Map<string, number>([
      ["cut", result.cutWidth],
      ["width", result.finishedWidth],
      ["setback", result.setback],
    ]);
    for (const [name, mm] of lengthsOf(result)) {
      if (each.has(name)) continue;
      expect(Math.abs((known.get(name) ?? mm) - mm), `${name} ${say(wish)}`).toBeLessThan(1e-9);
      known.set(name, mm);
    }
    const outer = ringBox(result.pieces[0]!.outline.outer);
    expect(outer.maxY, say(wish)).toBeCloseTo(result.cutWidth, 9);
    expect(result.lengths.items.reduce((sum, { mm }) => sum + mm, 0)).toBeCloseTo(result.lengths.cut, 6);
  }
});

test("every length across the strap that a step names can be measured in its drawings", () => {
  const across = new Set([
    "cut",
    "width",
    "setback",
    "topstitch",
    "raw",
    "hem",
    "turn",
    "reveal",
    "margin",
    "allowance",
    "apart",
  ]);
  for (const { wish, result } of runs) {
    const rows = result.rows.map(({ mm, from }) => (from === "left" ? mm : result.finishedWidth - mm));
    const flat = result.pieces.flatMap(({ lines, outline }) => [
      ...lines.map(({ contour }) => contour.vertices[1]!),
      ringBox(outline.outer).maxY,
    ]);
    const { section: drawn } = result;
    const faces =
      drawn.kind === "wrapped"
        ? []
        : drawn.strips.flatMap(({ segments }) =>
            segments.flatMap((one) => {
              if (one.kind !== "bend") return [];
              const reach = one.insideRadius + one.thickness;
              return [one.side === "left" ? one.axisX - reach : one.axisX + reach];
            }),
          );
    const section = [
      ...faces,
      0,
      result.finishedWidth,
      result.setback,
      ...rows,
      ...result.rows.map(({ mm }) => mm),
    ];
    const marks = [...new Set([0, ...flat, ...section])];
    // Interfacing under the face alone rounds the folds beside it by less than a tenth of a millimetre.
    const near = wish.interfacing === "quarter" ? 0.08 : 1e-6;
    for (const [name, mm] of lengthsOf(result)) {
      if (!across.has(name)) continue;
      // A distance between two marks; a facing's or overlay's edge lies `topstitch` outside its row.
      const seen = marks.some((a) => marks.some((b) => Math.abs(a - b - mm) < near));
      expect(seen, `${name} ${mm} ${say(wish)}`).toBe(true);
    }
  }
});

/** The drawing keeps to its dimensions within this, mm: arcs are flattened to a hundredth. */
const FITS = 0.02;
/** A layer lies on itself by less than this, mm²: less than a quarter of a millimetre each way, what a drawn line covers. */
const OVERLAP = 0.06;

function geometry(ring: Ring): Geom {
  const points: [number, number][] = [];
  for (let i = 0; i < ring.length; i += 2)
    points.push([Math.round(ring[i]! * 1e5) / 1e5, Math.round(ring[i + 1]! * 1e5) / 1e5]);
  return [points];
}

/** Every different section of the sweep, raw edges stopping where a bend starts: crushed into it they lie on it by intent. */
function* sections(): Generator<{ readonly wish: StrapWish; readonly result: StrapResult }> {
  const seen = new Set<string>();
  for (const id of CONSTRUCTION_IDS)
    for (const outer of OUTERS)
      for (const width of WIDTHS)
        for (const ends of ENDS.keys())
          for (const hardware of HARDWARE.keys()) {
            const wish = wishOf(id, outer.id, width, ends, hardware);
            const heeded = CONSTRUCTIONS[id].defaultClearance === null ? {} : { clearance: 1 };
            const built = buildStrap({ ...wish, folds: { ...wish.folds, ...heeded } }, [outer, FUSE]);
            if (!built.ok) continue;
            const key = JSON.stringify(built.value.section);
            if (seen.has(key)) continue;
            seen.add(key);
            yield { wish, result: built.value };
          }
}

/** One section in so many is judged in every run of the tests, all of them with `LONG_TESTS=1`. */
const JUDGED = LONG ? 1 : 17;

test(
  "a drawn section never crosses itself and fits its dimensions",
  () => {
    let [different, judged, largest] = [0, 0, 0];
    const crossing: string[] = [];
    const outside: string[] = [];
    for (const { wish, result } of sections()) {
      if (different++ % JUDGED !== 0) continue;
      const art = strapSectionArt(result);
      for (const { contour } of art.areas) {
        const ring = flattenContour(contour, 0.01);
        const box = ringBox(ring);
        const over = Math.max(-box.minX, box.maxX - art.width, box.maxY - art.height);
        if (over >= FITS) outside.push(`${say(wish)} ${over.toFixed(4)}`);
        const own = Math.abs(signedArea(ring));
        const joined = union(geometry(ring)).reduce(
          (sum, polygon) =>
            sum +
            polygon.reduce(
              (area, one, i) => area + (i === 0 ? 1 : -1) * Math.abs(signedArea(Float64Array.from(one.flat()))),
              0,
            ),
          0,
        );
        const overlap = Math.abs(joined - own);
        largest = Math.max(largest, overlap);
        if (overlap >= OVERLAP) crossing.push(`${say(wish)} ${overlap.toFixed(4)}`);
      }
      judged++;
    }
    if (LONG) console.log(`${judged} different sections judged, largest overlap ${largest.toFixed(4)} mm²`);
    expect({ crossing, outside }).toEqual({ crossing: [], outside: [] });
    expect(different).toBeGreaterThan(700);
    expect(judged).toBeGreaterThan(40);
  },
  LONG ? 1_200_000 : 60_000,
);
