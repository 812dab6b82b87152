import type { PaperTexts } from "./paperTexts.ts";

const nth = (number: number | null): string => (number === null ? "" : ` ${number}`);

/** Drawings and sheets in English. */
export const english: PaperTexts = {
  pieces: {
    mirrored: (name) => `${name}, mirrored`,
    copy: (number, of) => `${number} of ${of}`,
    pattern: (count, mirrored, material) =>
      `cut ${count}${mirrored > 0 ? ` and ${mirrored} turned over` : ""}, ${material}`,
  },
  map: {
    bySize: "Not on these sheets, cut by size with a ruler:",
    printFirst: "Print this page first, at 100 % (actual size), never “fit to page”.",
    measure:
      "Measure both squares each way. If the large one is off by more than half a millimetre, stop: enter what it measures across and down, and print again.",
    printSheets: (count) => `Print the ${count === 1 ? "one sheet" : `${count} sheets`}.`,
    overlapped:
      "Cut each sheet along its left and top frame where it has a neighbour there. Lay it over that neighbour up to the inner line, rings on rings; tape.",
    butted:
      "Cut each sheet along its left and top frame where it has a neighbour there. Butt it against that neighbour, half rings to half rings; tape.",
    checkTape: "Check with the tape along the lower edge: it counts the cloth's length from its cut end.",
    corrected: (across, down) => `Drawn for a printer that is off: ×${across} across, ×${down} down.`,
    eachWay: "each way",
  },
  mats: {
    check: (side) => `${side} each way: do not cut`,
  },
  stocks: {
    roll: (number, width) => `roll${nth(number)}, ${width} wide`,
    remnant: (number, size, copy) => `remnant${nth(number)}, ${size}${copy}`,
    skin: (number, size, copy) => `skin${nth(number)}, ${size}${copy}`,
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
};
