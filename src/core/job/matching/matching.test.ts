import { expect, test } from "vitest";
import { type Pose, turnCosSin } from "../../geometry/pose.ts";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import { chooseEngines } from "../../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../lay/problem/layProblem.ts";
import { arrange } from "../../lay/search/arrange/arrange.ts";
import { inOneGo } from "../../lay/search/breath.ts";
import type { CutPiece, MatchPlace } from "../../materials/cutPiece.ts";
import { mirrorImageId } from "../../materials/mirrorImage.ts";
import { readProject } from "../../project/file/readProject.ts";
import { writeProject } from "../../project/file/writeProject.ts";
import { judgeCloth } from "../laidCloth.ts";
import { readPlanDocument } from "../planDocument/readPlan.ts";
import { planDocument } from "../planDocument/writePlan.ts";
import { jobOf, type ProjectJob } from "../projectJob.ts";

const lay = (problem: LayProblem, evaluations = 60_000): LayPlan =>
  inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, 1));

const cloth = {
  ...{ id: "c", kind: "woven", thickness: 0.6, grain: "lengthwise" },
  stock: [{ kind: "roll", id: "r", width: 900, selvedge: 8 }],
};
const front = {
  ...{ id: "front", name: "Front", material: "c", count: 2, seamAllowance: 10 },
  shape: {
    kind: "outline",
    points: [
      [0, 0],
      [300, 20],
      [300, 260],
      [0, 280],
    ],
  },
};
const gusset = {
  ...{ id: "gusset", name: "Gusset", material: "c", count: 1, seamAllowance: 12 },
  shape: { kind: "rectangle", along: 300, across: 90 },
};
const flap = { ...gusset, id: "flap", name: "Flap", shape: { kind: "rectangle", along: 180, across: 240 } };

function jobFor(repeat: unknown, more: object, change: object = {}): ProjectJob {
  const file = {
    ...{ laywright: 1, name: "Stripes", bags: 2, gap: 2, margin: 4, panels: [front, gusset, flap] },
    materials: [{ ...cloth, repeat, ...change }],
    ...more,
  };
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(readProject(writeProject(read.value))).toEqual(read);
  return jobOf(read.value);
}

const SEAMS = [
  { first: { panel: "front", edge: 0 }, second: { panel: "gusset", edge: 2 } },
  { first: { panel: "front", edge: 1 }, second: { panel: "flap", edge: 3 } },
];
const seam = (from: string, edge: number, to: string, other: number, more: object = {}) => ({
  ...{ first: { panel: from, edge }, second: { panel: to, edge: other } },
  ...more,
});

/** Where a point of a piece comes to lie on the cloth. */
function onCloth({ turnDeg, mirrored, x, y }: Pose, px: number, py: number): [number, number] {
  const [c, s] = turnCosSin(turnDeg);
  const own = mirrored ? -px : px;
  return [c * own - s * py + x, s * own + c * py + y];
}

/** Places along a seam, `mm` from the match to either side, on every copy of a piece as it lies. */
function alongSeam(plan: LayPlan, piece: CutPiece, place: MatchPlace, mm: number): [number, number][] {
  // Round a piece counter-clockwise; the second side of a seam is met backwards.
  const way = place.side === "first" ? mm : -mm;
  const [nx, ny] = place.out;
  return plan.placements
    .filter(({ pieceId }) => pieceId === piece.id)
    .map((pose) => onCloth(pose, place.x - ny * way, place.y + nx * way));
}

/** Stripes and motifs that look the same turned by half: height of two waves at a place of the cloth. */
function shade(repeat: number, at: number, first: number): number {
  return Math.cos((2 * Math.PI * (at - first)) / repeat);
}

function expectMeeting(
  job: ProjectJob,
  axis: 0 | 1,
  repeat: number,
  first: number,
  apart: readonly number[],
): number {
  const { problem } = job.lays[0]!;
  const plan = lay(problem);
  expect(checkPlan(problem, plan)).toEqual([]);
  let met = 0;
  for (const [match] of (job.project.matches ?? []).entries()) {
    const sides = (["first", "second"] as const).map((side) => {
      const piece = job.pieces.find(({ matchPlaces }) =>
        matchPlaces?.some((place) => place.match === match && place.side === side),
      )!;
      return { piece, place: piece.matchPlaces!.find((place) => place.match === match && place.side === side)! };
    });
    for (const mm of apart) {
      const shades = sides.flatMap(({ piece, place }) =>
        alongSeam(plan, piece, place, mm).map((point) => shade(repeat, point[axis], first)),
      );
      for (const value of shades) expect(value).toBeCloseTo(shades[0]!, 3);
      met += shades.length;
    }
  }
  return met;
}

