import type { PriceBasis } from "../../materials/price.ts";
import { writeLength } from "../../units/formatLength.ts";
import type { LengthProblem, ReadNumber } from "../../units/lengthProblem.ts";
import { type LengthUnit, MM_PER_UNIT, plainSigns, UNIT_OF_WORD } from "../../units/lengthWords.ts";
import { readLength } from "../../units/parseLength.ts";

const SQUARE_FOOT = MM_PER_UNIT.ft ** 2;
const SQUARE_METRE = MM_PER_UNIT.m ** 2;
const AREA = /^(\d+(?:[.,]\d+)?|[.,]\d+|\d+\/\d+)? ?(m2|m²|sq\.? ?m|sq\.? ?ft|ft2|ft²)$/u;
/** An eighth of a yard; a tenth of a metre. Common practice, no source. */
const YARD_STEP = MM_PER_UNIT.yd / 8;
const METRE_STEP = 100;

const PRICE_LENGTH = { minMm: 1, maxMm: 100_000 };
const STEP_LENGTH = { minMm: 0, maxMm: 100_000 };

/** What a price is asked for: `each`, an area (`m2`, `sq ft`) or a length (`m`, `yd`, `10 cm`). */
export function readBasis(
  per: string,
  unit: LengthUnit,
): PriceBasis | { readonly problems: readonly LengthProblem[] } {
  const plain = plainSigns(per);
  if (plain === "each" || plain === "piece") return { kind: "each" };
  const area = readArea(plain);
  if (area !== null) return { kind: "area", mm2: area };
  const length = readLength(UNIT_OF_WORD.has(plain) ? `1 ${plain}` : plain, unit, "", PRICE_LENGTH);
  return length.ok ? { kind: "length", mm: length.value } : length;
}

/**
 * The step a material is sold in. When none is given: 10 cm by the metre, 1/8 yd by the yard, 1/4 sq ft by the foot
 * of skin; common practice, no source.
 */
export function readStep(
  step: string | number | undefined,
  per: string,
  basis: PriceBasis,
  unit: LengthUnit,
): ReadNumber {
  if (basis.kind === "each") return { ok: true, value: 0 };
  if (basis.kind === "area") {
    const isFeet = /f/u.test(plainSigns(per));
    if (step === undefined) return { ok: true, value: isFeet ? SQUARE_FOOT / 4 : 0 };
    const area = readArea(plainSigns(String(step)));
    if (area !== null) return { ok: true, value: area };
    return { ok: false, problems: [{ code: "length-unreadable", path: "", text: String(step) }] };
  }
  const isYards = /y|f|in|'|"/u.test(plainSigns(per));
  if (step === undefined) return { ok: true, value: isYards ? YARD_STEP : METRE_STEP };
  return readLength(step, unit, "", STEP_LENGTH);
}

/** The text that `readBasis` reads back as the same basis. */
export function writeBasis(basis: PriceBasis, unit: LengthUnit): string {
  if (basis.kind === "each") return "each";
  if (basis.kind === "area") return writeArea(basis.mm2);
  return writeLength(basis.mm, basis.mm === MM_PER_UNIT.yd ? "yd" : basis.mm === MM_PER_UNIT.m ? "m" : unit);
}

/** An area as text that reads back. */
export function writeArea(mm2: number): string {
  const feet = mm2 / SQUARE_FOOT;
  return Number.isInteger(feet * 16) ? `${feet} sq ft` : `${mm2 / SQUARE_METRE} m2`;
}

function readArea(plain: string): number | null {
  const match = AREA.exec(plain);
  if (!match) return null;
  const [top, bottom = "1"] = (match[1] ?? "1").replace(",", ".").split("/");
  const amount = Number(top) / Number(bottom);
  if (!(amount > 0 && Number.isFinite(amount))) return null;
  return amount * (match[2]!.includes("f") ? SQUARE_FOOT : SQUARE_METRE);
}
