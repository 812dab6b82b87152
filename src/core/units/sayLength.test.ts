import { expect, test } from "vitest";
import { sayLengths } from "./sayLength.ts";

// 25.4 mm to the inch: international yard and pound agreement of 1959.
test("in inches: on the ruler as fractions, small lengths beside it in decimals, large ones to the nearest division", () => {
  const say = sayLengths("in/16", "en");
  expect(say(25.4 * 4.875)).toBe("4 7/8 in");
  expect(say(9.525)).toBe("3/8 in");
  expect(say(0.5)).toBe("0.0197 in");
  expect(say(101)).toBe("≈4 in");
  expect(say(101, "fine")).toBe("3.976 in");
  expect(say(0)).toBe("0 in");
});

test("in metric units: tenths of a millimetre, all figures where two lengths are set against each other", () => {
  const say = sayLengths("mm", "de");
  expect(say(12.34)).toBe("12,3 mm");
  expect(say(0.013)).toBe("0,013 mm");
  expect(say(1.953, "fine")).toBe("1,953 mm");
  expect(sayLengths("cm", "en")(123.4)).toBe("12.34 cm");
  expect(sayLengths("yd/8", "en")(914.4)).toBe("36 in");
});

test("figures: two where a length is below a tenth of a millimetre, four where two lengths differ by little", () => {
  const say = sayLengths("mm", "en");
  expect([0.0123, 0.0987, 0.46].map((mm) => say(mm))).toEqual(["0.012 mm", "0.099 mm", "0.5 mm"]);
  expect(say(12.34567, "fine")).toBe("12.35 mm");
  expect(sayLengths("in/16", "en")(12.34567, "fine")).toBe("0.4861 in");
});
