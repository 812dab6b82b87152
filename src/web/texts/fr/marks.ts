import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enMarks } from "../en/marks.ts";
import { words } from "../words.tsx";

/** Edges, corners, marks and seams in French, a draft. */
export const frMarks: Draft<typeof enMarks> = {
  picture: (name) => `${name}, contour tel que dessiné`,
  pictureWords: (edge, length) => `Montré\u00a0: ${edge}, ${length}. Il commence au point.`,
  cornerWords: (corner) => `Montré\u00a0: ${corner}.`,
  frame: (along, across) =>
    `Les places se mesurent depuis le coin inférieur gauche de son cadre, vers la droite et vers le haut. Le cadre fait ${along} de large et ${across} de haut.`,
  edges: {
    summary: (own) =>
      own === 0 ? "Bords, coins et ourlets" : `Bords, coins et ourlets (${own} avec leurs propres valeurs)`,
    drawn: (choice) => words("Son contour est la ", choice, "."),
    drawnLabel: "Quelle ligne est le contour",
    drawnAs: { stitch: "ligne de couture", cut: "ligne de coupe" },
    fold: (choice) => words("Sur la pliure du tissu se trouve ", choice, "."),
    foldLabel: "Bord sur la pliure",
    noFold: "aucun bord",
    corners: (choice) => words("Ses coins sont ", choice, "."),
    cornersLabel: "Coins",
    styles: { mitred: "en onglet", square: "d’équerre", blunted: "émoussés", "folded-back": "repliés" },
    asOthers: "comme les autres",
    list: "Chaque bord",
    edge: (name, length, width) => words(name, `, long de ${length}, a `, width, " de marge de couture."),
    onFold: (name, length) => words(name, `, long de ${length}, est sur la pliure\u00a0: pas de marge de couture.`),
    widthLabel: (edge) => `Marge de couture, ${edge}`,
    hem: "rentré en ourlet",
    hemLabel: (edge) => `${edge}\u00a0: rentré en ourlet`,
    asAllRound: "comme tout autour",
    asAllRoundLabel: (edge) => `${edge}\u00a0: marge de couture comme tout autour`,
    corner: (choice) => words("Le coin où il commence est ", choice, "."),
    cornerLabel: (edge) => `Coin où commence ${edge}`,
  },
  marks: {
    summary: (count) =>
      count === 0
        ? "Crans, trous, mots et flèche de droit-fil"
        : `Crans, trous, mots et flèche de droit-fil (${count})`,
    cuts: { slit: "une fente", in: "un cran rentrant", out: "un cran sortant" },
    notch: (cut, edge, at, from, mark) => words("Sur ", edge, " ", cut, ", à ", at, " ", from, ", lettre ", mark),
    notchCut: (n) => `Cran ${n}\u00a0: façon`,
    notchEdge: (n) => `Cran ${n}\u00a0: bord`,
    notchAt: (n) => `Cran ${n}\u00a0: à quelle distance`,
    notchFrom: (n) => `Cran ${n}\u00a0: mesuré comme`,
    notchMark: (n) => `Cran ${n}\u00a0: lettre`,
    froms: { length: "du début du bord", share: "de la longueur du bord" },
    noLetter: "aucune",
    drill: (x, y, text) => words("Un trou à ", x, " vers la droite et ", y, " vers le haut, nommé ", text),
    drillX: (n) => `Trou ${n}\u00a0: vers la droite`,
    drillY: (n) => `Trou ${n}\u00a0: vers le haut`,
    drillText: (n) => `Trou ${n}\u00a0: nom`,
    text: (x, y, text) => words("Les mots ", text, " à ", x, " vers la droite et ", y, " vers le haut"),
    textX: (n) => `Mots ${n}\u00a0: vers la droite`,
    textY: (n) => `Mots ${n}\u00a0: vers le haut`,
    textText: (n) => `Mots ${n}`,
    newText: "Ce côté vers le haut",
    arrow: (choice) => words("La flèche de droit-fil va ", choice),
    arrowLabel: "Flèche de droit-fil",
    arrows: { usual: "comme d’usage pour cette forme.", own: "d’un point à un autre\u00a0:" },
    arrowPoints: (x0, y0, x1, y1) =>
      words("de ", x0, " à droite et ", y0, " en haut jusqu’à ", x1, " à droite et ", y1, " en haut."),
    arrowPoint: [
      "Flèche de droit-fil, départ\u00a0: vers la droite",
      "Flèche de droit-fil, départ\u00a0: vers le haut",
      "Flèche de droit-fil, arrivée\u00a0: vers la droite",
      "Flèche de droit-fil, arrivée\u00a0: vers le haut",
    ],
    addNotch: "Cran",
    addDrill: "Trou",
    addText: "Mots",
    removeNotch: (n) => `Supprimer le cran ${n}`,
    removeDrill: (n) => `Supprimer le trou ${n}`,
    removeText: (n) => `Supprimer les mots ${n}`,
    changed: "repères",
  },
  seams: {
    summary: (count) => (count === 0 ? "À quoi elle se coud" : `À quoi elle se coud (${count})`),
    meets: (first, second) => words(first, " rejoint ", second),
    edge: (panel, edge) => words(panel, ", ", edge),
    panelLabel: (n, side, k) =>
      side === "first" ? `Couture ${n}\u00a0: pièce ${k}` : `Couture ${n}\u00a0: pièce ${k} de l’autre côté`,
    edgeLabel: (n, side, k) =>
      side === "first" ? `Couture ${n}\u00a0: bord ${k}` : `Couture ${n}\u00a0: bord ${k} de l’autre côté`,
    addEdge: (n, side) =>
      side === "first"
        ? `Couture ${n}\u00a0: un bord de plus`
        : `Couture ${n}\u00a0: un bord de plus de l’autre côté`,
    removeEdge: (n, side, k) =>
      side === "first"
        ? `Couture ${n}\u00a0: sans le bord ${k}`
        : `Couture ${n}\u00a0: sans le bord ${k} de l’autre côté`,
    ease: (length) => words("Le premier côté est voulu plus long de ", length, "."),
    easeLabel: (n) => `Couture ${n}\u00a0: voulu plus long de`,
    even: (first, second) => `Ils vont ensemble\u00a0: ${first} sur ${second}.`,
    uneven: (longer, shorter, over) =>
      `${longer} dépasse ${shorter} de ${over}\u00a0: soutenez-le à la couture, ou corrigez l’un des deux.`,
    meantEven: (first, second) => `Ils vont ensemble avec l’embu\u00a0: ${first} sur ${second}.`,
    add: "Couture",
    remove: (n) => `Supprimer la couture ${n}`,
    changed: "ce qui se coud ensemble",
    troubles: "Coutures dont les côtés diffèrent",
    open: (name) => `Ouvrir ${name}`,
  },
};
