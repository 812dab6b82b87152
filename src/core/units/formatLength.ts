import { type LengthUnit, MM_PER_UNIT } from "./lengthWords.ts";
import { withDecimalSign } from "./numberWords.ts";
import { type LengthRange, parseLength } from "./parseLength.ts";

/** How a length is shown: tenths of mm, hundredths of cm, thousandths of m, or inches to the nearest 1/16 or 1/32. */
export type LengthStyle = "mm" | "cm" | "m" | "in/16" | "in/32" | "yd/8";

/** A shown length and how far the text is from the stored value. */
export interface ShownLength {
  readonly text: string;
  /** Text minus stored value, mm. */
  readonly offByMm: number;
}

const DECIMALS = { mm: 1, cm: 2, m: 3 } as const;
const PARTS = { "in/16": 16, "in/32": 32, "yd/8": 8 } as const;

/** A text without "≈" is at most this far from the stored value, mm: half of a tenth. */
const SHOWN_WITHIN_MM = 0.05;

/**
 * A length for people: `123.8 mm`, `12.38 cm`, `4 7/8 in`. The stored value is never changed; a text that is more than
 * 0.05 mm away from it starts with "≈". Use `writeLength` where the text must read back to the same number.
 * The decimal sign is the language's.
 */
export function formatLength(mm: number, style: LengthStyle, language: string = "en"): string {
  const shown = showLength(mm, style);
  // 1e-9: halves of a tenth are not held exactly by a double.
  const text = withDecimalSign(shown.text, language);
  return Math.abs(shown.offByMm) > SHOWN_WITHIN_MM + 1e-9 ? `≈${text}` : text;
}

/** The nearest text of a style and its distance from the value. Throws RangeError when `mm` is not finite. */
export function showLength(mm: number, style: LengthStyle): ShownLength {
  if (!Number.isFinite(mm)) throw new RangeError(`showLength: a finite length was expected, got ${mm}`);
  return style === "mm" || style === "cm" || style === "m" ? decimalText(mm, style) : fractionText(mm, style);
}

/**
 * The shortest text in `unit` that reads back to exactly this number; falls back to mm when no text in `unit` does.
 */
export function writeLength(mm: number, unit: LengthUnit): string {
  if (!Number.isFinite(mm)) throw new RangeError(`writeLength: a finite length was expected, got ${mm}`);
  const fraction =
    unit === "in" ? fractionText(mm, "in/32").text : unit === "yd" ? fractionText(mm, "yd/8").text : "";
  if (fraction !== "" && readsAs(fraction, mm)) return fraction;
  for (let digits = 0; digits <= 12; digits++) {
    const text = `${trimZeros((mm / MM_PER_UNIT[unit]).toFixed(digits))} ${unit}`;
    if (readsAs(text, mm)) return text;
  }
  return `${plainDecimal(mm)} mm`;
}

const EVERYTHING: LengthRange = { minMm: -Infinity, maxMm: Infinity };

function readsAs(text: string, mm: number): boolean {
  const read = parseLength(text, "mm", "", EVERYTHING);
  return read.ok && read.value === mm;
}

function decimalText(mm: number, unit: "mm" | "cm" | "m"): ShownLength {
  const number = trimZeros((mm / MM_PER_UNIT[unit]).toFixed(DECIMALS[unit]));
  return { text: `${number} ${unit}`, offByMm: Number(number) * MM_PER_UNIT[unit] - mm };
}

function fractionText(mm: number, style: "in/16" | "in/32" | "yd/8"): ShownLength {
  const unit = style === "yd/8" ? "yd" : "in";
  const parts = PARTS[style];
  const steps = Math.round((Math.abs(mm) / MM_PER_UNIT[unit]) * parts);
  const whole = Math.floor(steps / parts);
  const left = steps % parts;
  const shared = greatestCommonDivisor(left, parts);
  const fraction = left === 0 ? "" : `${left / shared}/${parts / shared}`;
  const number = [whole > 0 || left === 0 ? String(whole) : "", fraction].filter(Boolean).join(" ");
  const sign = mm < 0 && steps > 0 ? "-" : "";
  const value = ((mm < 0 ? -steps : steps) * MM_PER_UNIT[unit]) / parts;
  return { text: `${sign}${number} ${unit}`, offByMm: value - mm };
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function trimZeros(text: string): string {
  const trimmed = text.includes(".") ? text.replace(/0+$/u, "").replace(/\.$/u, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}

/** A double's shortest decimal without an exponent. */
function plainDecimal(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/u.exec(text);
  if (!match) return text;
  const [, sign, first, part = "", exponent] = match;
  const shift = Number(exponent);
  const digits = `${first}${part}`;
  if (shift < 0) return `${sign}0.${"0".repeat(-shift - 1)}${digits}`;
  return `${sign}${digits.padEnd(shift + 1, "0")}`;
}
