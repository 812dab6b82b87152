import { pluralOf } from "../../core/units/numberWords.ts";
import type { enPattern } from "./enPattern.ts";
import { words } from "./words.tsx";

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
  elsewhere:
    "Fotos ohne unser Fotoblatt und PDF-Blätter, die nichts verbindet, liest die Befehlszeile: laywright pattern --help.",
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
