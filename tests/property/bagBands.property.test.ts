// Bags kept in one band of the roll on cloth in layers, and mirrored pairs on cloth of one way. The trade's rules (layers
// face to face give mirrored pairs, face up they do not; a nap runs one way on every piece): common practice, no source.
import { expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { poseRing } from "../../src/core/geometry/pose.ts";
import { jobOf } from "../../src/core/job/projectJob.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem, StockPlacement } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import type { Project } from "../../src/core/project/project.ts";
import { directionWords } from "../../src/export/cutsheet/layWords.ts";
import { seedOf } from "../tools/seeded.ts";

interface Laid {
  readonly project: Project;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
}

function laid(file: object): Laid {
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const project = read.value;
  const { problem } = jobOf(project).lays[0]!;
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1 }, 1));
  return { project, problem, plan };
}

const codes = (problem: LayProblem, plan: LayPlan): string[] => checkPlan(problem, plan).map(({ code }) => code);

const changed = (plan: LayPlan, at: number, change: (one: StockPlacement) => object): LayPlan => ({
  ...plan,
  placements: plan.placements.map((one, i) => (i === at ? { ...one, ...change(one) } : one)),
});

interface Wishes {
  readonly spread?: "folded" | { readonly layers: number; readonly faces: "up" | "together" };
  readonly oneWay?: "up" | "down" | "free";
  readonly band?: number;
  readonly bags: number;
  /** Whether panels with a left and a right hand are among the parts. */
  readonly handed: boolean;
}

/** Made up: one to three panels a bag, some of them in pairs. */
function fileOf(seed: number, { spread, oneWay, band, bags, handed }: Wishes): object {
  const rng = seededRng(seedOf(7000 + seed));
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const panels = Array.from({ length: whole(1, 3) }, (_, i) => {
    const [w, h] = [whole(60, 160), whole(60, 160)];
    const isHanded = handed && (i === 0 || rng.unit() < 0.4);
    const points = [
      [0, 0],
      [w, 0],
      [0, h],
    ];
    return {
      ...{ id: `p${i}`, material: "velvet", seamAllowance: 0 },
      ...(isHanded ? { count: whole(1, 2), mirrored: whole(1, 2) } : { count: whole(1, 3) }),
      shape: isHanded ? { kind: "outline", points } : { kind: "rectangle", along: w, across: h },
    };
  });
  return {
    ...{ laywright: 1, name: "Made up", unit: "mm", bags, gap: 2, margin: 3, panels },
    materials: [
      {
        ...{ id: "velvet", kind: "woven", thickness: 0.8, grain: "lengthwise" },
        ...(oneWay ? { oneWay } : {}),
        ...(band ? { shadeBand: band } : {}),
        ...(spread ? { spread } : {}),
        stock: [{ kind: "roll", id: "roll", width: spread === "folded" ? 600 : 340, selvedge: 10 }],
      },
    ],
  };
}

/** What lies where on one layer after the cut: the panel, its hand, and from where to where along the layer, mm. */
interface CutOut {
  readonly of: string;
  readonly hand: "asDrawn" | "mirrored";
  readonly from: number;
  readonly to: number;
}

/** The stretches of roll under a plan, each with what is cut from it for each of its bags, told by the layers alone. */
function bagsCut({ project, problem, plan }: Laid): CutOut[][] {
  const { bags } = project;
  const spread = project.materials[0]!.spread ?? null;
  const layers = spread === null ? 1 : spread.kind === "folded" ? 2 : spread.layers;
  const isTogether = spread !== null && (spread.kind === "folded" || spread.faces === "together");
  // Folded lengthwise both layers are the same stretch of the roll; lengths on one another are stretches of their own.
  const stretches = spread?.kind === "layers" ? layers : 1;
  const perStretch = problem.shade!.bags;
  expect(stretches * perStretch * (spread?.kind === "folded" && perStretch < bags ? 2 : 1)).toBe(bags);
  const cut: CutOut[][] = Array.from({ length: stretches * perStretch }, () => []);
  for (const placement of plan.placements) {
    const piece = problem.pieces.find(({ id }) => id === placement.pieceId)!;
    const bag = Math.floor((placement.copy * perStretch) / piece.count);
    const { minX, maxX } = ringBox(poseRing(piece.outline.outer, placement));
    for (let layer = 0; layer < layers; layer++) {
      const isImage = placement.pieceId.endsWith("~mirrored") !== placement.mirrored;
      const hand = isImage !== (isTogether && layer % 2 === 1) ? "mirrored" : "asDrawn";
      const of = placement.pieceId.replace("~mirrored", "");
      cut[(stretches === 1 ? 0 : layer * perStretch) + bag]!.push({ of, hand, from: minX, to: maxX });
    }
  }
  return cut;
}

