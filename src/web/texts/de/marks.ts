import type { enMarks } from "../en/marks.ts";
import { words } from "../words.tsx";

/** Kanten, Ecken und Zeichen eines Teils, und woran es genäht wird. */
export const deMarks: typeof enMarks = {
  picture: (name) => `${name}, wie der Umriss gezeichnet ist`,
  pictureWords: (edge, length) => `Hervorgehoben: ${edge}, ${length}. Der Punkt zeigt, wo die Kante beginnt.`,
  cornerWords: (corner) => `Hervorgehoben: ${corner}.`,
  frame: (along, across) =>
    `Stellen werden von der linken unteren Ecke des umschließenden Rechtecks gemessen, nach rechts und nach oben. Es ist ${along} breit und ${across} hoch.`,
  edges: {
    summary: (own) =>
      own === 0 ? "Kanten, Ecken und Säume" : `Kanten, Ecken und Säume (${own} mit eigenen Angaben)`,
    drawn: (choice) => words("Der Umriss ist die ", choice, "."),
    drawnLabel: "Welche Linie der Umriss ist",
    drawnAs: { stitch: "Nahtlinie", cut: "Schnittlinie" },
    fold: (choice) => words("Im Stoffbruch liegt ", choice, "."),
    foldLabel: "Kante im Bruch",
    noFold: "keine Kante",
    corners: (choice) => words("Die Ecken sind ", choice, "."),
    cornersLabel: "Ecken",
    styles: {
      mitred: "spitz",
      square: "gerade abgeschnitten",
      blunted: "stumpf",
      "folded-back": "zum Einschlagen",
    },
    asOthers: "wie die anderen",
    list: "Jede Kante",
    edge: (name, length, width) => words(name, `, ${length} lang, hat `, width, " Nahtzugabe."),
    onFold: (name, length) => words(name, `, ${length} lang, liegt im Bruch: keine Nahtzugabe.`),
    widthLabel: (edge) => `Nahtzugabe, ${edge}`,
    hem: "als Saum eingeschlagen",
    hemLabel: (edge) => `${edge}: als Saum eingeschlagen`,
    asAllRound: "wie ringsum",
    asAllRoundLabel: (edge) => `${edge}: Nahtzugabe wie ringsum`,
    corner: (choice) => words("Die Ecke, an der sie beginnt, ist ", choice, "."),
    cornerLabel: (edge) => `Ecke am Anfang von ${edge}`,
  },
  marks: {
    summary: (count) =>
      count === 0
        ? "Knipse, Löcher, Beschriftung und Fadenlauf"
        : `Knipse, Löcher, Beschriftung und Fadenlauf (${count})`,
    cuts: { slit: "ein Knips", in: "eine Kerbe nach innen", out: "eine Kerbe nach außen" },
    notch: (cut, edge, at, from, mark) => words("An ", edge, " ", cut, ", ", at, " ", from, ", Buchstabe ", mark),
    notchCut: (n) => `Knips ${n}: wie er geschnitten wird`,
    notchEdge: (n) => `Knips ${n}: Kante`,
    notchAt: (n) => `Knips ${n}: wie weit auf der Kante`,
    notchFrom: (n) => `Knips ${n}: gemessen als`,
    notchMark: (n) => `Knips ${n}: Buchstabe`,
    froms: { length: "ab dem Anfang der Kante", share: "der Kantenlänge" },
    noLetter: "keiner",
    drill: (x, y, text) => words("Ein Loch ", x, " nach rechts und ", y, " nach oben, genannt ", text),
    drillX: (n) => `Loch ${n}: nach rechts`,
    drillY: (n) => `Loch ${n}: nach oben`,
    drillText: (n) => `Loch ${n}: Name`,
    text: (x, y, text) => words("Die Wörter ", text, " ", x, " nach rechts und ", y, " nach oben"),
    textX: (n) => `Beschriftung ${n}: nach rechts`,
    textY: (n) => `Beschriftung ${n}: nach oben`,
    textText: (n) => `Beschriftung ${n}`,
    newText: "Diese Seite oben",
    arrow: (choice) => words("Der Fadenlaufpfeil geht ", choice),
    arrowLabel: "Fadenlaufpfeil",
    arrows: { usual: "wie bei dieser Form üblich.", own: "von einem Punkt zum anderen:" },
    arrowPoints: (x0, y0, x1, y1) =>
      words("von ", x0, " nach rechts und ", y0, " nach oben bis ", x1, " nach rechts und ", y1, " nach oben."),
    arrowPoint: [
      "Fadenlaufpfeil von: nach rechts",
      "Fadenlaufpfeil von: nach oben",
      "Fadenlaufpfeil bis: nach rechts",
      "Fadenlaufpfeil bis: nach oben",
    ],
    addNotch: "Knips",
    addDrill: "Loch",
    addText: "Beschriftung",
    removeNotch: (n) => `Knips ${n} entfernen`,
    removeDrill: (n) => `Loch ${n} entfernen`,
    removeText: (n) => `Beschriftung ${n} entfernen`,
    changed: "Zeichen",
  },
  seams: {
    summary: (count) => (count === 0 ? "Woran es genäht wird" : `Woran es genäht wird (${count})`),
    meets: (first, second) => words(first, " trifft auf ", second),
    edge: (panel, edge) => words(panel, ", ", edge),
    panelLabel: (n, side, k) =>
      side === "first" ? `Naht ${n}: Teil ${k}` : `Naht ${n}: Teil ${k} der anderen Seite`,
    edgeLabel: (n, side, k) =>
      side === "first" ? `Naht ${n}: Kante ${k}` : `Naht ${n}: Kante ${k} der anderen Seite`,
    addEdge: (n, side) =>
      side === "first" ? `Naht ${n}: noch eine Kante` : `Naht ${n}: noch eine Kante der anderen Seite`,
    removeEdge: (n, side, k) =>
      side === "first" ? `Naht ${n}: ohne Kante ${k}` : `Naht ${n}: ohne Kante ${k} der anderen Seite`,
    ease: (length) => words("Die erste Seite soll ", length, " länger sein."),
    easeLabel: (n) => `Naht ${n}: soll länger sein um`,
    even: (first, second) => `Sie passen: ${first} auf ${second}.`,
    uneven: (longer, shorter, over) =>
      `${longer} ist ${over} länger als ${shorter}: halten Sie es beim Nähen ein, oder ändern Sie eines von beiden.`,
    meantEven: (first, second) => `Sie passen mit der Mehrweite: ${first} auf ${second}.`,
    add: "Naht",
    remove: (n) => `Naht ${n} entfernen`,
    changed: "was zusammengenäht wird",
    troubles: "Nähte, deren Seiten verschieden lang sind",
    open: (name) => `${name} öffnen`,
  },
};
