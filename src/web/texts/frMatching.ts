import type { Plural } from "../../core/units/numberWords.ts";
import type { enMatching, enNap } from "./enMatching.ts";
import { words } from "./words.tsx";

const FRENCH = new Intl.PluralRules("fr");
/** French takes the singular for 0 as well (Unicode CLDR plural rules, by the host's own). */
export const frenchPlural: Plural = (count, one, several) => (FRENCH.select(count) === "one" ? one : several);
const plural = frenchPlural;

/** The same in French, a draft. */
export const frMatching: typeof enMatching = {
  summary: (count) =>
    count === 0
      ? "Motif et ce qui doit s’y raccorder"
      : `Motif, avec ${plural(count, "un raccord", `${count} raccords`)}`,
  across: (length) => words("En travers il se répète tous les ", length, "."),
  acrossLabel: "Rapport en travers",
  noAcross: "pas du tout",
  firstLine: (along, across) =>
    words("Une ligne se trouve à ", along, " du bout coupé et à ", across, " du bord inférieur d’un rouleau."),
  firstAlongLabel: "Première ligne depuis le bout coupé",
  firstAcrossLabel: "Première ligne depuis le bord inférieur",
  tolerance: (length) => words("Ce qui se raccorde peut s’écarter de ", length, "."),
  toleranceLabel: "Écart admis",
  symmetric: "Pareil après un demi-tour",
  halfDrop: "Une colonne sur deux est décalée de moitié",
  seam: (first, edge, second, other) => words(first, " ", edge, " rejoint ", second, " ", other),
  firstPanel: (n) => `Raccord ${n} : pièce`,
  firstEdge: (n) => `Raccord ${n} : son bord`,
  secondPanel: (n) => `Raccord ${n} : pièce qu’elle rejoint`,
  secondEdge: (n) => `Raccord ${n} : bord qu’elle rejoint`,
  edgeNumber: (n) => `bord ${n}`,
  centred: (part, on) => words("Le milieu de ", part, " se trouve ", on),
  centredPart: (n) => `Place ${n} : pièce`,
  centredOnLabel: (n) => `Place ${n} : où`,
  centredOn: {
    line: "sur une ligne ou un motif",
    between: "à mi-chemin entre deux",
    "same-place": "n’importe où, mais pareil sur chaque sac",
  },
  addSeam: "Deux bords qui se rejoignent",
  addCentred: "Une pièce à sa place",
  remove: (n) => `Enlever le raccord ${n}`,
  removeCentred: (n) => `Enlever la place ${n}`,
  board: "Bords qui se rejoignent, à choisir sur les images",
  pressFirst: "Appuyez sur un bord, puis sur celui qu’il rejoint.",
  pressSecond: (edge) => `Appuyez maintenant sur le bord qui rejoint ${edge}. Échap l’abandonne.`,
  edgeOf: (panel, edge) => `${panel}, ${edge}`,
  matchedEdge: (edge, marks) => `${edge}, raccordé : ${marks}`,
  changed: "ce qui se raccorde sur le motif",
};

/** Nap and shade in French, a draft. */
export const frNap: typeof enNap = {
  waySentence: (way) => words("Le poil ou l’imprimé laisse les pièces ", way, "."),
  wayLabel: "Sens des pièces",
  ways: {
    both: "dans les deux sens",
    up: "dans un seul sens, flèches vers le haut du rouleau",
    down: "dans un seul sens, flèches vers le bas du rouleau",
    free: "dans un seul sens, le plus économe",
  },
  bandSentence: (length) =>
    words("Longueur de rouleau d’où viennent les pièces d’un sac, pour une seule nuance : ", length, "."),
  bandLabel: "Longueur de rouleau pour un sac",
  bandAnywhere: "libre",
};
