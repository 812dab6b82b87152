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
    fourfold: { name: "vierfach gefaltet", layers: "4 Lagen" },
    "three-raw": { name: "in drei gefaltet, offene Kante", layers: "3 Lagen" },
    "three-hemmed": {
      name: "in drei gefaltet, eingeschlagene Kante",
      layers: "3 Lagen, 4 am Umbug",
    },
    "two-layer": {
      name: "zwei Streifen mit eingeschlagenen Kanten, schmalere Gegenseite",
      layers: "2 + 2 Lagen",
    },
    "sewn-turned": {
      name: "zwei Streifen, genäht und gewendet",
      layers: "2 Lagen, 4 an den Kanten",
    },
    tube: {
      name: "ein gewendeter Schlauch",
      layers: "2 Lagen, 4 an der Naht",
    },
    bonded: {
      name: "verklebt, offene Kanten",
      layers: "1 bis 3 Lagen",
    },
    "webbing-overlay": {
      name: "Gurtband mit Auflage aus Stoff",
      layers: "1 Lage auf dem Gurtband, 2 an seinen Kanten",
    },
    "webbing-sleeve": {
      name: "Gurtband in einer Stoffhülle",
      layers: "4 Lagen Stoff darum, auf Wunsch 1",
    },
    corded: {
      name: "ein Kordelgriff mit flachen Enden",
      layers: "1 Lage um die Kordel, 2 an der Naht",
    },
    tab: {
      name: "eine Ringlasche oder ein Verbinder",
      layers: "4 Lagen, oder 1 bis 3 flach",
    },
  },
  rules: {
    fourfold: "4 × Breite",
    three: "3 × Breite",
    "two-layer": "2 × Breite außen, 2 × Breite der schmaleren Gegenseite",
    "sewn-turned": "Breite + 2 × Nahtzugabe je Streifen, außen dazu 2 × der Überstand",
    tube: "2 × Breite + 2 × Nahtzugabe",
    bonded: "Breite je Lage und was nach dem Kleben beschnitten wird",
    "webbing-overlay": "Gurtband − 2 × Rand + 2 × Einschlag",
    "webbing-sleeve": "4 × Gurtband + 2 × seine Dicke",
    "webbing-cover": "2 × Gurtband + 2 × seine Dicke + 2 × Einschlag",
    corded: "π × Kordel + 2 × Nahtzugabe",
  },
  choices: {
    crease: "Art der Falte",
    clearance: "Abstand offener Kanten von der Falte",
    edgeGap: "Abstand von der Mittelfalte",
    setback: "Zurücksetzen der Kante",
    hem: "Umbug",
    reveal: "Überstand",
    seamAllowance: "Nahtzugabe",
    margin: "Rand",
    turn: "Einschlag",
    trim: "Beschnitt",
    paddingPressed: "wie weit das Polster gedrückt wird",
    layers: "Zahl der Lagen",
    shortPart: "kurzes Teil",
    edgeFinish: "Behandlung offener Kanten",
    fromEdge: "Abstand der Steppnaht",
    extraRows: "weitere Steppnähte",
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
    "trimmed-spare": "länger genäht und gekürzt, weil die Enden leiden",
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
