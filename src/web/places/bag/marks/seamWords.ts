import type { MeasuredSeam } from "../../../../core/project/unevenSeams.ts";
import { useLengths } from "../../../fields/units.ts";
import { useTexts } from "../../../texts/texts.ts";

/** Gives the words for a seam: whether its sides fit, and which is longer by how much. */
export function useSeamWords(): (seam: MeasuredSeam, ease: number) => string {
  const words = useTexts().marks.seams;
  const lengths = useLengths();
  return ({ first, second, firstMm, secondMm, overMm, isEven }, ease) => {
    if (isEven) return (ease === 0 ? words.even : words.meantEven)(lengths.size(firstMm), lengths.size(secondMm));
    const over = lengths.size(Math.abs(overMm));
    return overMm > 0 ? words.uneven(first, second, over) : words.uneven(second, first, over);
  };
}
