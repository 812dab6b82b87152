import type { LaserRisk } from "../../materials/laser.ts";
import { pluralOf } from "../../units/numberWords.ts";
import type { FileTexts } from "../fileTexts.ts";

const plural = pluralOf("en");

const sheetsOf = (count: number, paper: string): string =>
  `${count} ${plural(count, "sheet", "sheets")} of ${paper}`;

const LASER_RISKS: Readonly<Record<LaserRisk, string>> = {
  pvc: "it is PVC",
  "unknown-coating": "nobody has said what it is coated with, so it counts as PVC",
  "unknown-polymer": "nobody has said what it is made of, so it counts as PVC",
};

/** Files in English. */
export const files: FileTexts = {
  photoSheet: {
    title: "Photo sheet",
    measure: "Print at actual size. This line must measure 100 mm; if it does not, say what it measures (--line).",
    use: [
      "Lay it flat beside the pattern, a hand's width apart, on a dark table. Or draw the pattern between the rings.",
      "All seven rings in the picture, even light, no shadow on them. Stand as high above as you can.",
    ],
  },
  titles: { cutSheet: "cut sheet", patterns: "patterns" },
  kinds: {
    sheets: "pages to tape together",
    longSheet: "one long sheet for a copy shop",
    patterns: "one of each curved piece",
    mats: "mats for the cutting machine",
  },
  about: {
    cutSheetToPrint: "cut sheet to print",
    cutSheetAsText: "cut sheet as text",
    cutList: "cut list for a spreadsheet",
    labels: "a label for every piece",
    layPlan: "lay plan at true size",
    forDrawing: (about) => `${about}, for drawing programs`,
    tiles: (sheets, paper) => `${sheetsOf(sheets, paper)} to tape together, and their map`,
    longSheets: (sheets, rollWidth) =>
      `${plural(sheets, "one long sheet", `${sheets} long sheets`)} for a copy shop's roll of ${rollWidth}`,
    projector: "thick bright lines for a projector",
    patterns: (sheets, paper) => `one of each curved piece on ${sheetsOf(sheets, paper)}; cut rectangles by size`,
    rulerCuts: (cuts) => `${cuts} ruler cuts in order, each drawn`,
    rulerList: "ruler cuts in order",
    mat: (number, of) => `mat ${number} of ${of} for the cutting machine`,
  },
  tooLarge: (names, material) => `Too large for the machine's mat; cut by hand or join: ${names} (${material}).`,
  tooManySheets: (what, sheets, paper, most) =>
    `No sheets to tape together (${what}): there would be ${sheetsOf(sheets, paper)}, and at most ${most} are written. Use larger paper, only the curved pieces, or the long sheet.`,
  tooNarrow: (file, strips, least) =>
    `No ${file}: this plan was laid freely, and with a ruler ${plural(strips, "one cut", `${strips} cuts`)} would take off a strip narrower than ${least}. To cut by ruler, have the cloth laid for straight cuts.`,
  tooManyLetters: (file, names, most) =>
    `${file}: the names are written as text, not drawn. There are ${names}, and letters are drawn for at most ${most}, since few programs open a file as large as that. For drawn letters lay fewer bags, or cut from mats.`,
  laserRefusal: (material, risk) =>
    `No laser file for ${material}: ${LASER_RISKS[risk]}, and PVC gives off hydrogen chloride. Ask the supplier for the polymer and state it as the material's ${risk === "unknown-polymer" ? "polymer" : "coating"}, or cut it with a knife.`,
};