test("stripes across meet over a seam on every copy, beside the match as well where edges run straight", () => {
  // The roll's squared end is 20 mm from its cut end.
  const job = jobFor(
    { along: 60, firstAlong: 35, symmetric: true, tolerance: 0.5 },
    { matches: [seam("gusset", 0, "flap", 2)] },
  );
  expect(job.troubles).toEqual([]);
  expect(expectMeeting(job, 0, 60, 15, [0, 40, -70])).toBe(12);
});

test("a chain of seams is one group: every front meets every gusset and every flap", () => {
  const job = jobFor({ along: 64, symmetric: true, tolerance: 0.5 }, { matches: SEAMS });
  // The flap lies across the end of the front: there the repeat across would run along the seam, and there is none.
  expect(job.troubles).toEqual([]);
  expect(new Set(job.lays[0]!.problem.pieces.map(({ match }) => match?.group))).toEqual(new Set(["front"]));
  const along = { ...job, project: { ...job.project, matches: job.project.matches!.slice(0, 1) } };
  expect(expectMeeting(along, 0, 64, -20, [0])).toBe(6);
});

test("a pattern with a top keeps all of a group one way up, and still meets", () => {
  const job = jobFor({ along: 70, tolerance: 0.5 }, { matches: [seam("gusset", 0, "flap", 2)] });
  const turns = job.lays[0]!.problem.pieces.filter(({ match }) => match).map(({ orientations }) => orientations);
  expect(turns).toEqual([[{ turnDeg: 0, mirrored: false }], [{ turnDeg: 0, mirrored: false }]]);
  expectMeeting(job, 0, 70, -20, [0, 50]);
});

test("the middle of a flap lies on a line, or midway between two", () => {
  for (const [on, wanted] of [
    ["line", 1],
    ["between", -1],
  ] as const) {
    const job = jobFor(
      { along: 60, across: 50, firstAcross: 30, symmetric: true },
      { centred: [{ part: "flap", on }] },
    );
    const { problem } = job.lays[0]!;
    const plan = lay(problem);
    expect(checkPlan(problem, plan)).toEqual([]);
    // Its cut size: 180 and 240 with 12 mm all round.
    const middles = plan.placements
      .filter(({ pieceId }) => pieceId === "flap")
      .map((pose) => onCloth(pose, 102, 132));
    expect(middles).toHaveLength(2);
    for (const [x, y] of middles) {
      expect(shade(60, x, -20)).toBeCloseTo(wanted, 6);
      expect(shade(50, y, 22)).toBeCloseTo(wanted, 6);
    }
  }
});

test("mirror images take the pattern as a mirror would show it", () => {
  const panels = [front, { ...gusset, mirrored: 1 }, flap];
  const matches = [seam("gusset", 0, "flap", 2, { axes: "both" })];
  const job = jobFor({ along: 60, across: 44, symmetric: true, tolerance: 0.5 }, { panels, matches });
  expect(job.troubles).toEqual([]);
  const { problem } = job.lays[0]!;
  const plan = lay(problem);
  expect(checkPlan(problem, plan)).toEqual([]);
  const piece = job.pieces.find(({ id }) => id === "gusset")!;
  const drawn = plan.placements.find(({ pieceId }) => pieceId === "gusset")!;
  const mirrored = plan.placements.find(({ pieceId }) => pieceId === mirrorImageId("gusset"))!;
  const height = 90 + 24;
  for (const [x, y] of [
    [0, 0],
    [100, 30],
    [250, 77],
  ] as const) {
    const [one, other] = [onCloth(drawn, x, y), onCloth(mirrored, x, height - y)];
    expect(shade(60, one[0], -20)).toBeCloseTo(shade(60, other[0], -20), 6);
    expect(shade(44, one[1], -8)).toBeCloseTo(shade(44, other[1], -8), 6);
  }
  expect(piece.mirroredCount).toBe(2);
});

test("washed cloth has shrunk with its pattern", () => {
  const shrinkage = { lengthwise: "10 %", crosswise: 0, when: "before-cutting" };
  const job = jobFor({ along: 60, symmetric: true }, { matches: [seam("gusset", 0, "flap", 2)] }, { shrinkage });
  expect(job.lays[0]!.problem.pattern!.along).toBeCloseTo(54, 9);
  expectMeeting(job, 0, 54, -18, [0, 30]);
});

