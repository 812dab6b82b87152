import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { searchChoices } from "../../src/core/lay/alternatives/searchChoices.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { BREATH } from "../../src/core/lay/search/breath.ts";
import { CUT_MODES, type CutMode } from "../../src/core/lay/search/engine.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { faultsOf } from "./judgePlan.ts";
import type { Draw, Kind } from "./kind.ts";
import type { Json } from "./schemaValues.ts";

/** Sizes are whole millimetres; shapes that a bag has. */
function shape(draw: Draw): object {
  const [along, across] = [30 + draw.below(300), 30 + draw.below(200)];
  const kind = draw.below(3);
  if (kind === 0) return { kind: "rectangle", along, across };
  if (kind === 1)
    return { kind: "rounded", along, across, radius: 1 + draw.below(Math.floor(Math.min(along, across) / 2)) };
  const cut = 1 + draw.below(Math.floor(along / 3));
  return {
    kind: "outline",
    points: [
      [0, 0],
      [along, 0],
      [along - cut, across],
      [cut, across],
    ],
  };
}

/** None, one, or as many as make a roll a sieve. */
function flawsOf(draw: Draw): object {
  const count = draw.one([0, 0, 0, 1, 1, 12]);
  const spread = count > 1 ? 10 : 1;
  const flaw = (): object => ({
    at: [draw.below(300 * spread), draw.below(200 * Math.min(spread, 5))],
    shape: { kind: "rectangle", along: 5 + draw.below(120), across: 5 + draw.below(80) },
  });
  return count === 0 ? {} : { flaws: Array.from({ length: count }, flaw) };
}

function stock(draw: Draw): object[] {
  const width = 250 + draw.below(900);
  const flaws = flawsOf(draw);
  const roll = {
    kind: "roll",
    id: "roll",
    width,
    selvedge: draw.below(20),
    ...(draw.below(3) === 0 ? { length: 400 + draw.below(2000) } : {}),
    ...flaws,
  };
  const left = { kind: draw.one(["remnant", "skin"]), id: "left", shape: shape(draw), ...flaws };
  return draw.one([[roll], [roll], [left, roll], [left]]);
}

/** A project of one cloth and a few pieces, as its file holds it: most can be laid. */
export function smallProject(draw: Draw): Record<string, Json> {
  const panels = Array.from({ length: draw.one([1, 1, 2, 2, 3]) }, (_, i) => ({
    id: `p${i}`,
    name: `Panel ${i}`,
    material: "cloth",
    shape: shape(draw),
    count: draw.one([1, 1, 2, 3]),
    mirrored: draw.below(2),
    grain: draw.one(["lengthwise", "crosswise", "either", "free"]),
    seamAllowance: draw.below(12),
  }));
  const straps =
    draw.below(2) === 0
      ? []
      : [
          {
            id: "s",
            name: "Strap",
            construction: draw.one(["fourfold", "three-raw", "bonded"]),
            width: 15 + draw.below(30),
            length: 200 + draw.below(900),
            count: draw.one([1, 2, 4]),
            materials: { outer: "cloth" },
          },
        ];
  const cloth = {
    id: "cloth",
    kind: draw.one(["woven", "vinyl", "leather", "felt"]),
    thickness: draw.one([0.3, 0.6, 1, 1.4]),
    oneWay: draw.one([false, false, false, true, "up", "down", "free"]),
    facesAlike: draw.below(3) === 0,
    ...draw.one([{}, {}, {}, { spread: "folded" }, { spread: { layers: 2 + draw.below(2) } }, LAYERED]),
    ...draw.one([{}, {}, {}, { repeat: 20 + draw.below(80) }, { repeat: repeat(draw) }]),
    ...draw.one([{}, {}, {}, { tilt: 1 + draw.below(5) }]),
    ...(draw.below(8) === 0 ? { shadeBand: 800 + draw.below(2000) } : {}),
    stock: stock(draw),
  };
  const parts = [...panels, ...straps].map(({ id }) => id).filter(() => draw.below(2) === 0);
  const isPatterned = "repeat" in cloth && draw.below(3) > 0;
  return {
    laywright: 1,
    name: "case",
    unit: "mm",
    bags: draw.one([1, 1, 1, 2, 3]),
    gap: draw.one([0, 0, 2, 5]),
    margin: draw.one([0, 0, 3]),
    materials: [cloth],
    panels,
    straps,
    ...(isPatterned
      ? { centred: parts.map((part) => ({ part, on: draw.one(["line", "between", "same-place"]) })) }
      : {}),
  } as unknown as Record<string, Json>;
}

