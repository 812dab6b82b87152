import fc from "fast-check";
import { expect, test } from "vitest";
import { lengthFromRoll, rollTaken } from "./layerLengths.ts";
import { matchedLength } from "./quantity.ts";

// Cut step = length rounded up to whole repeats, straight match: common practice, no source. The waste in the same
// three cases, 12, 9 and 12 in: exact arithmetic on that model.
test("lengths on one another step by whole repeats; the last ends where it ends", () => {
  for (const [length, repeat, step, waste] of [
    [96, 27, 108, 12],
    [116, 25, 125, 9],
    [118, 13, 130, 12],
  ] as const) {
    expect(rollTaken(length, 2, repeat)).toBe(step + length);
    expect(rollTaken(length, 5, repeat) - 5 * length).toBe(4 * waste);
  }
  // A strap of 70 cm on a repeat of 32 cm takes 96 cm, 37 % more: exact arithmetic on that model.
  expect(rollTaken(700, 3, 320)).toBe(2 * 960 + 700);
  expect(960 / 700 - 1).toBeCloseTo(0.37, 2);
  expect(rollTaken(700, 4, null)).toBe(2800);
});

// The lower rule of one whole repeat more a piece over-buys: an upper bound. Common practice, no source.
test("no step is a whole repeat longer than its length", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 900 }), (length, repeat) => {
      expect(matchedLength(length, repeat)).toBeLessThan(length + repeat);
      expect(matchedLength(length, repeat)).toBeGreaterThanOrEqual(length);
    }),
  );
});

test("a roll gives the longest length that takes no more than the roll", () => {
  const mm = fc.integer({ min: 0, max: 20_000 });
  fc.assert(
    fc.property(
      mm,
      fc.integer({ min: 2, max: 50 }),
      fc.option(fc.integer({ min: 1, max: 900 })),
      (roll, n, repeat) => {
        const length = lengthFromRoll(roll, n, repeat);
        expect(rollTaken(length, n, repeat)).toBeLessThanOrEqual(roll + 1e-6);
        if (length > 0) expect(rollTaken(length + 0.01, n, repeat)).toBeGreaterThan(roll);
      },
    ),
  );
});