test("what cannot match is told, and left out", () => {
  const codes = (matches: object[], more: object = {}, repeat: object = { along: 60 }) =>
    jobFor(repeat, { matches, ...more }).troubles.map(({ code, path }) => `${code} ${path}`);
  expect(codes([seam("front", 9, "gusset", 0)])).toEqual(["no-such-edge matches[0].first.edge"]);
  expect(codes([seam("frint", 0, "gusset", 0)])).toEqual(["unknown-panel matches[0].first.panel"]);
  expect(codes([], { centred: [{ part: "flop", on: "line" }] })).toEqual(["unknown-part centred[0].part"]);
  const slanted = {
    ...front,
    id: "slanted",
    shape: {
      kind: "outline",
      points: [
        [0, 0],
        [200, 0],
        [0, 180],
      ],
    },
  };
  expect(codes([seam("slanted", 1, "gusset", 0)], { panels: [slanted, gusset] })).toEqual([
    "match-aslant matches[0]",
  ]);
  // 180 and 300 mm long: their two ends cannot both meet on a repeat of 70 mm, but on one of 60 they can.
  const ends = [seam("gusset", 0, "flap", 2, { at: "start" }), seam("gusset", 0, "flap", 2, { at: "end" })];
  expect(codes(ends, {}, { along: 70 })).toEqual(["match-contradicts matches[1]"]);
  expect(codes(ends, {}, { along: 60 })).toEqual([]);
  const crosswise = { ...flap, grain: "crosswise" };
  const either = [{ ...cloth, grain: "either", repeat: 60 }];
  expect(codes([seam("gusset", 0, "flap", 2)], { panels: [gusset, crosswise], materials: either })).toEqual([
    "match-turn-conflict matches[0]",
  ]);
  const two = [
    { ...cloth, repeat: 60 },
    { ...cloth, id: "d", stock: [{ kind: "roll", id: "q", width: 900 }] },
  ];
  expect(
    codes([seam("gusset", 0, "flap", 2)], { panels: [gusset, { ...flap, material: "d" }], materials: two }),
  ).toEqual(["match-no-common-cloth matches[0]"]);
});

test("a plan file holds the pattern, so that whoever checks it finds a piece moved off it", () => {
  const job = jobFor({ along: 60, firstAlong: 35, symmetric: true }, { matches: [seam("gusset", 0, "flap", 2)] });
  const { material, problem } = job.lays[0]!;
  const plan = lay(problem);
  const document = planDocument(job, [judgeCloth({ material, problem, plan }, "ruler", job.project)], 1);
  expect(document.materials[0]!.cut).toMatchObject({ asked: "ruler" });
  const checked = (change: (x: number) => number): string[] => {
    const file = JSON.parse(JSON.stringify(document));
    const moved = file.materials[0].placed.find(({ pieceId }: { pieceId: string }) => pieceId === "flap");
    moved.x = change(moved.x);
    const read = readPlanDocument(file);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return read.plans.flatMap((one) => checkPlan(one.problem, one.plan)).map(({ code }) => code);
  };
  expect(checked((x) => x)).toEqual([]);
  expect(checked((x) => x + 1.1)).toContain("plan-off-pattern");
  expect(checked((x) => x - 0.9)).not.toContain("plan-off-pattern");
});

test("without a repeat a match changes nothing of the lay", () => {
  const without = jobFor(undefined, {}).lays[0]!.problem;
  const matched = jobFor(undefined, { matches: SEAMS }).lays[0]!.problem;
  expect(matched).toEqual(without);
});

// Straight match: a piece takes its length rounded up to whole repeats. Common practice, no source. Inches.
test.each([
  [96, 27, 108],
  [116, 25, 125],
  [118, 13, 130],
])("cuts %d in long on a repeat of %d in step by %d in", (length, repeat, step) => {
  const inch = 25.4;
  const panel = {
    ...gusset,
    seamAllowance: 0,
    shape: { kind: "rectangle", along: `${length} in`, across: "800 mm" },
  };
  const job = jobFor(
    { along: `${repeat} in` },
    { panels: [panel], bags: 3, gap: 0, margin: 0, centred: [{ part: "gusset", on: "same-place" }] },
  );
  const plan = lay(job.lays[0]!.problem);
  expect(checkPlan(job.lays[0]!.problem, plan)).toEqual([]);
  expect(plan.uses[0]!.usedLength / inch).toBeCloseTo(2 * step + length, 6);
});

