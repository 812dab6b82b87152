// Cloth folded lengthwise, halves on the fold: our plan against the exact position model (one binary per piece and
// place, every cell covered at most once, halves at the fold only), solved by HiGHS. How many lie on the fold is free
// in the model: two of a panel on it or one whole one beside it give the same.
import loadHighs from "highs";
import { expect, test } from "vitest";
import { jobOf } from "../../src/core/job/projectJob.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";

/** One cell, mm. */
const CELL = 40;

/** Sizes in cells: `across` is half of what is cut of a panel on the fold, all of it of another. */
interface SmallPiece {
  readonly along: number;
  readonly across: number;
  readonly count: number;
  readonly onFold: boolean;
}

/** Cells across the folded cloth. */
function smallJob(seed: number): { readonly width: number; readonly pieces: readonly SmallPiece[] } {
  const rng = seededRng(seed);
  const width = 5 + rng.below(3);
  const halves = Array.from(
    { length: 1 + rng.below(2) },
    (): SmallPiece => ({
      along: 2 + rng.below(4),
      across: 1 + rng.below(3),
      count: 1 + rng.below(4),
      onFold: true,
    }),
  );
  const pairs = Array.from(
    { length: 1 + rng.below(2) },
    (): SmallPiece => ({
      along: 1 + rng.below(4),
      across: 1 + rng.below(4),
      count: 2 * (1 + rng.below(2)),
      onFold: false,
    }),
  );
  return { width, pieces: [...halves, ...pairs] };
}

function exactModel(width: number, pieces: readonly SmallPiece[], longest: number): string {
  const cells = new Map<string, string[]>();
  const ends: string[] = [];
  const all: string[] = [];
  const gives = pieces.map(({ along, across, onFold }, p) => {
    const put = (name: string, deep: number, y: number, x: number): void => {
      all.push(name);
      ends.push(` ${name}e: z - ${x + along} ${name} >= 0`);
      for (let i = 0; i < deep; i++)
        for (let j = 0; j < along; j++) {
          const cell = `c${y + i}_${x + j}`;
          cells.set(cell, [...(cells.get(cell) ?? []), name]);
        }
    };
    const terms: string[] = [];
    const whole = onFold ? 2 * across : across;
    for (let x = 0; x + along <= longest; x++) {
      if (onFold && across <= width) {
        put(`h${p}_${x}`, across, 0, x);
        terms.push(`h${p}_${x}`);
      }
      for (let y = 0; y + whole <= width; y++) {
        put(`w${p}_${y}_${x}`, whole, y, x);
        terms.push(`2 w${p}_${y}_${x}`);
      }
    }
    return terms;
  });
  const rows = [
    ...[...cells].map(([cell, names]) => ` ${cell}: ${names.join(" + ")} <= 1`),
    ...gives.map((terms, p) => ` g${p}: ${terms.join(" + ")} >= ${pieces[p]!.count}`),
    ...ends,
  ];
  return `Minimize\n obj: z\nSubject To\n${rows.join("\n")}\nBinary\n ${all.join(" ")}\nEnd`;
}

function ourLength(width: number, pieces: readonly SmallPiece[]): number {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Small", unit: "mm", gap: 0, margin: 0 },
      materials: [
        {
          ...{ id: "cloth", kind: "woven", thickness: 0.5, grain: "lengthwise", spread: "folded" },
          stock: [{ kind: "roll", id: "roll", width: 2 * width * CELL, selvedge: 0, squaring: 0 }],
        },
      ],
      panels: pieces.map(({ along, across, count, onFold }, p) => ({
        ...{ id: `p${p}`, material: "cloth", count },
        shape: { kind: "rectangle", along: along * CELL, across: across * CELL },
        ...(onFold ? { fold: "bottom" } : {}),
      })),
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { problem } = jobOf(read.value).lays[0]!;
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1_000_000 }, 1));
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced).toEqual([]);
  return plan.uses[0]!.usedLength / CELL;
}

test("on small jobs nearly every plan is as short as the exact model's", async () => {
  const highs = await loadHighs();
  let [solved, equal, over] = [0, 0, 0];
  for (let seed = 1; seed <= 24; seed++) {
    const { width, pieces } = smallJob(seed);
    const ours = ourLength(width, pieces);
    const model = highs.solve(exactModel(width, pieces, Math.ceil(ours - 1e-6)), { time_limit: 20 });
    if (model.Status !== "Optimal") continue;
    const optimum = Math.round(model.ObjectiveValue);
    solved++;
    // A plan shorter than the optimum would overlap, or lack something.
    expect(ours, `seed ${seed}`).toBeGreaterThan(optimum - 1e-6);
    if (ours < optimum + 1e-6) equal++;
    over += ours / optimum - 1;
  }
  const longer = (100 * over) / solved;
  console.info(
    `folded cloth: ${equal} of ${solved} as short as can be, ${longer.toFixed(1)} % longer on the average`,
  );
  expect(solved).toBeGreaterThan(20);
  expect(equal / solved).toBeGreaterThan(0.85);
}, 300_000);