const LAYERED = { spread: { layers: 2, faces: "together" } };

function repeat(draw: Draw): object {
  return {
    ...draw.one([{ across: 30 + draw.below(60) }, { along: 25 + draw.below(60), across: 30 + draw.below(60) }]),
    firstAlong: draw.below(20),
    firstAcross: draw.below(20),
    symmetric: draw.below(2) === 0,
  };
}

/** Pieces left out for want of cloth although a roll has no end. */
function leftOut(problem: LayProblem, plan: LayPlan): string[] {
  const hasOpenRoll = problem.stocks.some((stock) => stock.kind === "roll" && stock.length === null);
  const short = plan.unplaced.filter(({ reason }) => reason === "stock-used-up");
  return hasOpenRoll ? short.map(({ pieceId, count }) => `${count} of ${pieceId} left out of an open roll`) : [];
}

/** The plans offered to choose from, every one that was offered until the effort was spent. */
function choicesOf(problem: LayProblem): LayPlan[] {
  const plans = new Set<LayPlan>();
  for (const step of searchChoices(problem, { evaluations: 4 * EFFORT }, 1)) {
    if (step === BREATH) continue;
    for (const { plan } of step.choices ?? []) plans.add(plan);
    if (plans.size > 0 && step.evaluations >= 4 * EFFORT) break;
  }
  return [...plans];
}

/** Evaluations of a lay: enough for a plan of each mode, few enough for dozens of projects a second. */
const EFFORT = 1000;

/** The best plan when the effort is spent, as a host gets it that stops a search. */
function planOf(problem: LayProblem, mode: CutMode): LayPlan {
  const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations: EFFORT }, 1);
  let best: LayPlan | null = null;
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    if (step.value === BREATH) continue;
    best = step.value.plan ?? best;
    if (best !== null && step.value.evaluations >= EFFORT) return best;
  }
}

/** The same problem with some of a plan's pieces pinned where they lie, besides those that its fold holds. */
function pinnedBy(problem: LayProblem, { placements }: LayPlan, draw: Draw): LayProblem {
  const held = new Set(problem.pinned.map(({ pieceId, copy }) => `${pieceId} ${copy}`));
  const more = placements.filter(({ pieceId, copy }) => draw.below(3) === 0 && !held.has(`${pieceId} ${copy}`));
  return { ...problem, pinned: [...problem.pinned, ...more] };
}

/** Random small projects laid in every mode, each plan judged by outside polygon code (polyclip-ts). */
export const smallProjects: Kind = {
  name: "plans",
  about:
    "random small projects (one way, faces alike, patterns, folded, layers, tilt, bands, flaws, skins) laid free, by ruler, in few stages, to choose from and round pins, plans judged by polyclip-ts",
  limitMs: 60_000,
  run: (draw) => {
    const text = JSON.stringify(smallProject(draw));
    const read = readProject(text);
    if (!read.ok) return "refused";
    const cut = cutListOf(read.value);
    if (!cut.ok) return "refused";
    let plans = 0;
    const tell = (what: string, faults: readonly string[]): void => {
      plans++;
      if (faults.length > 0) throw new Error(`${what}: ${faults.slice(0, 3).join("; ")}: ${text}`);
    };
    for (const problem of layProblemsOf(read.value, cut.value)) {
      const free = planOf(problem, "free");
      // Straight cuts alone cannot always take every piece, and then say so; nor can bands hold every bag.
      const left = problem.shade === undefined ? leftOut(problem, free) : [];
      tell("free", [...faultsOf(problem, free), ...left]);
      // One other way for each project: more projects show more than more plans of one.
      const ways = draw.below(5);
      if (ways < 3) {
        const mode = CUT_MODES[1 + ways]!;
        tell(mode, faultsOf(problem, planOf(problem, mode)));
      } else if (ways === 3) {
        const held = pinnedBy(problem, free, draw);
        tell("pinned", faultsOf(held, planOf(held, draw.one(CUT_MODES))));
      } else for (const plan of choicesOf(problem)) tell("choices", faultsOf(problem, plan));
    }
    return plans === 0 ? "nothing to lay" : "laid";
  },
};