// A strap of 70 cm on a repeat of 32 cm takes 96 cm, 37 % more each: exact arithmetic on that model.
test("straps of 70 cm that are to look alike on a repeat of 32 cm step by 96 cm", () => {
  const strap = {
    ...{ id: "strap", name: "Strap", construction: "three-raw", count: 1, width: 25, materials: { outer: "c" } },
    ...{ length: { cut: 700 }, grain: "lengthwise" },
  };
  const narrow = { stock: [{ kind: "roll", id: "r", width: 80, squaring: 0 }] };
  const job = jobFor(
    { along: 320 },
    { panels: [], straps: [strap], bags: 3, gap: 0, margin: 0, centred: [{ part: "strap", on: "same-place" }] },
    narrow,
  );
  const { problem } = job.lays[0]!;
  const outline = problem.pieces[0]!.outline.outer;
  const length = Math.max(...outline.filter((_, i) => i % 2 === 0));
  const plan = lay(problem);
  expect(checkPlan(problem, plan)).toEqual([]);
  const step = Math.ceil(length / 320) * 320;
  expect(plan.uses[0]!.usedLength).toBeCloseTo(2 * step + length, 6);
  if (length === 700) expect(step / length).toBeCloseTo(1.371, 3);
});

// Layers as the trade spreads them: each length begins at the same place of the pattern, and is turned over sideways only,
// so lines across the cloth lie on each other (common practice, no source).
test.each([
  ["two layers face up", { layers: 2, faces: "up" }],
  ["two layers face to face", { layers: 2, faces: "together" }],
  ["folded lengthwise", "folded"],
])("%s: stripes across meet on every piece of every layer", (_, spread) => {
  const job = jobFor(
    { along: 60, firstAlong: 35, symmetric: true, tolerance: 0.5 },
    { matches: SEAMS.slice(0, 1) },
    { spread },
  );
  expect(job.troubles).toEqual([]);
  const { problem } = job.lays[0]!;
  const plan = lay(problem);
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  // Seen from its own face a layer that is turned over sideways is mirrored across the roll: x stays what it is.
  const places = plan.placements.flatMap((pose) => {
    const piece = job.pieces.find(({ id }) => pose.pieceId === id || pose.pieceId === mirrorImageId(id))!;
    return (piece.matchPlaces ?? []).map((place) => onCloth(pose, place.x, place.y)[0]);
  });
  expect(places.length).toBeGreaterThan(2);
  for (const x of places) expect(shade(60, x, 15)).toBeCloseTo(shade(60, places[0]!, 15), 3);
  // Moved off the pattern by more than the tolerance a copy is found on layers as well.
  const index = plan.placements.findIndex(({ pieceId }) => pieceId.startsWith("front"));
  const moved = plan.placements.map((one, i) => (i === index ? { ...one, x: one.x + 0.6 } : one));
  expect(checkPlan(problem, { ...plan, placements: moved }).map(({ code }) => code)).toContain("plan-off-pattern");
});

test("what repeats across the roll is matched in layers face up alone; elsewhere that is told, and the rest kept", () => {
  const repeat = { along: 60, across: 50, symmetric: true, tolerance: 0.5 };
  const more = { matches: [{ ...SEAMS[0]!, axes: "both" }] };
  const up = jobFor(repeat, more, { spread: { layers: 3, faces: "up" } });
  expect(up.troubles).toEqual([]);
  expect(up.lays[0]!.problem.pieces.some(({ match }) => match?.across)).toBe(true);
  expect(checkPlan(up.lays[0]!.problem, lay(up.lays[0]!.problem))).toEqual([]);
  const folded = jobFor(repeat, more, { spread: "folded" });
  expect(folded.troubles).toMatchObject([{ code: "match-on-layers", path: "matches[0]" }]);
  const { problem } = folded.lays[0]!;
  expect(problem.pieces.some(({ match }) => match?.along)).toBe(true);
  expect(problem.pieces.some(({ match }) => match?.across)).toBe(false);
  const dropped = jobFor({ ...repeat, halfDrop: true }, more, { spread: { layers: 2, faces: "together" } });
  expect(dropped.troubles).toMatchObject([{ code: "match-on-layers" }]);
  expect(dropped.lays[0]!.problem.pieces.some(({ match }) => match)).toBe(false);
});
