import type { PieceLine } from "../../materials/cutPiece.ts";
import { pluralOf } from "../../units/numberWords.ts";
import type { SheetTexts } from "../sheetTexts.ts";

const plural = pluralOf("en");

const LINES: Readonly<Record<PieceLine["role"], string>> = {
  fold: "Fold",
  tape: "Tape",
  stitch: "Stitch",
  mark: "Mark",
};

const of = (stock: string): string => (stock === "" ? "" : ` (${stock})`);

/** The cut sheet in English. */
export const cutSheet: SheetTexts = {
  title: "Cut sheet",
  forBags: (bags) => plural(bags, "For 1 bag.", `For ${bags} bags; counts are for all of them.`),
  columns: {
    number: "no.",
    cut: "cut",
    piece: "piece",
    size: "along × across",
    inches: "to 1/16 in; ≈ over 0.5 mm off",
    grain: "grain",
  },
  table: {
    heads: [
      "number",
      "name",
      "material",
      "kind",
      "count",
      "mirrored",
      "along mm",
      "across mm",
      "along in",
      "across in",
      "grain",
      "notes",
    ],
    kinds: { strip: "strip", panel: "panel" },
  },
  toBuy: "To buy",
  alsoNeeded: "Also needed",
  pictures: "Pictures",
  takeCare: "Take care",
  onRuler: (cut, finished) => `With the ruler at ${cut} the strap comes out ${finished} wide.`,
  grains: { lengthwise: "lengthwise", crosswise: "crosswise", either: "either grain", free: "any direction" },
  counted: (count, mirrored) => (mirrored > 0 ? `${count} + ${mirrored} mirrored` : String(count)),
  asDrawn: (count, mirrored) => `${count} as drawn, ${mirrored} mirrored`,
  copy: (number, all) => `${number} of ${all}`,
  mirroredCopy: (number, all) => `mirrored ${number} of ${all}`,
  labelNumber: (number) => `No. ${number}`,
  page: (number, all) => `${number} of ${all}`,
  linesAt: (role, mm, inches) => `${LINES[role]} at ${mm} mm (${inches} in) from a long edge`,
  nothingLaid: "Nothing was laid.",
  used: (length, stock) => `The pieces take ${length}${of(stock)}.`,
  usedByPlaced: (length, stock) => `The pieces that fit take ${length}${of(stock)}.`,
  usedProven: (length, stock) => `The pieces take ${length}${of(stock)}: proven shortest.`,
  usedBound: (length, stock, least, gap) =>
    `The pieces take ${length}${of(stock)}; no plan can be shorter than ${least} (gap ${gap} %).`,
  buy: (length, cost) => `Buy ${length}${cost === "" ? "" : `, ${cost}`}.`,
  offcuts: (sizes, smaller) => `Useful offcuts: ${sizes}${smaller > 0 ? ` and ${smaller} smaller` : ""}.`,
  repeat: (repeat) =>
    `The pattern repeats every ${repeat}. The plan does not match it from piece to piece. One repeat more is in the length to buy, enough to begin where you like; to match seams, cut by eye from the first piece on and buy up to one repeat more for each piece that must meet another.`,
};
