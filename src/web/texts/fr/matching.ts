import { pluralOf } from "../../../core/units/numberWords.ts";
import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enMatching, enNap } from "../en/matching.ts";
import { words } from "../words.tsx";

const plural = pluralOf("fr");

/** The same in French, a draft. */
export const frMatching: Draft<typeof enMatching> = {
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
  firstPanel: (n) => `Raccord ${n}\u00a0: pièce`,
  firstEdge: (n) => `Raccord ${n}\u00a0: son bord`,
  secondPanel: (n) => `Raccord ${n}\u00a0: pièce qu’elle rejoint`,
  secondEdge: (n) => `Raccord ${n}\u00a0: bord qu’elle rejoint`,
  edgeNumber: (n) => `bord ${n}`,
  centred: (part, on) => words("Le milieu de ", part, " se trouve ", on),
  centredPart: (n) => `Place ${n}\u00a0: pièce`,
  centredOnLabel: (n) => `Place ${n}\u00a0: où`,
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
  matchedEdge: (edge, marks) => `${edge}, raccordé\u00a0: ${marks}`,
  changed: "ce qui se raccorde sur le motif",
};

/** Nap and shade in French, a draft. */
export const frNap: Draft<typeof enNap> = {
  waySentence: (way) => words("Le poil ou l’imprimé laisse les pièces ", way, "."),
  wayLabel: "Sens des pièces",
  ways: {
    both: "dans les deux sens",
    up: "dans un seul sens, flèches vers le haut du rouleau",
    down: "dans un seul sens, flèches vers le bas du rouleau",
    free: "dans un seul sens, le plus économe",
  },
  bandSentence: (length) =>
    words("Longueur de rouleau d’où viennent les pièces d’un sac, pour une seule nuance\u00a0: ", length, "."),
  bandLabel: "Longueur de rouleau pour un sac",
  bandAnywhere: "libre",
};
