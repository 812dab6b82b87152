import { formatLength, type LengthStyle, showLength } from "./formatLength.ts";
import { withDecimalSign } from "./numberWords.ts";

/** What a ruler and a rotary cutter hold, mm (common practice, no source). */
const CUTTING_TOLERANCE = 0.5;
/** A rounding is told in any case where it changes a length by more than this share: folds and setbacks are small. */
const TOLD_SHARE = 0.1;

/**
 * A length to cut or fold by, e.g. `123.8 mm` or `4 7/8 in`. Inches, yards and metres are rounded to their nearest part; `≈` stands
 * only where that is further off than a cut is (0.5 mm) or than a tenth of a small length. Throws RangeError when
 * `mm` is not finite.
 */
export function cutLength(mm: number, style: LengthStyle, language: string = "en"): string {
  if (style === "mm" || style === "cm") return formatLength(mm, style, language);
  const { text: plain, offByMm } = showLength(mm, style);
  const text = withDecimalSign(plain, language);
  const off = Math.abs(offByMm);
  return off > CUTTING_TOLERANCE || off > Math.abs(mm) * TOLD_SHARE + 1e-9 ? `≈${text}` : text;
}
