import { expect, test } from "vitest";
import { inOneGo } from "../../lay/search/breath.ts";
import { seededRng } from "../../lay/search/rng.ts";
import { readProject } from "../../project/file/readProject.ts";
import { fromPiece } from "./fromPiece.ts";

const QUICK = { mode: "free", evaluations: 60_000, seed: 1 } as const;

function made(
  [length, width]: readonly [number, number],
  straps: readonly (readonly [across: number, along: number])[],
  panels: readonly (readonly [along: number, across: number])[] = [],
) {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Quay", unit: "mm", bags: 1, gap: 0, margin: 0 },
      materials: [
        { id: "canvas", kind: "woven", thickness: 0.5, stock: [{ kind: "roll", id: "roll", width: 2000 }] },
      ],
      straps: straps.map(([cut, along], i) => ({
        ...{ id: `s${i}`, construction: "fourfold", width: { cut }, length: { cut: along } },
        materials: { outer: "canvas" },
      })),
      panels: panels.map(([along, across], i) => ({
        ...{ id: `p${i}`, material: "canvas", grain: "either", shape: { kind: "rectangle", along, across } },
      })),
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return inOneGo(fromPiece(read.value, read.value.materials[0]!, { length, width }, QUICK));
}

const INCH = 25.4;

// Most straps from a piece, all the same, in the best two blocks: exact arithmetic, no cutting gap. More blocks may give
// more, never more than the areas allow; 13 in the first is the most there is, and 0 is none.
test.each([
  ["10 × 70 cm from 1 m × 107 cm", [1000, 1070], [100, 700], 13],
  ["10 × 70 cm from 1 m × 137 cm", [1000, 1370], [100, 700], 16],
  ["16 × 70 cm from 1 m × 148 cm", [1000, 1480], [160, 700], 12],
  ["7.5 × 60 cm from 0.5 m × 137 cm", [500, 1370], [75, 600], 12],
  ["12 × 66 cm from 1 m × 107 cm", [1000, 1070], [120, 660], 11],
  ["10 × 150 cm from 1 m × 107 cm", [1000, 1070], [100, 1500], 0],
  ["10 × 152 cm from 1.6 m × 107 cm", [1600, 1070], [100, 1520], 10],
  ["4 × 28 in from 1 yd × 42 in", [36 * INCH, 42 * INCH], [4 * INCH, 28 * INCH], 12],
  ["4 × 18 in from a quarter of 18 × 21 in", [18 * INCH, 21 * INCH], [4 * INCH, 18 * INCH], 5],
] as const)("%s", (_, piece, strap, most) => {
  const { straps } = made(piece, [strap]);
  const { count } = straps[0]!.alone;
  expect(count).toBeGreaterThanOrEqual(most);
  const areas = Math.floor((piece[0] * piece[1]) / (strap[0] * strap[1]) + 1e-9);
  expect(count).toBeLessThanOrEqual(most === 13 || most === 0 ? most : areas);
});

// Common practice, no source: a gusset of 43 in lies across cloth of 45 and 60 in, one of 46 in not across 45 in.
test("a bag whose gusset is longer than the piece is wide and long is not made from it", () => {
  const piece = (width: number) => [40 * INCH, width * INCH] as const;
  const bag = (gusset: number) =>
    [
      [13 * INCH, 15 * INCH],
      [gusset * INCH, 4 * INCH],
    ] as const;
  expect(made(piece(45), [], bag(43)).bags.count).toBeGreaterThan(0);
  expect(made(piece(60), [], bag(43)).bags.count).toBeGreaterThan(0);
  expect(made(piece(45), [], bag(46)).bags.count).toBe(0);
});

// By hand: a bag of 300 × 400 and its strap of 100 × 400 fill 400 × 400 of 400 × 700; three more straps lie beside it.
test("bags first, then straps on what is left beside them", () => {
  const { bags, straps } = made([400, 700], [[100, 400]], [[300, 400]]);
  expect(bags.count).toBe(1);
  expect(straps[0]).toMatchObject({ alone: { count: 7 }, besides: { count: 3 } });
});

test("law: more cloth never makes fewer bags or straps", () => {
  for (let seed = 1; seed <= 6; seed++) {
    const rng = seededRng(seed);
    const [length, width] = [400 + 50 * rng.below(8), 400 + 50 * rng.below(8)];
    const strap = [[60 + 10 * rng.below(6), 200 + 50 * rng.below(6)]] as const;
    const panel = [[150 + 50 * rng.below(4), 150 + 50 * rng.below(4)]] as const;
    const less = made([length, width], strap, panel);
    const more = made([length + 100, width], strap, panel);
    expect(more.bags.count, `seed ${seed}`).toBeGreaterThanOrEqual(less.bags.count);
    expect(more.straps[0]!.alone.count, `seed ${seed}`).toBeGreaterThanOrEqual(less.straps[0]!.alone.count);
  }
});
