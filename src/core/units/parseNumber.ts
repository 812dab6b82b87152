import type { ReadNumber } from "./lengthProblem.ts";
import { plainSigns } from "./lengthWords.ts";

const MAX_TEXT = 40;
const DECIMAL = /^\d+(?:[.,]\d+)?$|^[.,]\d+$/u;

/**
 * Reads a share: `"3 %"` and `0.03` are the same; a bare number in text is a percentage (`"3"` is 3 %), a JSON
 * number is the share itself.
 */
export function readShare(value: string | number, path: string, min: number, max: number): ReadNumber {
  const share = typeof value === "number" ? value : shareOfText(value);
  if (share === null || !Number.isFinite(share))
    return { ok: false, problems: [{ code: "share-unreadable", path, text: String(value) }] };
  if (share < min || share > max)
    return {
      ok: false,
      problems: [{ code: "share-out-of-range", path, share, min, max, isNumber: typeof value === "number" }],
    };
  return { ok: true, value: share };
}

function shareOfText(text: string): number | null {
  if (text.length > MAX_TEXT) return null;
  const plain = plainSigns(text).replace(/ ?%$/u, "").trim();
  if (!DECIMAL.test(plain)) return null;
  // Divided as decimal text: 3 % is the double nearest to 0.03.
  return Number(`${plain.replace(",", ".")}e-2`);
}

/** Reads a whole number of things, from text or a JSON number. */
export function readCount(value: string | number, path: string, min: number, max: number): ReadNumber {
  const count = typeof value === "number" ? value : countOfText(value);
  if (count === null || !Number.isInteger(count))
    return { ok: false, problems: [{ code: "count-unreadable", path, text: String(value) }] };
  if (count < min || count > max)
    return { ok: false, problems: [{ code: "count-out-of-range", path, count, min, max }] };
  return { ok: true, value: count };
}

function countOfText(text: string): number | null {
  const plain = text.trim();
  return plain.length <= MAX_TEXT && /^\d+$/u.test(plain) ? Number(plain) : null;
}

/** A sign or code before or after an amount; which currency it is, is said elsewhere. */
const CURRENCY = String.raw`(?:\p{Sc}|\p{L}{1,4}\.?)`;
const AMOUNT = new RegExp(String.raw`^(?:${CURRENCY} ?)?([\d.,' ]*\d)(?: ?${CURRENCY})?$`, "u");
/** Thousands parted by a sign that is not the decimal sign: `1,234.50`, `1.234,50`, `1 234,50`. */
const PARTED = /^\d{1,3}(?:([.,' ])\d{3})(?:\1\d{3})*(?!\1)[.,]\d{1,2}$/u;

/** Reads an amount of money: `"12.50"`, `"12,50"`, `"€ 1.234,50"`; the currency is named elsewhere. */
export function readMoney(value: string | number, path: string): ReadNumber {
  const plain = typeof value === "number" ? String(value) : amountOf(value);
  const amount = DECIMAL.test(plain) ? Number(plain.replace(",", ".")) : Number.NaN;
  if (!Number.isFinite(amount) || amount > 1e9)
    return { ok: false, problems: [{ code: "money-unreadable", path, text: String(value) }] };
  return { ok: true, value: amount };
}

/** The amount without its currency and without what parts its thousands. */
function amountOf(text: string): string {
  if (text.length > MAX_TEXT) return "";
  const amount = AMOUNT.exec(text.replace(/\s+/gu, " ").trim())?.[1] ?? "";
  const parts = PARTED.exec(amount)?.[1];
  return parts === undefined ? amount : amount.replaceAll(parts, "");
}
