import fc from "fast-check";
import { expect, test } from "vitest";
import { formatLength, showLength, writeLength } from "../../src/core/units/formatLength.ts";
import { type LengthUnit, MM_PER_UNIT } from "../../src/core/units/lengthWords.ts";
import { parseLength } from "../../src/core/units/parseLength.ts";

const UNITS = Object.keys(MM_PER_UNIT) as LengthUnit[];
const unit = fc.constantFrom(...UNITS);
// Nothing shorter than an atom: below that a written length would be longer than a text that is looked at.
const lengthMm = fc.double({ min: 0, max: 9e5, noNaN: true }).filter((mm) => mm === 0 || mm > 1e-9);

test("a written length reads back to exactly the same number, in every unit", () => {
  fc.assert(
    fc.property(lengthMm, unit, unit, (mm, written, other) => {
      expect(parseLength(writeLength(mm, written), other, "")).toEqual({ ok: true, value: mm });
    }),
    { numRuns: 2000 },
  );
});

test("a shown length says how far it is off, and marks it when that is more than 0.05 mm", () => {
  const style = fc.constantFrom("mm", "cm", "m", "in/16", "in/32", "yd/8");
  fc.assert(
    fc.property(lengthMm, style, (mm, name) => {
      const shown = showLength(mm, name);
      const read = parseLength(shown.text, "mm", "");
      expect(read.ok && Math.abs(read.value - mm - shown.offByMm)).toBeLessThan(1e-6);
      expect(formatLength(mm, name).startsWith("≈")).toBe(Math.abs(shown.offByMm) > 0.05 + 1e-9);
    }),
    { numRuns: 2000 },
  );
});

test("mixed numbers are exact: n + a/b inches is the double nearest to the fraction", () => {
  const whole = fc.integer({ min: 0, max: 500 });
  fc.assert(
    fc.property(whole, fc.integer({ min: 0, max: 64 }), fc.constantFrom(2, 4, 8, 16, 32, 64), (n, a, b) => {
      // (n b + a) 254 / (10 b) has both sides below 2^53: one division, one rounding.
      expect(parseLength(`${n} ${a}/${b} in`, "mm", "")).toEqual({
        ok: true,
        value: ((n * b + a) * 254) / (10 * b),
      });
    }),
  );
});

test("no text makes the reader throw, and what it accepts is finite and in range", () => {
  const piece = fc.constantFrom(
    "1",
    "20",
    "3.5",
    ",5",
    "1/2",
    "½",
    " ",
    "-",
    "'",
    '"',
    "″",
    "mm",
    "in",
    "yd",
    "m",
    "e",
    "%",
  );
  const text = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.array(piece).map((pieces) => pieces.join("")),
  );
  fc.assert(
    fc.property(text, unit, (typed, inUnit) => {
      const read = parseLength(typed, inUnit, "p");
      if (read.ok) expect(read.value >= 0 && read.value <= 1e6).toBe(true);
      else expect(read.problems.every((problem) => problem.path === "p")).toBe(true);
    }),
    { numRuns: 3000 },
  );
});