const HOW: readonly Wishes[] = [
  { bags: 4, handed: true, spread: { layers: 2, faces: "up" } },
  { bags: 6, handed: true, spread: { layers: 3, faces: "up" }, oneWay: "free" },
  { bags: 4, handed: false, spread: { layers: 2, faces: "together" } },
  { bags: 4, handed: true, spread: "folded" },
  { bags: 2, handed: false, spread: "folded", oneWay: "down" },
  { bags: 3, handed: true },
];

test("on cloth in layers every bag comes whole from one band: counted out layer by layer, with both hands", () => {
  let [bagsSeen, byHair, swapped] = [0, 0, 0];
  for (let seed = 0; seed < 24; seed++) {
    const wishes = HOW[seed % HOW.length]!;
    const one = laid(fileOf(seed, { ...wishes, band: 420 }));
    const { project, problem, plan } = one;
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(plan.unplaced, `case ${seed}`).toEqual([]);
    const pieces = jobOf(project).pieces;
    const cut = bagsCut(one);
    for (const parts of cut) {
      const atOnce = project.bags / cut.length;
      for (const piece of pieces) {
        const own = parts.filter(({ of }) => of === piece.id);
        const hands = { asDrawn: 0, mirrored: 0 };
        for (const { hand } of own) hands[hand]++;
        expect(own.length).toBeGreaterThanOrEqual((atOnce * (piece.count + piece.mirroredCount)) / project.bags);
        if (piece.mirroredCount === 0) continue;
        expect(hands.asDrawn).toBeGreaterThanOrEqual((atOnce * piece.count) / project.bags);
        expect(hands.mirrored).toBeGreaterThanOrEqual((atOnce * piece.mirroredCount) / project.bags);
      }
      const [from, to] = [Math.min(...parts.map((p) => p.from)), Math.max(...parts.map((p) => p.to))];
      expect(to - from).toBeLessThanOrEqual(420 + 1e-6);
      bagsSeen += atOnce;
    }
    // Planted: a band shorter by a hair than what the longest bag takes; and the parts of two bags exchanged.
    const longest = Math.max(
      ...cut.map((parts) => Math.max(...parts.map(({ to }) => to)) - Math.min(...parts.map(({ from }) => from))),
    );
    const { shade } = problem;
    expect(codes({ ...problem, shade: { ...shade!, band: longest - 0.01 } }, plan)).toContain("plan-bag-scattered");
    expect(codes({ ...problem, shade: { ...shade!, band: longest } }, plan)).toEqual([]);
    byHair++;
    const piece = problem.pieces.find(({ count }) => count > 1);
    if (piece === undefined || shade!.bags < 2 || problem.pieces.length < 2) continue;
    const far = {
      ...plan,
      placements: plan.placements.map((p) =>
        p.pieceId === piece.id ? { ...p, copy: piece.count - 1 - p.copy } : p,
      ),
    };
    const apart = bagsCut({ ...one, plan: far }).some(
      (parts) => Math.max(...parts.map(({ to }) => to)) - Math.min(...parts.map(({ from }) => from)) > 420.001,
    );
    expect(codes(problem, far).includes("plan-bag-scattered")).toBe(apart);
    if (apart) swapped++;
  }
  expect(bagsSeen).toBeGreaterThan(60);
  expect(byHair).toBe(24);
  expect(swapped).toBeGreaterThan(1);
}, 120_000);

