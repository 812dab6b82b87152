import { contourBox } from "../../geometry/contourArcs.ts";
import { shapeContour } from "../../geometry/shape.ts";
import type { MaterialStock } from "../../materials/stock.ts";
import { stockCopyId } from "../../materials/stock.ts";
import type { Language } from "../../units/language.ts";
import { PAPER_TEXTS } from "../../words/words.ts";

/**
 * What a person calls a roll or leftover: its kind and size, its number among those of its kind where there are
 * several, and which of several equal ones it is; its label, where it has one, before all. `id` is that of the lay; one that is not in the stock names itself.
 */
export function stockName(
  stock: readonly MaterialStock[],
  id: string,
  write: (mm: number) => string,
  language: Language,
): string {
  const words = PAPER_TEXTS[language].stocks;
  for (const each of stock) {
    const labelled = (name: string): string => (each.label === undefined ? name : `${each.label}: ${name}`);
    const isPrecut = (one: MaterialStock): boolean => one.kind === "remnant" && one.toBuy === true;
    const kin = stock.filter((one) => one.kind === each.kind && isPrecut(one) === isPrecut(each));
    const number = kin.length > 1 ? kin.indexOf(each) + 1 : null;
    if (each.kind === "roll") {
      if (each.id === id) return labelled(words.roll(number, write(each.width)));
      continue;
    }
    for (let copy = 0; copy < each.count; copy++) {
      if (stockCopyId(each.id, copy) !== id) continue;
      const { minX, minY, maxX, maxY } = contourBox(shapeContour(each.shape));
      const size = `${write(maxX - minX)} × ${write(maxY - minY)}`;
      const called = words[isPrecut(each) ? "precut" : each.kind];
      return labelled(called(number, size, each.count > 1 ? words.copy(copy + 1, each.count) : ""));
    }
  }
  return id;
}
