import loadHighs from "highs";
import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayMatch, LayPattern, LayPiece, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

// Oracle: the exact model (order of every two boxes by binaries, whole repeats by integers, the phases of the groups
// free) by HiGHS, a general solver for mixed integer programs. Jobs made up; up to six boxes, whole millimetres.

const JOBS = 110;
const FINE_JOBS = 60;

interface Job extends LayProblem {
  readonly pattern: LayPattern;
}

/** Sizes in whole millimetres; or, of one group, in hundredths of them, which no even steps of a phase meet. */
function randomJob(seed: number, isFine = false): Job {
  const rng = seededRng(1000 + seed);
  const whole = (low: number, high: number): number =>
    isFine ? Math.min(high, low + rng.below(100 * (high - low + 1)) / 100) : low + rng.below(high - low + 1);
  const symmetric = rng.unit() < 0.6;
  const pattern: LayPattern = {
    along: whole(3, 9),
    across: rng.unit() < 0.4 ? whole(3, 7) : null,
    firstAlong: whole(0, 4),
    firstAcross: whole(0, 4),
    halfDrop: false,
    symmetric,
    tolerance: 0.5,
  };
  const count = isFine ? 2 + (seed % 3) : seed % 10 === 0 ? 6 : 2 + (seed % 4);
  const pieces = Array.from({ length: count }, (_, i): LayPiece => {
    const [dx, dy] = [whole(3, 11), whole(3, 9)];
    const match: LayMatch = {
      ...{ group: rng.unit() < 0.75 || isFine ? "a" : "b", x: whole(0, dx), y: whole(0, dy), along: true },
      ...{ across: rng.unit() < 0.7, senseX: 1, senseY: 1 },
    };
    const orientations = (symmetric && rng.unit() < 0.6 ? [0, 180] : [0]).map((turnDeg) => ({
      turnDeg,
      mirrored: false,
    }));
    const outline = solid(rectangleRing(0, 0, dx, dy));
    const isMatched = rng.unit() < 0.75;
    return { id: `p${i}`, outline, count: 1, orientations, freeTurn: false, ...(isMatched ? { match } : {}) };
  });
  const phases = rng.unit() < 0.3 ? { a: { along: whole(0, 2), across: null } } : undefined;
  return {
    ...{ materialId: "c", pieces, gap: 0, margin: 0, pinned: [], pattern, ...(phases ? { phases } : {}) },
    stocks: [{ kind: "roll", id: "roll", width: whole(13, 19), length: null, flaws: [] }],
  };
}