test.each([
  ["3 bags in 2 layers", { bags: 3, handed: true, spread: { layers: 2, faces: "up" } }, /2 layers give 2 bags/u],
  ["left and right face to face", { bags: 2, handed: true, spread: { layers: 2, faces: "together" } }, /face up/u],
  ["an odd number folded", { bags: 3, handed: false, spread: "folded" }, /an even number|\bone layer\b/u],
] as const)("%s: bags are not kept together, and it is said why and what helps", (_, wishes, why) => {
  // The first panel comes once a bag, so that two bags share what is cut of it at once.
  const file = fileOf(3, { ...wishes, band: 400 }) as { panels: { count: number }[] };
  file.panels[0]!.count = 1;
  const { project, problem, plan } = laid(file);
  expect(problem.shade).toBeUndefined();
  expect(checkPlan(problem, plan)).toEqual([]);
  const material = project.materials[0]!;
  for (const [language, start] of [
    ["en", "The parts of each bag are not kept together here: "],
    ["de", "Die Teile jeder Tasche bleiben hier nicht beisammen: "],
  ] as const)
    expect(directionWords(material, problem, plan, project, language).join(" ")).toContain(start);
  expect(directionWords(material, problem, plan, project, "en").join(" ")).toMatch(why);
});

test("where a piece does not fit beside the fold it stays on it, and the band is given up with a sentence", () => {
  const file = fileOf(1, { bags: 2, handed: false, spread: "folded", band: 900 }) as Record<string, unknown>;
  const wide = { id: "wide", material: "velvet", count: 1, shape: { kind: "rectangle", along: 100, across: 400 } };
  const { project, problem, plan } = laid({ ...file, panels: [wide] });
  expect(problem.pieces.map(({ id }) => id)).toEqual(["wide~fold"]);
  expect(directionWords(project.materials[0]!, problem, plan, project, "en").join(" ")).toContain(
    "beside the fold",
  );
});

const SPREADS = [undefined, { layers: 2, faces: "up" }, { layers: 4, faces: "together" }, "folded"] as const;
const WAYS = ["up", "down", "free"] as const;

test("left and right under one way: every plan keeps nap and face, and each piece turned, turned over or of the other hand is found", () => {
  const found = { turned: 0, over: 0, hand: 0 };
  for (let seed = 0; seed < 24; seed++) {
    const spread = SPREADS[seed % SPREADS.length];
    const oneWay = WAYS[Math.floor(seed / SPREADS.length) % WAYS.length]!;
    const { problem, plan } = laid(
      fileOf(100 + seed, { bags: 2, handed: true, oneWay, ...(spread ? { spread } : {}) }),
    );
    expect(checkPlan(problem, plan), `case ${seed}`).toEqual([]);
    expect(plan.unplaced).toEqual([]);
    const isFree = oneWay === "free";
    const ways = new Set(plan.placements.map(({ turnDeg, mirrored }) => (turnDeg + (mirrored ? 180 : 0)) % 360));
    expect(ways.size, `case ${seed}`).toBe(1);
    if (!isFree) expect([...ways]).toEqual([oneWay === "up" ? 0 : 180]);
    const wrong = isFree ? "plan-two-ways" : "plan-turn-not-allowed";
    for (const [at, { pieceId }] of plan.placements.entries()) {
      if (isFree && plan.placements.length < 2) continue;
      expect(
        codes(
          problem,
          changed(plan, at, (one) => ({ turnDeg: (one.turnDeg + 180) % 360 })),
        ),
      ).toContain(wrong);
      found.turned++;
      // Turned over in its place, which a face forbids in a single layer and face up; else its nap runs the other way.
      const over = codes(
        problem,
        changed(plan, at, (one) => ({ mirrored: !one.mirrored })),
      );
      const isFaced = spread === undefined || (typeof spread === "object" && spread.faces === "up");
      expect(over).toContain(isFaced ? "plan-turn-not-allowed" : wrong);
      found.over++;
      const image = pieceId.endsWith("~mirrored") ? pieceId.replace("~mirrored", "") : `${pieceId}~mirrored`;
      if (!problem.pieces.some(({ id }) => id === image)) continue;
      expect(
        codes(
          problem,
          changed(plan, at, () => ({ pieceId: image })),
        ),
      ).toContain("plan-miscounted");
      found.hand++;
    }
    // All of them turned together: allowed where the way is free, not where it is said.
    const all = { ...plan, placements: plan.placements.map((p) => ({ ...p, turnDeg: (p.turnDeg + 180) % 360 })) };
    expect(codes(problem, all).includes("plan-two-ways")).toBe(false);
    expect(codes(problem, all).includes("plan-turn-not-allowed")).toBe(!isFree);
  }
  expect(Math.min(found.turned, found.over, found.hand)).toBeGreaterThan(20);
}, 120_000);
