import { expect, test } from "vitest";
import { readCount, readMoney, readShare } from "./parseNumber.ts";
import { readThickness } from "./parseThickness.ts";

test("shares", () => {
  expect(readShare("3 %", "s", 0, 0.3)).toEqual({ ok: true, value: 0.03 });
  expect(readShare("2,5%", "s", 0, 0.3)).toEqual({ ok: true, value: 0.025 });
  expect(readShare(0.03, "s", 0, 0.3)).toEqual({ ok: true, value: 0.03 });
  expect(readShare("3 cm", "s", 0, 0.3)).toMatchObject({ problems: [{ code: "share-unreadable" }] });
  expect(readShare(3, "s", 0, 0.3)).toMatchObject({ problems: [{ code: "share-out-of-range", share: 3 }] });
  // A share has no sign.
  for (const text of ["+3 %", "-3 %", "-3", ""])
    expect(readShare(text, "s", 0, 0.3), text).toMatchObject({ problems: [{ code: "share-unreadable", text }] });
});

test("counts and money", () => {
  expect(readCount("12", "n", 1, 100)).toEqual({ ok: true, value: 12 });
  expect(readCount(2.5, "n", 1, 100)).toMatchObject({ problems: [{ code: "count-unreadable" }] });
  expect(readCount(1e9, "n", 1, 10_000)).toMatchObject({ problems: [{ code: "count-out-of-range" }] });
  expect(readMoney("12,50", "p")).toEqual({ ok: true, value: 12.5 });
  for (const [text, value] of [
    ["€ 24,50", 24.5],
    ["24.50 EUR", 24.5],
    ["£1,234.50", 1234.5],
    ["1.234,50 €", 1234.5],
    ["CHF 1'234.50", 1234.5],
    ["1 234 567,5", 1_234_567.5],
  ] as const)
    expect(readMoney(text, "p"), text).toEqual({ ok: true, value });
  for (const text of ["€", "12.5.3", "1,23,456.7", "four", "12 €/m"])
    expect(readMoney(text, "p"), text).toMatchObject({ problems: [{ code: "money-unreadable" }] });
  expect(readMoney(-1, "p")).toMatchObject({ problems: [{ code: "money-unreadable" }] });
});

// Leather ounces: 1 oz = 1/64 in; 3 oz = 1.191 mm, 5 oz = 1.984 mm; common practice, no source.
test("leather in ounces; cloth ounces are a weight; a range is asked about", () => {
  const mm = (text: string, leather: boolean) => readThickness(text, "mm", "t", leather);
  expect(mm("3 oz", true)).toMatchObject({ ok: true, value: expect.closeTo(1.191, 3) });
  expect(mm("5 oz", true)).toMatchObject({ ok: true, value: expect.closeTo(1.984, 3) });
  expect(mm("10 oz", false)).toMatchObject({ problems: [{ code: "thickness-in-cloth-ounces" }] });
  for (const text of ["3/4 oz", "3-4 oz", "3–4 oz"])
    expect(mm(text, true)).toMatchObject({
      problems: [{ code: "thickness-range", lowMm: expect.closeTo(1.191, 3), highMm: expect.closeTo(1.588, 2) }],
    });
  expect(mm("0,9 mm", false)).toEqual({ ok: true, value: 0.9 });
  expect(mm("30 mm", false)).toMatchObject({ problems: [{ code: "length-out-of-range" }] });
});

test("limits are still taken, a hair beyond is not, and what is refused says how it was written", () => {
  expect(readShare(0.5, "s", 0, 0.5)).toEqual({ ok: true, value: 0.5 });
  expect(readShare("0 %", "s", 0, 0.5)).toEqual({ ok: true, value: 0 });
  expect(readShare(0.51, "s", 0, 0.5)).toMatchObject({ ok: false, problems: [{ isNumber: true }] });
  expect(readShare("51", "s", 0, 0.5)).toMatchObject({ ok: false, problems: [{ isNumber: false }] });
  expect(readShare(Number.NaN, "s", 0, 1)).toMatchObject({ ok: false, problems: [{ code: "share-unreadable" }] });
  expect(readCount(7, "c", 7, 9)).toEqual({ ok: true, value: 7 });
  expect(readCount("9", "c", 7, 9)).toEqual({ ok: true, value: 9 });
  for (const beyond of [6, 10])
    expect(readCount(beyond, "c", 7, 9)).toMatchObject({ ok: false, problems: [{ code: "count-out-of-range" }] });
  expect(readCount(7.5, "c", 7, 9)).toMatchObject({ ok: false, problems: [{ code: "count-unreadable" }] });
  expect(readMoney(1e9, "m")).toEqual({ ok: true, value: 1e9 });
  expect(readMoney(1_000_000_000.5, "m")).toMatchObject({ ok: false, problems: [{ code: "money-unreadable" }] });
});

test("forty signs are read, forty-one are not", () => {
  const padded = (end: string, length: number): string => end.padStart(length, "0");
  expect(readShare(padded("3", 40), "s", 0, 1)).toEqual({ ok: true, value: 0.03 });
  expect(readShare(padded("3", 41), "s", 0, 1).ok).toBe(false);
  expect(readCount(padded("3", 40), "c", 0, 9)).toEqual({ ok: true, value: 3 });
  expect(readCount(padded("3", 41), "c", 0, 9).ok).toBe(false);
  expect(readMoney(padded("3", 40), "m")).toEqual({ ok: true, value: 3 });
  expect(readMoney(padded("3", 41), "m").ok).toBe(false);
});
