// Twenty made-up jobs of matched panels on striped cloth: what the matching costs, beside the same job without it, the
// proven bound and cutting piece by piece. `npx tsx tests/bench/stripeJobs.ts [EVALUATIONS [SEED [JOB …]]]`; ends with 1
// when any of them loses more than half a repeat for each matched row.
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

const JOBS = 20;
const WIDTH = 1090;
const GAP = 2;

/** Fronts and gussets of a few bags, matched along the roll, with flaps and pockets that are not. */
export function stripeJob(seed: number): LayProblem {
  const rng = seededRng(7000 + seed);
  const whole = (low: number, high: number): number => low + rng.below(high - low + 1);
  const bags = whole(2, 4);
  const height = whole(240, 400);
  const turns = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));
  const panel = (id: string, along: number, across: number, count: number, isMatched: boolean): LayPiece => {
    const lean = seed % 2 === 0 ? 0 : whole(10, 30);
    const ring = Float64Array.of(0, 0, along, lean, along, across - lean, 0, across);
    const match = { group: "bag", x: along / 2, y: 0, senseX: 1, senseY: 1, along: true, across: false } as const;
    return {
      ...{ id, count: count * bags, orientations: turns, freeTurn: false },
      outline: solid(lean === 0 ? rectangleRing(0, 0, along, across) : ring),
      ...(isMatched ? { match } : {}),
    };
  };
  return {
    ...{ materialId: "striped", gap: GAP, margin: 5, pinned: [] },
    pieces: [
      panel("front", height, whole(260, 420), 2, true),
      panel("gusset", height, whole(90, 160), 2, true),
      panel("flap", whole(150, 260), whole(220, 380), 1, false),
      panel("pocket", whole(120, 200), whole(140, 240), 2, false),
    ],
    stocks: [{ kind: "roll", id: "roll", width: WIDTH, length: null, flaws: [] }],
    pattern: {
      ...{ along: whole(30, 120), across: null, firstAlong: whole(0, 30), firstAcross: 0 },
      ...{ halfDrop: false, symmetric: true, tolerance: 1 },
    },
  };
}

/** Each kind of matched panel in rows of its own, every row begun on a whole repeat; the others laid in rows after. */
function pieceByPiece({ pieces, pattern, margin }: LayProblem): number {
  const repeat = pattern!.along!;
  const rows = pieces.map(({ outline, count, match }) => {
    const ring = outline.outer;
    const [along, across] = [0, 1].map((axis) => Math.max(...ring.filter((_, i) => i % 2 === axis)) + GAP);
    const each = Math.floor((WIDTH - 2 * margin + GAP) / across!);
    const step = match === undefined ? along! : Math.ceil(along! / repeat) * repeat;
    return Math.ceil(count / each) * step;
  });
  return rows.reduce((sum, length) => sum + length, 0);
}

/** Rows of matched panels across the roll: places along it at which one begins, those within half a repeat being one. */
function matchedRows(problem: LayProblem, plan: LayPlan): number {
  const lengths = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  const starts = plan.placements
    .filter(({ pieceId }) => lengths.get(pieceId)!.match !== undefined)
    .map(({ pieceId, turnDeg, x }) => {
      const along = Math.max(...lengths.get(pieceId)!.outline.outer.filter((_, i) => i % 2 === 0));
      return turnDeg === 180 ? x - along : x;
    })
    .sort((a, b) => a - b);
  const least = problem.pattern!.along! / 2;
  return starts.filter((at, i) => i === 0 || at - starts[i - 1]! > least).length;
}

function lay(problem: LayProblem, evaluations: number, seed: number): LayPlan {
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations }, seed));
  const faults = checkPlan(problem, plan);
  if (faults.length > 0 || plan.unplaced.length > 0) throw new Error(`${faults[0]?.code ?? "left out"}`);
  return plan;
}

const isMain = process.argv[1]?.endsWith("stripeJobs.ts") === true;
if (isMain) {
  const evaluations = Number(process.argv[2] ?? 1_000_000);
  const searchSeed = Number(process.argv[3] ?? 1);
  const mm = (value: number): string => value.toFixed(0).padStart(6);
  console.log("job  repeat matched   free  bound  piece by piece   loss  rows  allowed");
  const sums = { matched: 0, free: 0, bound: 0, single: 0, loss: 0, allowed: 0, over: 0 };
  const asked = process.argv.slice(4).map(Number);
  const seeds = asked.length > 0 ? asked : Array.from({ length: JOBS }, (_, i) => i + 1);
  for (const seed of seeds) {
    const problem = stripeJob(seed);
    const { pattern, ...plain } = problem;
    const [plan, without] = [lay(problem, evaluations, searchSeed), lay(plain, evaluations, searchSeed)];
    const [matched, free] = [plan.uses[0]!.usedLength, without.uses[0]!.usedLength];
    const bound = plan.uses[0]!.bound ?? 0;
    const single = pieceByPiece(problem);
    const rows = matchedRows(problem, plan);
    const [loss, allowed] = [matched - free, (rows * pattern!.along!) / 2];
    if (loss > allowed) sums.over++;
    sums.matched += matched;
    sums.free += free;
    sums.bound += bound;
    sums.single += single;
    sums.loss += loss;
    sums.allowed += allowed;
    console.log(
      `${String(seed).padStart(3)} ${mm(pattern!.along!)} ${mm(matched)} ${mm(free)} ${mm(bound)} ${mm(single).padStart(14)} ${mm(loss)} ${String(rows).padStart(5)} ${mm(allowed)}`,
    );
  }
  console.log(
    `all         ${mm(sums.matched)} ${mm(sums.free)} ${mm(sums.bound)} ${mm(sums.single).padStart(14)} ${mm(sums.loss)}       ${mm(sums.allowed)}   jobs over: ${sums.over}`,
  );
  process.exitCode = sums.over > 0 ? 1 : 0;
}
