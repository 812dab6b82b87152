import type { Language } from "../../../core/units/language.ts";
import { withDecimalSign } from "../../../core/units/numberWords.ts";
import { unbroken } from "../../../core/units/unbroken.ts";

/** A share in per cent; below a tenth to a tenth of a per cent. */
export function percent(share: number, language: Language): string {
  return unbroken(withDecimalSign(`${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`, language));
}