/** The model in the text format that the solver reads; no plan is longer than `most`. */
function exactModel({ pieces, pattern, phases, stocks }: Job, most: number): string {
  const width = stocks[0]!.kind === "roll" ? stocks[0]!.width : 0;
  const rows: string[] = [];
  const binaries: string[] = [];
  const integers: string[] = [];
  const bounds: string[] = [` z <= ${most}`];
  const term = (factor: number, name: string): string => `${factor < 0 ? "-" : "+"} ${Math.abs(factor)} ${name}`;
  const big = 4 * (most + width);
  const size = pieces.map(({ outline }) => [outline.outer[4]!, outline.outer[5]!] as const);
  for (const [i, { match, orientations }] of pieces.entries()) {
    const [dx, dy] = size[i]!;
    rows.push(` z - x${i} >= ${dx}`);
    bounds.push(` 0 <= x${i} <= ${most - dx}`, ` 0 <= y${i} <= ${width - dy}`);
    const turns = orientations.map((_, k) => `w${i}_${k}`);
    binaries.push(...turns);
    rows.push(` ${turns.join(" + ")} = 1`);
    if (match === undefined) continue;
    for (const [k, { turnDeg }] of orientations.entries()) {
      const sign = turnDeg === 180 ? -1 : 1;
      const on = (axis: "along" | "across", at: number, name: string, first: number): void => {
        const period = pattern[axis];
        if (period === null || !match[axis]) return;
        const whole = `n${name}${i}`;
        if (!integers.includes(whole)) {
          integers.push(whole);
          bounds.push(` -40 <= ${whole} <= 60`);
        }
        const fixed = phases?.[match.group]?.[axis] ?? null;
        const phase = `f${name}${match.group}`;
        if (fixed === null && !bounds.some((row) => row.endsWith(` ${phase} <= ${period}`)))
          bounds.push(` 0 <= ${phase} <= ${period}`);
        const right = first + sign * (fixed ?? 0) - at;
        const left = `${name}${i} ${term(-period, whole)}${fixed === null ? ` ${term(-sign, phase)}` : ""}`;
        rows.push(
          ` ${left} + ${big} w${i}_${k} <= ${right + big}`,
          ` ${left} - ${big} w${i}_${k} >= ${right - big}`,
        );
      };
      on("along", turnDeg === 180 ? dx - match.x : match.x, "x", pattern.firstAlong);
      on("across", turnDeg === 180 ? dy - match.y : match.y, "y", pattern.firstAcross);
    }
    for (let j = 0; j < i; j++) {
      const beside = ["l", "r", "b", "a"].map((side) => `${side}${j}_${i}`);
      binaries.push(...beside);
    }
  }
  for (let i = 0; i < pieces.length; i++)
    for (let j = 0; j < i; j++) {
      const [l, r, b, a] = ["l", "r", "b", "a"].map((side) => `${side}${j}_${i}`);
      for (const name of [l, r, b, a]) if (!binaries.includes(name!)) binaries.push(name!);
      rows.push(
        ` ${l} + ${r} + ${b} + ${a} >= 1`,
        ` x${j} - x${i} + ${most} ${l} <= ${most - size[j]![0]}`,
        ` x${i} - x${j} + ${most} ${r} <= ${most - size[i]![0]}`,
        ` y${j} - y${i} + ${width} ${b} <= ${width - size[j]![1]}`,
        ` y${i} - y${j} + ${width} ${a} <= ${width - size[i]![1]}`,
      );
    }
  const numbered = rows.map((row, i) => ` r${i}:${row}`);
  return `Minimize\n obj: z\nSubject To\n${numbered.join("\n")}\nBounds\n${bounds.join("\n")}\nGeneral\n ${integers.join(" ")}\nBinary\n ${binaries.join(" ")}\nEnd\n`;
}

const lay = (problem: LayProblem, of: string): number => {
  const plan = inOneGo(arrange(problem, (one) => chooseEngines(one, "free"), { evaluations: 8_000_000 }, 1));
  expect(checkPlan(problem, plan), of).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  return plan.uses[0]!.usedLength;
};

async function againstModel(jobs: number, isFine: boolean): Promise<{ differing: string[]; dearer: number }> {
  const highs = await loadHighs();
  const differing: string[] = [];
  let dearer = 0;
  for (let seed = 1; seed <= jobs; seed++) {
    const job = randomJob(seed, isFine);
    const ours = lay(job, `job ${seed}`);
    const solved = highs.solve(exactModel(job, ours + 1), { mip_rel_gap: 0, time_limit: 120 });
    if (solved.Status !== "Optimal") differing.push(`job ${seed}: ${solved.Status}`);
    else if (Math.abs(solved.ObjectiveValue - ours) > 1e-4)
      differing.push(`job ${seed}: ${ours} laid, ${solved.ObjectiveValue} possible`);
    const { pattern: _, ...plain } = job;
    if (lay(plain, `job ${seed}`) < ours - 1e-6) dearer++;
  }
  return { differing, dearer };
}

test("boxes on a pattern are laid as short as the exact model says, on every job", async () => {
  const { differing, dearer } = await againstModel(JOBS, false);
  expect(differing).toEqual([]);
  // A pattern that cost nothing would not have been looked at.
  expect(dearer).toBeGreaterThan(JOBS / 4);
}, 900_000);

test("also where sizes are hundredths of a millimetre: phases are worked out, not tried in steps", async () => {
  const { differing, dearer } = await againstModel(FINE_JOBS, true);
  expect(differing).toEqual([]);
  expect(dearer).toBeGreaterThan(FINE_JOBS / 4);
}, 900_000);
