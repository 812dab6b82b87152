import loadHighs from "highs";
import { expect, test } from "vitest";
import { jointBound } from "../../src/core/lay/bounds/jointBound.ts";
import { type BoundHolder, quickBound } from "../../src/core/lay/bounds/quickBound.ts";
import { reachableLengths } from "../../src/core/lay/bounds/reachableLengths.ts";
import { sweepTurns } from "../../src/core/lay/bounds/sweepTurns.ts";
import { type SearchTables, searchTables } from "../../src/core/lay/problem/rectangles/searchTables.ts";
import { BREATH } from "../../src/core/lay/search/breath.ts";
import { seededRng } from "../../src/core/lay/search/rng.ts";

// Oracle: the exact position model (one binary per way and place, every cell covered at most once) by HiGHS.

function positionModel(tables: SearchTables, longest: number): string {
  const terms = new Map<string, string[]>();
  const ends: string[] = [];
  const placed: string[][] = Array.from({ length: tables.sizes }, () => []);
  for (let way = 0; way < tables.ways; way++) {
    const [across, along] = [tables.wayAcross[way]!, tables.wayAlong[way]!];
    for (let y = 0; y + across <= tables.width; y++) {
      for (let x = 0; x + along <= longest; x++) {
        const name = `p${way}_${y}_${x}`;
        placed[tables.waySize[way]!]!.push(name);
        ends.push(` ${name}e: z - ${x + along} ${name} >= 0`);
        for (let i = 0; i < across; i++)
          for (let j = 0; j < along; j++) {
            const cell = `c${y + i}_${x + j}`;
            if (!terms.has(cell)) terms.set(cell, []);
            terms.get(cell)!.push(name);
          }
      }
    }
  }
  const rows = [
    ...[...terms].map(([cell, names]) => ` ${cell}: ${names.join(" + ")} <= 1`),
    ...placed.map((names, size) => ` s${size}: ${names.join(" + ")} = ${tables.sizeCount[size]!}`),
    ...ends,
  ];
  return `Minimize\n obj: z\nSubject To\n${rows.join("\n")}\nBinary\n ${placed.flat().join(" ")}\nEnd`;
}

test("no bound exceeds the optimum of the exact model", async () => {
  const highs = await loadHighs();
  let equal = 0;
  const jobs = 12;
  for (let seed = 1; seed <= jobs; seed++) {
    const rng = seededRng(seed);
    const width = 5 + rng.below(3);
    const sizes = Array.from({ length: 2 + rng.below(2) }, () => {
      const [a, b] = [1 + rng.below(width), 1 + rng.below(5)];
      return {
        count: 1 + rng.below(2),
        ways: a !== b && b <= width ? [[a, b] as const, [b, a] as const] : [[a, b] as const],
      };
    });
    const tables = searchTables(width, sizes, []);
    const longest = Math.ceil(tables.area / width) + 4;
    const solved = highs.solve(positionModel(tables, longest));
    if (solved.Status !== "Optimal") continue;
    const optimum = Math.round(solved.ObjectiveValue);
    const quick = quickBound(tables);
    let joint = 0;
    for (const step of jointBound(tables, reachableLengths(tables, longest), quick, () => optimum + 1)) {
      if (step !== BREATH) joint = Math.max(joint, step.bound);
    }
    const swept: BoundHolder = { value: quick };
    for (const work of sweepTurns(tables, reachableLengths(tables, longest), swept, () => optimum + 1)(1e8))
      if (work !== BREATH) expect(work).toBeGreaterThanOrEqual(0);
    expect(swept.value, `seed ${seed}`).toBeLessThanOrEqual(optimum);
    expect(quick, `seed ${seed}`).toBeLessThanOrEqual(optimum);
    expect(joint, `seed ${seed}`).toBeLessThanOrEqual(optimum);
    if (Math.max(quick, joint, swept.value) === optimum) equal++;
  }
  // A bound of nothing would pass the lines above.
  expect(equal).toBeGreaterThan(jobs / 2);
});
