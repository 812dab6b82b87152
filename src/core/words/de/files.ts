import type { LaserRisk } from "../../materials/laser.ts";
import { pluralOf, withDecimalSign } from "../../units/numberWords.ts";
import type { FileTexts } from "../fileTexts.ts";

const plural = pluralOf("de");

/** A paper of any size has its size for a name. */
const pagesOf = (count: number, paper: string): string =>
  `${count} ${plural(count, "Seite", "Seiten")} ${withDecimalSign(paper, "de")}`;

const LASER_RISKS: Readonly<Record<LaserRisk, string>> = {
  pvc: "Es ist PVC",
  "unknown-coating": "Niemand hat gesagt, womit es beschichtet ist, also gilt es als PVC",
  "unknown-polymer": "Niemand hat gesagt, woraus es ist, also gilt es als PVC",
};

/** Files in German. */
export const files: FileTexts = {
  photoSheet: {
    title: "Fotoblatt",
    measure: "In Originalgröße drucken. Diese Linie muss 100 mm messen; sonst angeben, was sie misst (--line).",
    use: [
      "Flach neben den Schnitt legen, eine Handbreit entfernt, auf dunklem Tisch. Oder den Schnitt zwischen die Ringe zeichnen.",
      "Alle sieben Ringe im Bild, gleichmäßiges Licht, kein Schatten darauf. Möglichst hoch darüber stehen.",
    ],
  },
  titles: { cutSheet: "Zuschnittblatt", patterns: "Schnittteile" },
  kinds: {
    sheets: "Seiten zum Zusammenkleben",
    longSheet: "ein langes Blatt für den Copyshop",
    patterns: "eines von jedem runden Teil",
    mats: "Matten für die Schneidemaschine",
  },
  about: {
    cutSheetToPrint: "Zuschnittblatt zum Drucken",
    cutSheetAsText: "Zuschnittblatt als Text",
    cutList: "Zuschnittliste für eine Tabelle",
    labels: "ein Etikett für jedes Teil",
    layPlan: "Zuschnittplan in wahrer Größe",
    forDrawing: (about) => `${about}, für Zeichenprogramme`,
    tiles: (sheets, paper) => `${pagesOf(sheets, paper)} zum Zusammenkleben, mit Übersicht`,
    longSheets: (sheets, rollWidth) =>
      `${plural(sheets, "ein langes Blatt", `${sheets} lange Blätter`)} für die ${rollWidth} breite Rolle eines Copyshops`,
    projector: "dicke helle Linien für den Beamer",
    patterns: (sheets, paper) => `eines von jedem runden Teil auf ${pagesOf(sheets, paper)}; Rechtecke nach Maß`,
    rulerCuts: (cuts) => `${cuts} Linealschnitte der Reihe nach, jeder gezeichnet`,
    rulerList: "Linealschnitte der Reihe nach",
    mat: (number, of) => `Matte ${number} von ${of} für die Schneidemaschine`,
  },
  tooLarge: (names, material) =>
    `Zu groß für die Matte der Maschine, von Hand zu schneiden oder anzusetzen: ${names} (${material}).`,
  tooManySheets: (what, sheets, paper, most) =>
    `Keine Seiten zum Zusammenkleben (${what}): Es wären ${pagesOf(sheets, paper)}, höchstens ${most} werden geschrieben. Nehmen Sie größeres Papier, nur die runden Teile oder das lange Blatt.`,
  tooNarrow: (file, strips, least) =>
    `Keine ${file}: Dieser Plan ist frei gelegt, und mit dem Lineal nähme${plural(strips, " ein Schnitt", `n ${strips} Schnitte`)} einen Streifen unter ${least} ab. Um mit dem Lineal zu schneiden, lassen Sie den Stoff für gerade Schnitte legen.`,
  tooManyLetters: (file, names, most) =>
    `${file}: Die Namen stehen als Text da, nicht gezeichnet. Es sind ${names}, und Buchstaben werden für höchstens ${most} gezeichnet, denn eine so große Datei öffnen nur wenige Programme. Für gezeichnete Buchstaben legen Sie weniger Taschen, oder schneiden Sie von Matten.`,
  laserRefusal: (material, risk) =>
    `Keine Laserdatei für ${material}: ${LASER_RISKS[risk]}, und PVC setzt Chlorwasserstoff frei. Fragen Sie den Lieferanten nach dem Kunststoff und geben Sie ihn als ${risk === "unknown-polymer" ? "Kunststoff" : "Beschichtung"} des Materials an, oder schneiden Sie es mit dem Messer.`,
};
