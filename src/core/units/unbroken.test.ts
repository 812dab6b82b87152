import { expect, test } from "vitest";
import { unbroken } from "./numberWords.ts";
import { parseLength } from "./parseLength.ts";

/** Where a line may break, as a bar. */
const breaks = (text: string): string => unbroken(text).replaceAll(" ", "|").replaceAll("\u00a0", " ");

test("a size keeps together: number, unit, times sign and fraction", () => {
  expect(breaks("440 × 110 mm")).toBe("440 × 110 mm");
  expect(breaks("640 mm × 420 mm")).toBe("640 mm × 420 mm");
  expect(breaks("≈48 15/16 × ≈7 3/32 in")).toBe("≈48 15/16 × ≈7 3/32 in");
  expect(breaks("1.42 m")).toBe("1.42 m");
  expect(breaks("98,4 cm")).toBe("98,4 cm");
  expect(breaks("120 cm²")).toBe("120 cm²");
  expect(breaks("3 1/8 yd")).toBe("3 1/8 yd");
});

test("shares and prices keep together as well", () => {
  expect(breaks("At most 5.9 % over the bound.")).toBe("At|most|5.9 %|over|the|bound.");
  expect(breaks("Buy 1.2 m, 29.40 EUR.")).toBe("Buy|1.2 m,|29.40 EUR.");
});

test("the words round a size break as before", () => {
  expect(breaks("Leaves 60 × 180 mm in one piece.")).toBe("Leaves|60 × 180 mm|in|one|piece.");
  expect(breaks("Left over: 85 × 415 mm, 85 × 390 mm.")).toBe("Left|over:|85 × 415 mm,|85 × 390 mm.");
  expect(breaks("38 × Closing strap, outer")).toBe("38 ×|Closing|strap,|outer");
  expect(breaks("7 cuts, 2 of 10 mats, 5 inches, 3 mirrored")).toBe("7|cuts,|2|of|10|mats,|5|inches,|3|mirrored");
});

test("a size that was copied from the page can be typed in again", () => {
  const range = { minMm: 0, maxMm: 10_000 };
  expect(parseLength(unbroken("3 7/8 in"), "mm", "", range)).toEqual({ ok: true, value: 98.425 });
});
