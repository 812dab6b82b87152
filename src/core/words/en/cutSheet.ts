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
  linesAt: (role, mm, inches) =>
    `${LINES[role]} at ${mm} mm${inches === null ? "" : ` (${inches} in)`} from a long edge`,
  nothingLaid: "Nothing was laid.",
  used: (length, stock) => `The pieces take ${length}${of(stock)}.`,
  usedByPlaced: (length, stock) => `The pieces that fit take ${length}${of(stock)}.`,
  usedProven: (length, stock) => `The pieces take ${length}${of(stock)}: proven shortest.`,
  usedBound: (length, stock, least, gap) =>
    `The pieces take ${length}${of(stock)}; no plan can be shorter than ${least} (gap ${gap} %).`,
  spreadFolded:
    "Fold the cloth lengthwise, right sides together, selvedge on selvedge. The fold lies along the lower edge of the plan. Pin or weight both layers and cut through both; never cut along the fold where a piece lies on it.",
  spreadLayers: (layers, length, faces, oneWay) =>
    faces === "up"
      ? `Lay ${layers} lengths of ${length} on one another, each right side up${oneWay ? " and the nap the same way" : ""}, with one long edge and one end flush. Pin or weight them and cut through all.`
      : `Lay ${layers} lengths of ${length} on one another, right side to right side and wrong side to wrong side in turn${oneWay ? ", each second one turned over sideways so that the nap runs the same way in all" : ""}, with one long edge and one end flush. Pin or weight them and cut through all.`,
  givesPairs: "Each piece on the plan gives as many mirror images as pieces as drawn.",
  givesOnFold: "Halves on the fold are opened out: each gives one whole piece.",
  spreadRepeat: (repeat) =>
    `Begin every length at the same place of the pattern: the next is cut a whole number of repeats of ${repeat} further on.`,
  spreadOnLines:
    "Pin the lines of every layer on those below, all along both edges. Turn layers over sideways only, never end over end: lines across the cloth then stay in their place.",
  spare: (list) => `Comes out besides, not asked for: ${list}.`,
  sparePiece: (count, name, mirrored) => `${count} × ${name}${mirrored ? ", mirrored" : ""}`,
  leftoversSingly: "Leftovers, hides and skins are cut as one layer; nothing is laid on them here.",
  buy: (length, cost) => `Buy ${length}${cost === "" ? "" : `, ${cost}`}.`,
  offcuts: (sizes, smaller, layers) =>
    `Useful offcuts${layers > 1 ? `, ${layers} of each` : ""}: ${sizes}${smaller > 0 ? ` and ${smaller} smaller` : ""}.`,
  matched: (names) => `Matched on the pattern: ${names}.`,
  firstLine: (along, across) =>
    `Lay the cloth so that a line of the pattern lies ${[
      ...(along === null ? [] : [`${along} from its cut end`]),
      ...(across === null ? [] : [`${across} from its lower edge`]),
    ].join(" and ")}; the plan starts there.`,
  onPattern: (name, scale) => `${name} on its pattern, 1 : ${scale}; numbers as in the list`,
  boundUnmatched: "The shortest possible is reckoned without the matching.",
  ruleMatch: (first, second, more) =>
    `Matching ${first} to ${first === second ? "the next one" : second}: ${more === null ? "no more cloth" : `${more} more`}.`,
  ruleCentred: (part, more) =>
    `${part} in its place on the pattern: ${more === null ? "no more cloth" : `${more} more`}.`,
  ruleOneWay: (more) => `All pieces one way: ${more === null ? "no more cloth" : `${more} more`}.`,
  ruleBand: (more) =>
    `Each bag's parts from one stretch of the roll: ${more === null ? "no more cloth" : `${more} more`}.`,
  sameWay: (way) =>
    `All pieces lie one way, with their arrows ${way === "up" ? "up the roll, away from its cut end" : "down the roll, towards its cut end"}.`,
  shadeBand: (length, each) =>
    ({
      one: `The parts of each bag lie within ${length} of the roll, so that they are of one shade: the first of each piece make the first bag, and so on. Keep them together as you cut.`,
      twos: `The parts of two bags at a time lie within ${length} of the roll, so that they are of one shade: the first of each piece make the first two bags, and so on. Keep them together as you cut.`,
      layer: `In each layer the parts of each bag lie within ${length} of the roll, so that they are of one shade: the first of each piece make the layer's first bag, and so on. Keep the layers apart as you cut.`,
    })[each],
  bandNotKept: (why, layers) =>
    `The parts of each bag are not kept together here: ${
      {
        uneven: "not every piece comes in the same number for each bag. Sort the pieces by shade before you sew.",
        layers: `${layers} layers give ${layers} bags at a time. Make ${layers} bags or a multiple of that, or cut the cloth as one layer.`,
        twos: "folded cloth gives two bags at a time. Make an even number of bags, or cut the cloth as one layer.",
        hands:
          "in layers face to face, the left and right parts of a bag come from different layers. Lay all layers face up.",
        fold: "some pieces are too large to lie beside the fold. Cut the cloth as one layer.",
      }[why]
    }`,
  boundUnbanded: "The shortest possible is reckoned without keeping bags together.",
  repeat: (repeat) =>
    `The pattern repeats every ${repeat}. The plan does not match it from piece to piece. One repeat more is in the length to buy, enough to begin where you like; to match seams, cut by eye from the first piece on and buy up to one repeat more for each piece that must meet another.`,
};
