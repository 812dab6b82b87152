import { pluralOf } from "../../../core/units/numberWords.ts";
import type { enPattern } from "../en/pattern.ts";
import { words } from "../words.tsx";

const plural = pluralOf("de");

const listed = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 3).join(", ")} und ${names.length - 3} weitere` : names.join(", ");

const UNITS: Readonly<Record<string, string>> = {
  mm: "in Millimetern",
  cm: "in Zentimetern",
  m: "in Metern",
  in: "in Zoll",
  ft: "in Fuß",
};

/** Ein eigener Schnitt auf der Seite, deutsch. */
export const dePattern: typeof enPattern = {
  bringIn: "Eigener Schnitt",
  kinds: "Eine Zeichnung als SVG, DXF oder PDF, oder ein Foto, auf dem unser Fotoblatt liegt",
  heading: "Ihr eigener Schnitt",
  lie: {
    sheets: (way) => words("Ihre Blätter liegen ", way, "."),
    sheetsLabel: "Wie die Blätter liegen",
    sheetWays: { marked: "wie ihre Passmarken sagen", rows: "Kante an Kante in Reihen" },
    inRows: (columns, rows, trim) =>
      words(columns, " in einer Reihe, ", rows, " Reihen, von oben links; ", trim, " fallen an jeder Seite weg."),
    columnsLabel: "Blätter in einer Reihe",
    rowsLabel: "Reihen",
    trimLabel: "An jeder Seite eines Blatts abgeschnitten",
    scale: (way) => words("Den Maßstab gibt ", way, "."),
    scaleLabel: "Was dem Foto seinen Maßstab gibt",
    scaleWays: {
      "photo-sheet": "unser Fotoblatt darin",
      paper: "das Blatt Papier, auf dem es liegt",
      corners: "die Ecken dieses Blatts, die ich antippe",
      points: "der Abstand zweier Punkte, die ich antippe, von genau oben fotografiert",
    },
    paper: (paper) => words("Dieses Blatt ist ", paper, ", hell auf einem dunklen Tisch."),
    paperLabel: "Größe des Blatts",
    apart: (length) => words("Sie liegen ", length, " auseinander."),
    apartLabel: "Abstand der beiden Punkte",
    photo: "Ihr Foto",
    press: (wanted, pressed) =>
      pressed < wanted
        ? `Tippen Sie im Foto ${wanted === 4 ? "Ecke" : "Punkt"} ${pressed + 1} von ${wanted} an${wanted === 4 ? ", im Uhrzeigersinn von links oben" : ""}.`
        : "Tippen Sie nahe einer Stelle, um sie zu versetzen.",
    place: (n, x, y) => words(`Stelle ${n}: `, x, " px nach rechts, ", y, " px nach unten."),
    placeLabel: (n, isAcross) => `Stelle ${n}, nach ${isAcross ? "rechts" : "unten"}, in Pixeln`,
  },
  states: {
    reading: (file) => `${file} wird gelesen …`,
    stopped: (file) =>
      `Das Lesen von ${file} wurde angehalten. Wählen Sie die Datei noch einmal, um neu anzufangen.`,
    failed: (file) => `${file} konnte nicht gelesen werden: Das ist unser Fehler. Ihr Projekt ist, wie es war.`,
  },
  photoSheet: "Fotoblatt zum Drucken",
  photoSheetAbout:
    "Neben einen Papierschnitt legen und beides fotografieren: Es gibt den Maßstab und nimmt die Schräge heraus.",
  stop: "Lesen anhalten",
  leave: "Weglassen",
  unit: "Wie die Zahlen der Datei gelesen werden",
  asTheFileSays: "wie es die Datei sagt",
  units: (unit) => UNITS[unit] ?? `mit ${unit.slice(2)} px je Zoll`,
  came: (file, lines, unit) =>
    words(
      `${file} hat ${plural(lines, "eine Linie", `${lines} Linien`)}, gelesen `,
      unit,
      ". Legen Sie ein Lineal auf das Papier und vergleichen Sie eine Seite, bevor Sie zuschneiden.",
    ),
  troubles: "Was auffiel",
  mends: {
    gaps: "Lücken schließen",
    doubles: "Doppelte Linien weglassen",
    crossings: "Die größte Fläche behalten",
    slivers: "Splitter weglassen",
    scale: "So lesen",
  },
  change: (fresh, gone) =>
    `Was sich geändert hat: ${plural(fresh, "eine Linie", `${fresh} Linien`)} neu, ${plural(gone, "eine Linie", `${gone} Linien`)} weg`,
  changeKey: "Dick: wie ausgebessert. Gestrichelt: wie gezeichnet und jetzt weg. In Ihrem Projekt ist noch nichts.",
  asDrawn: "So lassen, wie gezeichnet",
  more: (count) => `und ${count} weitere`,
  lines: "Linien des Schnitts",
  closed: "geschlossen",
  open: "offen",
  correct: "Von Hand richten",
  corrected: "von Hand gerichtet",
  correcting: (name) => `${name} von Hand`,
  correctAbout: "Die dünne Linie ist, was gelesen wurde; darunter liegen die anderen Linien der Datei.",
  correctOverPhoto: "Darunter liegt das Foto, entzerrt; die dünne Linie ist, was gelesen wurde.",
  correctDone: "Fertig",
  asRead: "Wie gelesen",
  takenFor: (name) => `Wofür ${name} ist`,
  noPanel: "Noch ist kein Teil darin: Keine Schnittlinie oder Nahtlinie ist geschlossen.",
  becomes: (names, material, count) =>
    words(
      `Daraus ${plural(names.length, "wird ein Teil", `werden ${names.length} Teile`)}: ${listed(names)}. Zugeschnitten aus `,
      material,
      ", ",
      count,
      plural(names.length, " Mal für jede Tasche.", " Mal jedes für jede Tasche."),
    ),
  sewn: (allowance) => words("Wo der Schnitt keine Nahtzugabe zeigt, kommen ", allowance, " dazu."),
  material: "Material der Teile",
  count: "Stücke jedes Teils für eine Tasche",
  allowance: "Nahtzugabe, wo der Schnitt keine zeigt",
  add: (panels) => plural(panels, "Teil hinzufügen", `${panels} Teile hinzufügen`),
  added: (file) => `Schnitt ${file}`,
};
