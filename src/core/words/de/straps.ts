import { pluralOf } from "../../units/numberWords.ts";
import type { LineWord, StrapWords } from "../strapWords.ts";
import { strapPhrases } from "./strapPhrases.ts";

const plural = pluralOf("de");

const LINES: Readonly<Record<LineWord, string>> = {
  fold: "Falte",
  tape: "Klebeband",
  stitch: "Naht",
  mark: "Marke",
  seam: "Naht",
  topstitch: "Steppnaht",
  trim: "Beschnitt",
  notch: "Knips",
};

/** Words about straps in German. */
export const straps: StrapWords = {
  language: "de",
  phrases: strapPhrases,
  constructions: {
    fourfold: { name: "vierfach gefaltet", layers: "4 Lagen", rule: "4 × Breite" },
    "three-raw": { name: "in drei gefaltet, offene Kante", layers: "3 Lagen", rule: "3 × Breite" },
    "three-hemmed": {
      name: "in drei gefaltet, eingeschlagene Kante",
      layers: "3 Lagen, 4 am Umbug",
      rule: "3 × Breite",
    },
    "two-layer": {
      name: "zwei Streifen mit eingeschlagenen Kanten, schmalere Gegenseite",
      layers: "2 + 2 Lagen",
      rule: "2 × Breite außen, 2 × Breite der schmaleren Gegenseite",
    },
    "sewn-turned": {
      name: "zwei Streifen, genäht und gewendet",
      layers: "2 Lagen, 4 an den Kanten",
      rule: "Breite + 2 × Nahtzugabe je Streifen",
    },
    tube: {
      name: "ein gewendeter Schlauch",
      layers: "2 Lagen, 4 an der Naht",
      rule: "2 × Breite + 2 × Nahtzugabe",
    },
    bonded: {
      name: "verklebt, offene Kanten",
      layers: "1 bis 3 Lagen",
      rule: "Breite je Lage und was nach dem Kleben beschnitten wird",
    },
    "webbing-overlay": {
      name: "Gurtband mit Auflage aus Stoff",
      layers: "1 Lage auf dem Gurtband, 2 an seinen Kanten",
      rule: "Gurtband − 2 × Rand + 2 × Einschlag",
    },
    "webbing-sleeve": {
      name: "Gurtband in einer Stoffhülle",
      layers: "4 Lagen Stoff darum, auf Wunsch 1",
      rule: "4 × Gurtband + 2 × seine Dicke (einfacher Bezug: 2 × Gurtband + 2 × Einschlag)",
    },
    corded: {
      name: "ein Kordelgriff mit flachen Enden",
      layers: "1 Lage um die Kordel, 2 an der Naht",
      rule: "π × Kordel + 2 × Nahtzugabe",
    },
    tab: {
      name: "eine Ringlasche oder ein Verbinder",
      layers: "4 Lagen, oder 1 bis 3 flach",
      rule: "4 × Breite, 3 in lang für einen Schenkel von 1 in",
    },
  },
  lengthItems: {
    finished: "fertiger Riemen",
    "drop-twice": "zweimal die Henkelhöhe",
    "over-shoulder": "über die Schulter",
    "worn-longest": "am längsten getragen",
    "worn-longest-less-short": "am längsten getragen, ohne den kurzen Teil",
    "doubled-at-slider": "auch dann doppelt am Schieber",
    "end-raw": "abgeschnitten, wie es ist",
    "end-seam": "in der Naht gefasst",
    "end-tucked": "eingeschlagen",
    "end-fold-back": "um den Beschlag gelegt",
    "end-doubled": "flaches Ende zurückgelegt",
  },
  consumables: {
    tape: "schmales doppelseitiges Klebeband, auswaschbar oder neben der Nahtlinie",
    "topstitch-thread": "Steppgarn",
    "topstitch-thread-bobbin": "Steppgarn, die Hälfte auf der Spule",
    "construction-thread": "Nähgarn",
    "construction-thread-bobbin": "Nähgarn, die Hälfte auf der Spule",
    "edge-paint": "mit Kantenfarbe zu streichen, je Schicht",
    webbing: "Gurtband",
    cord: "Kordel",
  },
  needle: {
    along: "entlang des Riemens",
    "doubled-ends": "an den doppelten Enden",
    "fold-back": "wo ein Ende zurückgelegt ist",
    tucked: "wo ein Ende eingeschlagen ist",
    "straight-join": "an einem geraden Ansatz",
    "tab-ring": "wo die Lasche um ihren Ring liegt",
  },
  parts: {
    outer: "außen",
    facing: "Gegenseite",
    interfacing: "Einlage",
    padding: "Polster",
    shortPart: "kurzer Teil",
    longPart: "langer Teil",
    lengthOf: (number, of) => `Länge ${number} von ${of}`,
  },
  picture: {
    cutWidth: (size) => `Schnittbreite ${size}`,
    cutLength: (size) => `Schnittlänge ${size}`,
    flat: (percent) =>
      `flach, linke Seite oben, ${percent === null ? "Breite wahr" : `Breite auf ${percent} % gezeichnet`}, Länge abgebrochen`,
    magnified: (times, cut) => `${plural(times, "wahre Größe", `${times}-fach vergrößert`)}; Schnittbreite ${cut}`,
    rawEdgeHeld: (by) => `offene Kante ${by} zurück`,
    hemHeld: (by) => `Umbug ${by} zurück`,
    rawEdge: "offene Kante",
    stitch: "Stich",
    layers: {
      outer: "außen",
      facing: "Gegenseite",
      "own-facing": "Gegenseite, gleiches Material",
      interfacing: "Einlage",
      padding: "Polster, gedrückt",
      webbing: "Gurtband",
      cord: "Kordel",
    },
  },
  lineAt: (line, at) => `${LINES[line]} bei ${at}`,
  laidFlat: (part) => (part === "" ? "flach gelegt" : `${part}, flach gelegt`),
};
