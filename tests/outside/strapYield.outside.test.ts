// Outside reference: HiGHS (general-purpose mixed integer solver, npm `highs`) on the exact position model of
// Beasley 1985 (Oper. Res. 33:49–64): one binary per direction and position, every point covered at most once.
import loadHighs from "highs";
import { expect, test } from "vitest";
import { alikeQuestions } from "../../src/core/lay/boxes/straps/alikeQuestions.ts";
import { packByBlocks } from "../../src/core/lay/boxes/straps/blockRecursion.ts";
import { normalPoints } from "../../src/core/lay/boxes/straps/raster.ts";
import type { YieldQuestion } from "../../src/core/lay/boxes/straps/strapProblem.ts";
import { barBound, barnesBound, yieldBound } from "../../src/core/lay/boxes/straps/yieldBounds.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

function positionModel({ a, b, length, width }: YieldQuestion): { text: string; variables: number } {
  const xs = normalPoints(a, b, length);
  const ys = normalPoints(a, b, width);
  const covering = new Map<string, string[]>();
  const names: string[] = [];
  for (const [dx, dy, way] of [
    [a, b, "l"],
    [b, a, "c"],
  ] as const) {
    for (const x of xs) {
      for (const y of ys) {
        if (x + dx > length || y + dy > width) continue;
        const name = `${way}_${x}_${y}`;
        names.push(name);
        for (const px of xs) {
          if (px < x || px >= x + dx) continue;
          for (const py of ys) {
            if (py < y || py >= y + dy) continue;
            const key = `${px}_${py}`;
            covering.set(key, [...(covering.get(key) ?? []), name]);
          }
        }
      }
    }
  }
  const rows = [...new Set([...covering.values()].map((list) => list.join(" + ")))];
  const text = `Maximize\n obj: ${names.join("\n + ")}\nSubject To\n${rows.map((row, i) => ` r${i}: ${row.replaceAll(" + ", "\n + ")} <= 1`).join("\n")}\nBinary\n ${names.join("\n ")}\nEnd\n`;
  return { text, variables: names.length };
}

/** Straps that leave a model small enough for the solver. */
function smallQuestions(count: number, seed: number): YieldQuestion[] {
  const rng = seededRng(seed);
  const found: YieldQuestion[] = [];
  while (found.length < count) {
    const b = 2 + rng.below(6);
    const a = b + 1 + rng.below(12);
    const question = { a, b, length: a + rng.below(4 * a), width: a + rng.below(3 * a) };
    const positions = normalPoints(a, b, question.length).length * normalPoints(a, b, question.width).length;
    if (positions < 350 && yieldBound(question) > 3) found.push(question);
  }
  return found;
}

test("equal to the exact model wherever it settles, and no bound below it", async () => {
  const highs = await loadHighs();
  let settled = 0;
  let open = 0;
  for (const question of smallQuestions(40, 5)) {
    const solution = highs.solve(positionModel(question).text, { mip_max_nodes: 400, output_flag: false });
    if (solution.Status !== "Optimal") continue;
    settled++;
    const most = Math.round(solution.ObjectiveValue);
    const bound = yieldBound(question);
    const told = JSON.stringify({ ...question, most });
    expect(packByBlocks(question, bound, 3, 3e6).count, told).toBe(most);
    expect(bound, told).toBeGreaterThanOrEqual(most);
    const alike = alikeQuestions(question);
    for (const like of alike) expect(barnesBound(like), told).toBeGreaterThanOrEqual(most);
    expect(barBound(alike, 1e6), told).toBeGreaterThanOrEqual(most);
    if (bound > most) open++;
  }
  console.log(`strap yield: ${settled} of 40 settled by the exact model; bound above the optimum on ${open}`);
  expect(settled).toBeGreaterThanOrEqual(30);
});
