import { pluralOf } from "../../units/numberWords.ts";
import type { PaperTexts } from "../paperTexts.ts";

const plural = pluralOf("de");

const nth = (number: number | null): string => (number === null ? "" : ` ${number}`);

/** Drawings and sheets in German. */
export const paper: PaperTexts = {
  pieces: {
    mirrored: (name) => `${name}, gespiegelt`,
    onFold: (name) => `${name}, halb, im Bruch`,
    fold: "Stoffbruch: nicht schneiden",
    copy: (number, of) => `${number} von ${of}`,
    pattern: (count, mirrored, material) =>
      `${count}× zuschneiden${mirrored > 0 ? ` und ${mirrored}× gewendet` : ""}, ${material}`,
  },
  map: {
    bySize: "Nicht auf diesen Seiten, nach Maß mit dem Lineal zu schneiden:",
    printFirst: "Diese Seite zuerst drucken, mit 100 % (tatsächliche Größe), nie „an Seite anpassen“.",
    measure:
      "Beide Quadrate in beiden Richtungen messen. Weicht das große um mehr als einen halben Millimeter ab, nicht weiterdrucken: eintragen, was es quer und hoch misst, und noch einmal drucken.",
    printSheets: (count) => plural(count, "Die eine Seite drucken.", `Die ${count} Seiten drucken.`),
    overlapped:
      "Jede Seite am linken und am oberen Rahmen abschneiden, wo sie dort eine Nachbarseite hat. Bis zur inneren Linie auf die Nachbarseite legen, Ringe auf Ringe, und zusammenkleben.",
    butted:
      "Jede Seite am linken und am oberen Rahmen abschneiden, wo sie dort eine Nachbarseite hat. Stoß an Stoß an die Nachbarseite legen, halbe Ringe an halbe Ringe, und zusammenkleben.",
    checkTape:
      "Am Maßband der unteren Kante prüfen: Es zählt die Länge des Stoffs von seinem geschnittenen Ende an.",
    corrected: (across, down) => `Für einen Drucker gezeichnet, der abweicht: ×${across} quer, ×${down} hoch.`,
    eachWay: "hoch und quer",
  },
  mats: {
    check: (side) => `${side} hoch und quer: nicht schneiden`,
  },
  stocks: {
    roll: (number, width) => `Rolle${nth(number)}, ${width} breit`,
    remnant: (number, size, copy) => `Rest${nth(number)}, ${size}${copy}`,
    skin: (number, size, copy) => `Lederhaut${nth(number)}, ${size}${copy}`,
    precut: (number, size, copy) => `Zuschnitt${nth(number)}, ${size}${copy}`,
    kinds: { roll: "Rolle", remnant: "Rest", skin: "Lederhaut" },
    copy: (number, of) => `, ${number} von ${of}`,
  },
  sheets: {
    sheet: (number, of) => `${number} von ${of}`,
    lengthwise: "Fadenlauf",
    oneWay: "Fadenlauf, eine Richtung",
    tenCm: "10 cm: vor dem Schneiden messen",
    roll: (usableWidth, used) => `nutzbare Breite ${usableWidth}, ${used} verbraucht`,
    patterns: "Schnittteile",
    oneOfEach: "eines von jedem runden Teil",
  },
  printer: {
    isTrue: "Der Drucker druckt maßhaltig: Es braucht keinen Ausgleich.",
    fitted: (off, papers) => {
      const why = papers ? `, wie wenn eine Seite für ${papers[0]} auf ${papers[1]} eingepasst wird` : "";
      return `Beide Richtungen weichen um dieselben ${off} ab${why}: Im Druckfenster stand „an Seite anpassen“. Wählen Sie 100 % oder „tatsächliche Größe“ und das richtige Papier, und drucken Sie das Prüfquadrat noch einmal.`;
    },
    off: (off, x, y) =>
      `Der Drucker weicht um ${off} ab: Die Seiten sind ×${x} quer und ×${y} hoch gezeichnet, damit sie stimmen.`,
    uneven: (x, y) =>
      `Der Drucker streckt die Richtungen verschieden: Die Seiten sind ×${x} quer und ×${y} hoch gezeichnet, damit sie stimmen.`,
  },
};
