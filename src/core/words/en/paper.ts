import { pluralOf } from "../../units/numberWords.ts";
import type { PaperTexts } from "../paperTexts.ts";

const plural = pluralOf("en");

const nth = (number: number | null): string => (number === null ? "" : ` ${number}`);

/** Drawings and sheets in English. */
export const paper: PaperTexts = {
  pieces: {
    mirrored: (name) => `${name}, mirrored`,
    onFold: (name) => `${name}, half, on the fold`,
    fold: "Fold: do not cut",
    copy: (number, of) => `${number} of ${of}`,
    pattern: (count, mirrored, material) =>
      `cut ${count}${mirrored > 0 ? ` and ${mirrored} turned over` : ""}, ${material}`,
  },
  map: {
    bySize: "Not on these sheets, cut by size with a ruler:",
    printFirst: "Print this page first, at 100 % (actual size), never “fit to page”.",
    measure:
      "Measure both squares each way. If the large one is off by more than half a millimetre, stop: enter its measured width and height, and print again.",
    printSheets: (count) => `Print the ${plural(count, "one sheet", `${count} sheets`)}.`,
    overlapped:
      "Trim each sheet along its left and top frame where a sheet joins there. Lay it over that sheet up to the inner line, rings on rings, and tape.",
    butted:
      "Trim each sheet along its left and top frame where a sheet joins there. Butt the two together, half rings to half rings, and tape.",
    checkTape: "Check against the tape measure along the lower edge: it starts at the cut end of the cloth.",
    corrected: (across, down) => `Corrected for your printer: ×${across} across, ×${down} down.`,
    eachWay: "each way",
  },
  mats: {
    check: (side) => `${side} each way: do not cut`,
  },
  stocks: {
    roll: (number, width) => `roll${nth(number)}, ${width} wide`,
    remnant: (number, size, copy) => `remnant${nth(number)}, ${size}${copy}`,
    skin: (number, size, copy) => `skin${nth(number)}, ${size}${copy}`,
    precut: (number, size, copy) => `cut to size${nth(number)}, ${size}${copy}`,
    kinds: { roll: "roll", remnant: "remnant", skin: "hide or skin" },
    copy: (number, of) => `, ${number} of ${of}`,
  },
  sheets: {
    sheet: (number, of) => `${number} of ${of}`,
    lengthwise: "lengthwise",
    oneWay: "lengthwise, one way",
    tenCm: "10 cm: measure before cutting",
    roll: (usableWidth, used) => `${usableWidth} usable width, ${used} used`,
    patterns: "Patterns",
    oneOfEach: "one of each curved piece",
  },
  printer: {
    isTrue: "The printer is true: no correction needed.",
    fitted: (off, papers) => {
      const why = papers ? ` as when a page for ${papers[0]} is fitted on ${papers[1]}` : "";
      return `Both ways are off by the same ${off}${why}: the print window said “fit to page”. Choose 100 % or “actual size” and the right paper, and print the test square again.`;
    },
    off: (off, x, y) =>
      `The printer is off by ${off}: pages are drawn ×${x} across and ×${y} down to come out true.`,
    uneven: (x, y) =>
      `The printer stretches the two ways differently: pages are drawn ×${x} across and ×${y} down to come out true.`,
  },
};
