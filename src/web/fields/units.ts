import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { cutLength } from "../../core/units/cutLength.ts";
import type { LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { type LengthUnit, MM_PER_UNIT } from "../../core/units/lengthWords.ts";
import { unbroken, withDecimalSign } from "../../core/units/numberWords.ts";
import { type SayLength, sayLengths } from "../../core/units/sayLength.ts";
import { useLanguage } from "../texts/texts.ts";

/** How lengths are typed and shown; stored values are mm and never change with it. */
export interface Units {
  readonly system: "metric" | "inches";
  /** Unit of a bare number, and of the exact text in a field. */
  readonly unit: LengthUnit;
  /** Sizes of pieces. */
  readonly style: LengthStyle;
  /** Lengths of cloth. */
  readonly clothStyle: LengthStyle;
}

/** Units of the open project. */
export const UnitsContext = createContext<Units>({ system: "metric", unit: "mm", style: "mm", clothStyle: "m" });

/** Writes lengths in the project's units; no line breaks inside one. */
export interface LengthWords {
  readonly units: Units;
  /** A size, e.g. `123.8 mm` or `4 7/8 in`. */
  size(mm: number): string;
  /** Two sizes, e.g. `100 × 700 mm`. */
  box(a: number, b: number): string;
  /** A thickness: mm in either system, as gauges and needles are marked. */
  thickness(mm: number): string;
  /** An area of cloth. */
  area(mm2: number): string;
  /** A length of cloth, e.g. `1.42 m` or `1 5/8 yd`. */
  cloth(mm: number): string;
  /** Cloth taken or spared, or how much more or less: below a metre (a yard) in the unit of sizes, e.g. `99.1 mm`. */
  taken(mm: number): string;
}

/** Words for lengths in the units that are switched on. */
export function useLengths(): LengthWords {
  return lengthWords(useContext(UnitsContext), useLanguage());
}

/** Gives the writer of lengths in sentences about problems: in the project's unit, or in mm. */
export function useSayLength(inMm = false): SayLength {
  const { style } = useContext(UnitsContext);
  return sayLengths(inMm ? "mm" : style, useLanguage());
}

/** Words for lengths in given units. */
export function lengthWords(units: Units, language: Language): LengthWords {
  const cloth = (mm: number) => unbroken(cutLength(mm, units.clothStyle, language));
  const size = (mm: number) => unbroken(cutLength(mm, units.style, language));
  return {
    units,
    size,
    box: (a, b) => {
      const [first, second] = [size(a), size(b)];
      const unit = /\s[^\s\d]+$/u.exec(second)?.[0] ?? "";
      return unbroken(`${first.endsWith(unit) ? first.slice(0, first.length - unit.length) : first} × ${second}`);
    },
    thickness: (mm) => unbroken(withDecimalSign(`${Number(mm.toFixed(2))} mm`, language)),
    area: (mm2) =>
      unbroken(
        units.system === "metric"
          ? `${Math.round(mm2 / 100)} cm²`
          : `${(mm2 / MM_PER_UNIT.in ** 2).toFixed(0)} in²`,
      ),
    cloth,
    // Half a millimetre below a metre is a metre to whoever cuts.
    taken: (mm) =>
      mm > 0 && mm < MM_PER_UNIT[units.system === "metric" ? "m" : "yd"] - 0.5 ? size(mm) : cloth(mm),
  };
}

/** A share in per cent; below a tenth to a tenth of a per cent. */
export function percent(share: number, language: Language): string {
  return unbroken(withDecimalSign(`${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`, language));
}
