import { describe, expect, test } from "vitest";
import { purchaseOf } from "../buying/purchase.ts";
import { ringBox } from "../geometry/box.ts";
import { poseRing } from "../geometry/pose.ts";
import { checkPlan } from "../lay/check/checkPlan.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../lay/problem/layProblem.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inOneGo } from "../lay/search/breath.ts";
import { readProject } from "../project/file/readProject.ts";
import { jobOf, type LayJob, type ProjectJob } from "./projectJob.ts";

const INCH = 25.4;

const rectangle = (id: string, along: number, across: number, more: object = {}) => ({
  ...{ id, material: "c", count: 1, seamAllowance: 0, shape: { kind: "rectangle", along, across }, ...more },
});

function jobFor(cloth: object, panels: readonly object[], more: object = {}): ProjectJob {
  const stock = [{ kind: "roll", id: "r", width: 1000, selvedge: 0, squaring: 0 }];
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Facts", unit: "mm", gap: 0, margin: 0, panels },
      materials: [{ id: "c", kind: "woven", thickness: 0.5, grain: "lengthwise", stock, ...cloth }],
      ...more,
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return jobOf(read.value);
}

function laid(job: ProjectJob): LayJob & { readonly plan: LayPlan } {
  const [one] = job.lays;
  const plan = inOneGo(arrange(one!.problem, (each) => chooseEngines(each, "free"), { evaluations: 20_000 }, 1));
  expect(checkPlan(one!.problem, plan)).toEqual([]);
  return { ...one!, plan };
}

const toBuy = (job: ProjectJob): number => {
  const { material, plan } = laid(job);
  return purchaseOf(material, plan, { currency: "EUR" }).buyLength;
};

describe("what a shop's cut and the wash take (common practice, no source)", () => {
  // "1 m" came as 40 in, another order 2 in crooked, another 5 in short: 2 to 5 cm are allowed for at each cut end.
  test("an open roll is squared at both ends: 2 cm each unless said, 5 cm hold a cut that is 2 in crooked", () => {
    const cloth = (squaring: object) => ({ stock: [{ kind: "roll", id: "r", width: 1000, ...squaring }] });
    const long = rectangle("p", 1000, 900);
    const usual = toBuy(jobFor(cloth({}), [long]));
    expect(usual).toBe(1040);
    expect(40 * INCH).toBeLessThan(usual);
    const most = toBuy(jobFor(cloth({ squaring: "5 cm" }), [long]));
    expect(most).toBe(1100);
    expect(most - 2 * INCH).toBeGreaterThan(1000);
    // Five inches short is a wrong order, which no squaring makes good.
    expect(most - 5 * INCH).toBeLessThan(1000);
  });

  // 60 in became 56 1/4 in: 6.25 %. Some cottons lose up to 2 in of 44 in, one maker sees 10 % of the width.
  test.each([
    ["6.25 %", 60, 56.25],
    ["10 %", 44, 39.6],
    ["4.5 %", 44, 42.02],
    ["0 %", 44, 44],
  ])("with %s of crosswise shrinkage %d in of width are %d in after the wash", (crosswise, before, after) => {
    const cloth = {
      shrinkage: { lengthwise: 0, crosswise, when: "before-cutting" },
      stock: [{ kind: "roll", id: "r", width: `${before} in`, selvedge: 0 }],
    };
    const { problem } = jobFor(cloth, [rectangle("p", 100, 100)]).lays[0]!;
    expect((problem.stocks[0] as { width: number }).width).toBeCloseTo(after * INCH, 6);
  });

  // Called pre-shrunk a cloth is to lose less than 3 % each way; warp and weft lose each their own, warp 10 % or more.
  // Cut = finished ÷ (1 − s): exact arithmetic on that model, not finished × (1 + s).
  test.each([
    ["3 %", 103.09, 100],
    ["5 %", 105.26, 100],
    ["10 %", 111.11, 100],
  ])(
    "100 mm to be washed after making at %s along the warp alone are cut %d mm long and %d mm wide",
    (s, along, across) => {
      const cloth = { shrinkage: { lengthwise: s, crosswise: 0, when: "after-making" } };
      const { dx, dy } = boxOf(jobFor(cloth, [rectangle("p", 100, 100)]).lays[0]!.problem);
      expect([dx.toFixed(2), dy.toFixed(2)]).toEqual([along.toFixed(2), across.toFixed(2)]);
      const weft = { shrinkage: { lengthwise: 0, crosswise: s, when: "after-making" } };
      const other = boxOf(jobFor(weft, [rectangle("p", 100, 100)]).lays[0]!.problem);
      expect([other.dx.toFixed(2), other.dy.toFixed(2)]).toEqual([across.toFixed(2), along.toFixed(2)]);
    },
  );
});

function boxOf({ pieces }: LayProblem): { dx: number; dy: number } {
  const { minX, maxX, minY, maxY } = ringBox(pieces[0]!.outline.outer);
  return { dx: maxX - minX, dy: maxY - minY };
}

