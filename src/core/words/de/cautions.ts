import type { CautionTable } from "../../materials/caution.ts";

/** Cautions in German. */
export const cautions: CautionTable = {
  "laser-pvc": ({ materials }) =>
    `${materials.length === 0 ? "Kunstleder" : materials.join(", ")} nie mit dem Laser schneiden: PVC setzt Chlorwasserstoff frei. Was aus Unbekanntem ist oder unbekannt beschichtet, gilt als PVC, bis der Lieferant den Kunststoff nennt.`,
  "laser-fumes": () =>
    "Laser: Dämpfe absaugen und den Deckel geschlossen halten, Löschmittel bereithalten und ihn nie allein laufen lassen; die Anleitung des Herstellers und örtliche Vorschriften gehen vor.",
  "cutting-machine": () =>
    "Schneidemaschine: Finger, Haare und Ärmel von der laufenden Klinge fernhalten, vor dem Hineingreifen anhalten, die Matte vor dem Abheben der Teile herausnehmen und die Maschine nie allein lassen.",
  "rotary-cutter": () =>
    "Rollschneider: Klinge nach jedem Schnitt schließen, stumpfe Klinge wechseln, vom Körper weg schneiden, Finger von der Linealkante fernhalten, Schuhe tragen.",
  "sharp-blades": () =>
    "Messer, Ahlen und Schärfklingen: scharf halten, vom Körper weg schneiden, die andere Hand hinter der Klinge, auf fester Unterlage, und die Klinge danach abdecken.",
  "thick-stack": () =>
    "Dicke Lagen verbiegen und brechen Nadeln: Augen schützen, langsam nähen, über Höcker das Handrad drehen und den Fuß mit einem gefalteten Rest waagerecht halten.",
  "hot-iron": () =>
    "Bügeleisen und frisch gebügelte Falten verbrennen die Haut: mit einem Werkzeug oder Tuch andrücken, nicht mit den Fingern.",
  "iron-melts": () =>
    "Beschichteter Stoff und Kunstleder schmelzen unter dem Bügeleisen: von der Rückseite durch ein Tuch, wenig Hitze, kein Dampf, erst an einem Rest probieren.",
  solvents: () =>
    "Lösungsmittel, Kontaktkleber und Kantenfarben: Fenster öffnen, Handschuhe tragen, Dosen schließen, keine Flamme, kein Bügeleisen und kein Heizgerät in der Nähe; Hinweise auf der Dose lesen und erst auf der Beschichtung probieren.",
  "webbing-ends": () =>
    "Schnittenden von Kunstfaser-Gurtband versiegeln, damit sie nicht ausfransen; geschmolzenes Gurtband verbrennt die Haut.",
  "not-load-rated": () =>
    "Die Riemen sind nicht als Lastmittel geprüft: nie zum Heben oder Klettern verwenden, nie um Tiere, Kinder oder andere Menschen zu halten.",
  "small-children": () => "Lange Riemen und Kordeln sind für kleine Kinder eine Strangulationsgefahr.",
  "tape-gums": () =>
    "Gewöhnliches doppelseitiges Klebeband verklebt Nadeln: eine Sorte zum Nähen nehmen, neben der Nahtlinie.",
  "raw-edge-frays": () =>
    "Eine offene Kante aus Gewebe franst aus: für Kunstleder, Leder, Kork oder Filz verwenden oder die Kante einfassen.",
  "cork-cracks": () => "Kork nicht scharf knicken: er bricht. Die Falten rollen.",
  "slow-hem": () => "Den Umbug langsam nähen: er ist eine Lage dicker als der übrige Riemen.",
  "tube-ends": () =>
    "Einen schmalen Schlauch etwa 7 % länger als nötig nähen und kürzen: die Enden leiden beim Wenden.",
  "tab-hump": () => "Die umgelegte Lasche verdoppelt am Ring jede Lage: über den Höcker das Handrad drehen.",
  "local-rules": () =>
    "Örtliche Vorschriften und die Anleitungen der Hersteller von Werkzeug und Material gehen vor.",
};
