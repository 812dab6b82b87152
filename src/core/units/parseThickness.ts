import type { ReadNumber } from "./lengthProblem.ts";
import type { LengthUnit } from "./lengthWords.ts";
import { plainSigns } from "./lengthWords.ts";
import { checkLength, type LengthRange, readLength } from "./parseLength.ts";

/** Thickness of one layer: up to 25 mm. */
const THICKNESS: LengthRange = { minMm: 0, maxMm: 25 };

/** Leather trade: an ounce of thickness is 1/64 in. Common practice; cloth ounces are a mass and mean nothing here. */
const MM_PER_LEATHER_OUNCE: number = 25.4 / 64;

const OUNCES = /^(\d+(?:[.,]\d+)?)(?: ?[-/] ?(\d+(?:[.,]\d+)?))? ?(?:oz|oz\.|ounces?)$/u;

/** Whether a thickness is given in ounces, which only leather has. */
export function saysOunces(value: unknown): boolean {
  return typeof value === "string" && value.length < 40 && OUNCES.test(plainSigns(value));
}

/**
 * Reads a layer's thickness. Leather may be given in its ounces (`"5 oz"`). A range as leather is sold, `"3/4 oz"`
 * or `"3-4 oz"`, is not a thickness yet: the problem names both ends.
 */
export function readThickness(
  value: string | number,
  defaultUnit: LengthUnit,
  path: string,
  isLeather: boolean,
): ReadNumber {
  const ounces = saysOunces(value) ? OUNCES.exec(plainSigns(String(value))) : null;
  if (ounces === null) return readLength(value, defaultUnit, path, THICKNESS);
  const text = String(value);
  if (!isLeather) return { ok: false, problems: [{ code: "thickness-in-cloth-ounces", path, text }] };
  const low = Number(ounces[1]!.replace(",", ".")) * MM_PER_LEATHER_OUNCE;
  if (ounces[2] === undefined) return checkLength(low, path, THICKNESS, text);
  const high = Number(ounces[2].replace(",", ".")) * MM_PER_LEATHER_OUNCE;
  return { ok: false, problems: [{ code: "thickness-range", path, text, lowMm: low, highMm: high }] };
}