// A repeat across the width matters only where pieces meet side by side: common practice, no source.
describe("a repeat across the cloth", () => {
  const panels = [rectangle("front", 300, 180, { count: 2 }), rectangle("side", 300, 130, { count: 2 })];
  const match = { first: { panel: "front", edge: 2 }, second: { panel: "side", edge: 0 } };
  const used = (job: ProjectJob): number => laid(job).plan.uses[0]!.usedLength;

  test("changes neither plan nor length to buy where nothing meets side by side", () => {
    const plain = jobFor({}, panels);
    const across = jobFor({ repeat: { across: 170 } }, panels);
    expect(laid(across).plan).toEqual(laid(plain).plan);
    expect(toBuy(across)).toBe(toBuy(plain));
    // One along is bought for, once, to begin where it is wanted.
    expect(toBuy(jobFor({ repeat: { along: 170, across: 170 } }, panels))).toBe(toBuy(plain) + 170);
    // Matched over the seam in the lines across the cloth alone, it changes nothing either.
    const crosswise = (repeat: object) => jobFor({ repeat }, panels, { matches: [{ ...match, axes: "along" }] });
    const both = crosswise({ along: 60, across: 170, symmetric: true });
    expect(both.lays[0]!.problem.pieces.every(({ match: held }) => held?.along === true && !held.across)).toBe(
      true,
    );
    expect(used(both)).toBe(used(crosswise({ along: 60, symmetric: true })));
  });

  test("holds pieces that meet side by side, and takes cloth: the checker finds one a tolerance off", () => {
    const job = jobFor({ repeat: { along: 60, across: 170, symmetric: true } }, panels, {
      matches: [{ ...match, axes: "both" }],
    });
    const { problem, plan } = laid(job);
    expect(problem.pieces.every(({ match: held }) => held?.across === true)).toBe(true);
    const off = (by: number) =>
      checkPlan(problem, {
        ...plan,
        placements: plan.placements.map((one, i) => (i === 0 ? { ...one, y: one.y + by } : one)),
      }).map(({ code }) => code);
    const tolerance = problem.pattern!.tolerance;
    expect(off(tolerance + 0.01)).toContain("plan-off-pattern");
    expect(off(tolerance - 0.01)).not.toContain("plan-off-pattern");
    // Side by side four rows of 180, 180, 130, 130 mm take 620 of 1000 mm; on the repeat of 170 they reach further.
    expect(used(job)).toBeGreaterThanOrEqual(used(jobFor({}, panels)));
    const ends = plan.placements.map((one) => {
      const piece = problem.pieces.find(({ id }) => id === one.pieceId)!;
      return ringBox(poseRing(piece.outline.outer, one)).maxY;
    });
    expect(Math.max(...ends)).toBeGreaterThan(620);
  });
});

// Marker efficiency by weight: the pieces on the scale ÷ the whole layer on the scale (common practice, no source).
// The scale here: points of a fine grid, each with the weight of its cell; they know nothing of our sums of areas.
test("the share of cloth in the pieces is what weighing pieces and layer gives", () => {
  const points = [
    [0, 0],
    [380, 0],
    [300, 210],
    [90, 240],
  ];
  const job = jobFor({}, [
    rectangle("p", 280, 220, { count: 3 }),
    { ...rectangle("q", 0, 0), count: 2, shape: { kind: "outline", points } },
  ]);
  const { problem, plan } = laid(job);
  const step = 4;
  const length = plan.uses[0]!.usedLength;
  const rings = plan.placements.map((one) =>
    poseRing(problem.pieces.find(({ id }) => id === one.pieceId)!.outline.outer, one),
  );
  let [inside, all] = [0, 0];
  for (let x = step / 2; x < length; x += step)
    for (let y = step / 2; y < 1000; y += step) {
      all++;
      if (rings.some((ring) => isInside(ring, x, y))) inside++;
    }
  const areas = 3 * 280 * 220 + 2 * shoelace(points);
  expect(inside / all).toBeCloseTo(areas / (length * 1000), 2);
});

/** Crossings of a ray to the right, counted. */
function isInside(ring: Float64Array, x: number, y: number): boolean {
  let crossed = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) crossed = !crossed;
  }
  return crossed;
}

function shoelace(points: readonly (readonly number[])[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + (x! * ny! - nx! * y!) / 2;
  }, 0);
}

// Open and closed lays, layers face to face and face up: common practice, no source.
describe("layers and fold", () => {
  const triangle = {
    kind: "outline",
    points: [
      [0, 0],
      [300, 0],
      [0, 200],
    ],
  };
  const handed = (count: number, mirrored: number) => ({
    ...rectangle("side", 0, 0),
    shape: triangle,
    count,
    mirrored,
  });
  const kinds = (spread: unknown, panel: object) =>
    jobFor({ spread }, [panel]).lays[0]!.problem.pieces.map(({ id, count }) => `${count} ${id}`);

  test("on a fold lie halves of pieces whose halves are alike, and no others", () => {
    const odd = rectangle("flap", 300, 240);
    expect(kinds("folded", odd)).toEqual(["1 flap~fold"]);
    // Not alike: laid whole, with its mirror image to spare.
    expect(kinds("folded", handed(1, 0))).toEqual(["1 side"]);
  });

  test("face to face each piece comes with its mirror image, face up it does not", () => {
    expect(kinds({ layers: 2, faces: "together" }, handed(3, 3))).toEqual(["3 side"]);
    expect(kinds({ layers: 2, faces: "up" }, handed(4, 4))).toEqual(["2 side", "2 side~mirrored"]);
    // All of one hand: face up two at a time, face to face each with one that is of no use.
    expect(kinds({ layers: 2, faces: "up" }, handed(4, 0))).toEqual(["2 side"]);
    expect(kinds({ layers: 2, faces: "together" }, handed(4, 0))).toEqual(["4 side"]);
  });
});
