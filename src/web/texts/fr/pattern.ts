import { pluralOf } from "../../../core/units/numberWords.ts";
import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enPattern } from "../en/pattern.ts";
import { words } from "../words.tsx";

const plural = pluralOf("fr");

const listed = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 3).join(", ")} et ${names.length - 3} de plus` : names.join(", ");

const UNITS: Readonly<Record<string, string>> = {
  mm: "en millimètres",
  cm: "en centimètres",
  m: "en mètres",
  in: "en pouces",
  ft: "en pieds",
};

/** A maker's own pattern on the page, in French, a draft. */
export const frPattern: Draft<typeof enPattern> = {
  bringIn: "Un patron à moi",
  kinds: "Un dessin en SVG, DXF ou PDF, ou une photo avec notre feuille de repère",
  heading: "Un patron à vous",
  lie: {
    sheets: (way) => words("Ses feuilles se posent ", way, "."),
    sheetsLabel: "Comment les feuilles se posent",
    sheetWays: { marked: "selon leurs repères d’assemblage", rows: "bord à bord, en rangées" },
    inRows: (columns, rows, trim) =>
      words(
        columns,
        " par rangée, ",
        rows,
        " rangées, depuis le haut à gauche\u00a0; ",
        trim,
        " se coupent de chaque côté.",
      ),
    columnsLabel: "Feuilles par rangée",
    rowsLabel: "Rangées de feuilles",
    trimLabel: "Coupé de chaque côté d’une feuille",
    scale: (way) => words("Son échelle vient de ", way, "."),
    scaleLabel: "Ce qui donne l’échelle à la photo",
    scaleWays: {
      "photo-sheet": "notre feuille de repère, photographiée avec",
      paper: "la feuille de papier sur laquelle il est posé",
      corners: "les coins de cette feuille, que je montre",
      points: "deux points que je montre, photo prise bien d’en haut",
    },
    paper: (paper) => words("Cette feuille est ", paper, ", claire sur une table sombre."),
    paperLabel: "Format de la feuille",
    apart: (length) => words("Ils sont distants de ", length, "."),
    apartLabel: "Distance entre les deux points",
    photo: "Votre photo",
    press: (wanted, pressed) =>
      pressed < wanted
        ? `Appuyez sur ${wanted === 4 ? "le coin" : "le point"} ${pressed + 1} sur ${wanted} dans la photo${wanted === 4 ? ", dans le sens des aiguilles depuis le haut à gauche" : ""}.`
        : "Appuyez près d’une place pour la déplacer.",
    place: (n, x, y) => words(`Place ${n}\u00a0: `, x, " px en travers, ", y, " px vers le bas."),
    placeLabel: (n, isAcross) => `Place ${n}, ${isAcross ? "en travers" : "vers le bas"}, en pixels`,
  },
  states: {
    reading: (file) => `Lecture de ${file} …`,
    stopped: (file) => `La lecture de ${file} est arrêtée. Choisissez-le encore pour recommencer.`,
    failed: (file) => `${file} n’a pas pu être lu\u00a0: c’est notre faute. Votre projet est comme avant.`,
  },
  photoSheet: "Feuille de repère à imprimer",
  photoSheetAbout:
    "Posez-la près d’un patron en papier et photographiez les deux\u00a0: elle donne l’échelle et redresse le biais.",
  stop: "Arrêter la lecture",
  leave: "Ne pas le reprendre",
  unit: "Comment se lisent les nombres du fichier",
  asTheFileSays: "comme le fichier le dit",
  units: (unit) => UNITS[unit] ?? `à ${unit.slice(2)} px par pouce`,
  came: (file, lines, unit) =>
    words(
      `${file} a ${plural(lines, "une ligne", `${lines} lignes`)}, lues `,
      unit,
      ". Posez une règle sur le papier et comparez un côté avant de couper.",
    ),
  troubles: "Ce qui a été remarqué",
  mends: {
    gaps: "Fermer les trous",
    doubles: "Retirer les doubles",
    crossings: "Garder la plus grande surface",
    slivers: "Retirer les éclats",
    scale: "Le lire ainsi",
  },
  change: (fresh, gone) =>
    `Ce que la réparation a changé\u00a0: ${plural(fresh, "une ligne nouvelle", `${fresh} lignes nouvelles`)}, ${plural(gone, "une ligne disparue", `${gone} lignes disparues`)}`,
  changeKey:
    "Épais\u00a0: après réparation. En tirets\u00a0: comme dessiné, et disparu. Rien n’est encore dans votre projet.",
  asDrawn: "Le laisser comme dessiné",
  more: (count) => `et ${count} de plus`,
  lines: "Lignes du patron",
  closed: "fermée",
  open: "ouverte",
  correct: "Corriger à la main",
  corrected: "corrigée à la main",
  correcting: (name) => `${name} à la main`,
  correctAbout: "La ligne fine est ce qui a été lu\u00a0; les autres lignes du fichier sont dessous.",
  correctOverPhoto: "La photo redressée est dessous\u00a0; la ligne fine est ce qui a été lu.",
  correctDone: "Terminé",
  asRead: "Comme elle a été lue",
  takenFor: (name) => `À quoi sert ${name}`,
  noPanel: "Il n’y a encore aucune pièce\u00a0: aucune ligne de coupe ou de couture ne se ferme.",
  becomes: (names, material, count) =>
    words(
      `Cela devient ${plural(names.length, "une pièce", `${names.length} pièces`)}\u00a0: ${listed(names)}. À couper dans `,
      material,
      ", ",
      count,
      plural(names.length, " par sac.", " de chacune par sac."),
    ),
  sewn: (allowance) => words("Là où le patron ne montre pas de marge de couture, elle est de ", allowance, "."),
  material: "Matière des pièces",
  count: "Pièces de chaque sorte par sac",
  allowance: "Marge de couture où le patron n’en montre pas",
  add: (panels) => plural(panels, "Ajouter la pièce", `Ajouter ${panels} pièces`),
  added: (file) => `patron ${file}`,
};
