import { expect, test } from "vitest";
import { chooseHalves } from "./foldChoice.ts";

const cloth = { width: 6, margin: 0, gap: 0 };
const box = (along: number, across: number) => ({ along, across });

test("two narrow panels lie whole beside each other where halves in a row would be the longest thing on the cloth", () => {
  // By hand: four halves of 4 × 2 in a row with two of 3 × 3 take 22 along; two whole ones of 4 × 4, two halves of
  // 3 × 3 at the fold and two pieces of 3 × 2 beside everything take 11 (the exact model's length).
  const kinds = [
    { half: box(4, 2), whole: [box(4, 4)], count: 4, most: 4 },
    { half: box(3, 3), whole: [box(3, 6)], count: 2, most: 2 },
  ];
  const others = [[box(3, 2)], [box(3, 2)]];
  const places = chooseHalves(kinds, others, [4, 2], cloth);
  expect(places).not.toBeNull();
  expect(Math.max(...places!.map(({ kind, x }) => x + kinds[kind]!.half.along))).toBeLessThanOrEqual(11);
  // None lie on one another along the fold.
  const spans = places!.map(({ kind, x }) => [x, x + kinds[kind]!.half.along] as const).sort((a, b) => a[0] - b[0]);
  for (const [i, [from]] of spans.entries()) if (i > 0) expect(from).toBeGreaterThanOrEqual(spans[i - 1]![1]);
});

test("none lie on the fold where two halves make one whole piece that fits beside it", () => {
  expect(chooseHalves([{ half: box(4, 3), whole: [box(4, 6)], count: 2, most: 2 }], [], [2], cloth)).toEqual([]);
});

test("a plain row stays where nothing is shorter, and where a panel is too long to lie beside the fold", () => {
  const tight = [{ half: box(4, 2), whole: [box(4, 4)], count: 2, most: 2 }];
  expect(chooseHalves(tight, [[box(4, 4)], [box(4, 4)]], [2], cloth)).toBeNull();
  const deep = [{ half: box(4, 5), whole: [], count: 3, most: 3 }];
  expect(chooseHalves(deep, [[box(2, 1)]], [3], cloth)).toBeNull();
});
