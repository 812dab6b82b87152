import { pluralOf } from "../../../core/units/numberWords.ts";
import type { enMatching, enNap } from "../en/matching.ts";
import { words } from "../words.tsx";

const plural = pluralOf("de");

/** The same in German. */
export const deMatching: typeof enMatching = {
  summary: (count) =>
    count === 0
      ? "Muster und was darauf zusammentrifft"
      : `Muster, mit ${plural(count, "einer Passung", `${count} Passungen`)}`,
  across: (length) => words("Quer wiederholt es sich alle ", length, "."),
  acrossLabel: "Rapport quer",
  noAcross: "gar nicht",
  firstLine: (along, across) =>
    words("Eine Linie liegt ", along, " von der Schnittkante und ", across, " von der unteren Kante einer Rolle."),
  firstAlongLabel: "Erste Linie ab Schnittkante",
  firstAcrossLabel: "Erste Linie ab unterer Kante",
  tolerance: (length) => words("Was zusammentrifft, darf ", length, " danebenliegen."),
  toleranceLabel: "Wie weit daneben",
  symmetric: "Sieht um die Hälfte gedreht gleich aus",
  halfDrop: "Jede zweite Reihe ist um die Hälfte versetzt",
  seam: (first, edge, second, other) => words(first, " ", edge, " trifft ", second, " ", other),
  firstPanel: (n) => `Passung ${n}: Teil`,
  firstEdge: (n) => `Passung ${n}: seine Kante`,
  secondPanel: (n) => `Passung ${n}: Teil, auf das es trifft`,
  secondEdge: (n) => `Passung ${n}: Kante, auf die es trifft`,
  edgeNumber: (n) => `Kante ${n}`,
  centred: (part, on) => words("Die Mitte von ", part, " liegt ", on),
  centredPart: (n) => `Platz ${n}: Teil`,
  centredOnLabel: (n) => `Platz ${n}: wo`,
  centredOn: {
    line: "auf einer Linie oder einem Motiv",
    between: "in der Mitte zwischen zweien",
    "same-place": "irgendwo, aber bei jeder Tasche gleich",
  },
  addSeam: "Zwei Kanten, die sich treffen",
  addCentred: "Ein Teil mit seinem Platz",
  remove: (n) => `Passung ${n} entfernen`,
  removeCentred: (n) => `Platz ${n} entfernen`,
  board: "Kanten, die sich treffen, in den Bildern gedrückt",
  pressFirst: "Drücken Sie eine Kante, dann die Kante, auf die sie trifft.",
  pressSecond: (edge) => `Drücken Sie nun die Kante, die auf ${edge} trifft. Escape lässt sie wieder los.`,
  edgeOf: (panel, edge) => `${panel}, ${edge}`,
  matchedEdge: (edge, marks) => `${edge}, passend: ${marks}`,
  changed: "was auf dem Muster zusammentrifft",
};

/** The same in German. */
export const deNap: typeof enNap = {
  waySentence: (way) => words("Strich oder Druck lassen die Teile ", way, " liegen."),
  wayLabel: "In welcher Richtung die Teile liegen",
  ways: {
    both: "in beiden Richtungen",
    up: "in einer Richtung, Pfeile die Rolle hinauf",
    down: "in einer Richtung, Pfeile die Rolle hinab",
    free: "in einer Richtung, gleich welcher",
  },
  bandSentence: (length) =>
    words("Länge der Rolle, aus der die Teile einer Tasche kommen, für einen Farbton: ", length, "."),
  bandLabel: "Länge der Rolle für eine Tasche",
  bandAnywhere: "beliebig",
};
