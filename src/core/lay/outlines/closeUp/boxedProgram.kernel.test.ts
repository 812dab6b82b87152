import fc from "fast-check";
import { expect, test } from "vitest";
import { boxedProgram, solveBoxed, startBoxed, WIDTH } from "./boxedProgram.kernel.ts";

interface Case {
  readonly cost: number[];
  readonly range: number[];
  readonly rows: { readonly factors: number[]; readonly least: number }[];
}

/** Solves `size` equations by Gauss–Jordan; null when they are (nearly) dependent. */
function solved(equations: number[][], size: number): number[] | null {
  const m = equations.map((row) => [...row]);
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c; r < size; r++) if (Math.abs(m[r]![c]!) > Math.abs(m[pivot]![c]!)) pivot = r;
    if (Math.abs(m[pivot]![c]!) < 1e-9) return null;
    [m[c], m[pivot]] = [m[pivot]!, m[c]!];
    for (let r = 0; r < size; r++) {
      if (r === c) continue;
      const f = m[r]![c]! / m[c]![c]!;
      m[r] = m[r]!.map((value, k) => value - f * m[c]![k]!);
    }
  }
  return m.map((row, r) => row[size]! / row[r]!);
}

/** Slow twin: the cheapest of all corners, each where as many rows or limits as unknowns are tight. */
function cheapestCorner({ cost, range, rows }: Case): number | null {
  const size = cost.length;
  const unit = (i: number): number[] => cost.map((_, k) => (k === i ? 1 : 0));
  const planes = [
    ...rows.map(({ factors, least }) => [...factors, least]),
    ...range.flatMap((top, i) => [
      [...unit(i), 0],
      [...unit(i), top],
    ]),
  ];
  let best: number | null = null;
  const visit = (from: number, chosen: number[][]): void => {
    if (chosen.length === size) {
      const v = solved(chosen, size);
      if (v === null) return;
      const fits =
        v.every((x, i) => x >= -1e-7 && x <= range[i]! + 1e-7) &&
        rows.every(({ factors, least }) => factors.reduce((sum, f, i) => sum + f * v[i]!, 0) >= least - 1e-7);
      const price = v.reduce((sum, x, i) => sum + x * cost[i]!, 0);
      if (fits && (best === null || price < best)) best = price;
      return;
    }
    for (let k = from; k < planes.length; k++) visit(k + 1, [...chosen, planes[k]!]);
  };
  visit(0, []);
  return best;
}

const whole = (low: number, high: number) => fc.integer({ min: low, max: high });
const cases = fc.integer({ min: 1, max: 3 }).chain((size) =>
  fc.record({
    cost: fc.array(whole(0, 5), { minLength: size, maxLength: size }),
    range: fc.array(whole(0, 6), { minLength: size, maxLength: size }),
    rows: fc.array(
      fc.record({
        factors: fc.array(whole(-3, 3), { minLength: size, maxLength: size }),
        least: whole(-5, 8),
      }),
      { maxLength: 6 },
    ),
  }),
);

test("the program's answer is the cheapest corner, found by trying them all", () => {
  fc.assert(
    fc.property(cases, (given) => {
      const { cost, range, rows } = given;
      const program = boxedProgram(cost.length, 6);
      program.cost.set(cost);
      program.range.set(range);
      for (const [r, { factors, least }] of rows.entries()) {
        for (const [i, factor] of factors.entries()) {
          program.index[r * WIDTH + i] = i;
          program.factor[r * WIDTH + i] = factor;
        }
        program.least[r] = least;
      }
      program.rows = rows.length;
      startBoxed(program);
      const status = solveBoxed(program, 1000, 1e-9);
      const expected = cheapestCorner(given);
      expect(status).toBe(expected === null ? -1 : 1);
      if (expected === null) return;
      const price = cost.reduce((sum, c, i) => sum + c * program.v[i]!, 0);
      expect(price).toBeCloseTo(expected, 6);
      for (const { factors, least } of rows)
        expect(factors.reduce((sum, f, i) => sum + f * program.v[i]!, 0)).toBeGreaterThan(least - 1e-6);
    }),
    { numRuns: 400 },
  );
});

/** Unknowns in a row, each at least so far behind some of those before it. */
const chains = fc.integer({ min: 2, max: 40 }).chain((size) =>
  fc.record({
    size: fc.constant(size),
    cost: fc.array(whole(1, 5), { minLength: size, maxLength: size }),
    behind: fc.array(fc.record({ a: whole(0, size - 1), b: whole(0, size - 1), apart: whole(1, 9) }), {
      maxLength: 3 * size,
    }),
    range: whole(5, 60),
  }),
);

test("larger programs of distances end at the longest ways, found by walking all of them", () => {
  fc.assert(
    fc.property(chains, ({ size, cost, behind, range }) => {
      const rows = behind
        .filter(({ a, b }) => a !== b)
        .map(({ a, b, apart }) => ({ from: Math.min(a, b), to: Math.max(a, b), apart }));
      const program = boxedProgram(size, Math.max(1, rows.length));
      program.cost.set(cost);
      program.range.fill(range);
      for (const [r, { from, to, apart }] of rows.entries()) {
        program.index.set([to, from], r * WIDTH);
        program.factor.set([1, -1], r * WIDTH);
        program.least[r] = apart;
      }
      program.rows = rows.length;
      startBoxed(program);
      const status = solveBoxed(program, 10_000, 1e-9);
      const longest = Array.from({ length: size }, () => 0);
      for (let to = 0; to < size; to++)
        for (const row of rows)
          if (row.to === to) longest[to] = Math.max(longest[to]!, longest[row.from]! + row.apart);
      expect(status).toBe(Math.max(...longest) > range ? -1 : 1);
      if (status === 1) for (const [i, way] of longest.entries()) expect(program.v[i]).toBeCloseTo(way, 6);
    }),
    { numRuns: 300 },
  );
});
