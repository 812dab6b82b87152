import { pluralOf } from "../../units/numberWords.ts";
import type { RulerTexts } from "../rulerTexts.ts";

const plural = pluralOf("de");

/** Ruler cuts in German. */
export const ruler: RulerTexts = {
  title: (project, cloth) => `${project}: Linealschnitte in ${cloth}`,
  byRuler: "Mit dem Lineal",
  counts: (cuts, settings) =>
    `${cuts} ${plural(cuts, "Schnitt", "Schnitte")}, ${settings} ${plural(settings, "Einstellung", "Einstellungen")} des Lineals`,
  measure:
    "Jeder Schnitt geht von Kante zu Kante des genannten Stoffs. Gemessen wird von der frischen Kante, im Fadenlauf.",
  naming:
    "Längen heißen A, B, C vom geschnittenen Ende her; A1 ist der erste Streifen der Länge A, A1B der zweite Teil dieses Streifens.",
  curved:
    "Ein Teil mit anderen als geraden, rechtwinkligen Kanten wird erst als Rechteck geschnitten, „sein Kasten“; danach den Umriss schneiden.",
  boxOf: (name) => `${name}, sein Kasten`,
  wholeCloth: "Stoff",
  straighten: (margin) =>
    `Das Schnittende gerade schneiden, rechtwinklig zur Webkante${margin === "" ? "" : `, ${margin} weit innen, und eine Längskante ebenso beschneiden`}`,
  crosscut: (cloth, at) => `${cloth} quer schneiden bei ${at}`,
  rip: (cloth, at) => `${cloth} längs schneiden bei ${at}`,
  again: (at) => `${at}, wie eben`,
  setRuler: "Lineal einstellen",
  rulerStands: "Lineal bleibt eingestellt",
  comesOff: (what) => `ergibt ${what}`,
  remains: (what) => `übrig bleibt ${what}`,
  offcut: "Rest",
  cutFurther: (name) => `${name}, wird weiter geschnitten`,
  freeMatched: "Frei gelegt: mit geraden Schnitten wurde kein Plan gefunden, in dem jedes Teil dem Muster folgt.",
  freePinned:
    "Frei gelegt: gerade Schnitte von Kante zu Kante trennen die festgesteckten Teile nicht. Lösen Sie sie, oder stecken Sie sie in Reihen fest.",
  freeAslant: "Frei gelegt: manche Teile dürfen nur schräg liegen, wo kein Lineal sie trennt.",
  freeCramped: "Frei gelegt: mit geraden Schnitten allein fände nicht jedes Teil auf diesem Stoff Platz.",
  moreStages: (stages) =>
    `Stoff von begrenzter Länge, mit Fehlern oder festgesteckten Teilen wird nicht in wenigen Stufen gelegt: dieser Plan braucht ${stages}.`,
  narrowStrips: (count, least) =>
    count === 1
      ? `Ein Schnitt nimmt einen Streifen ab, der schmaler als ${least} ist: kein annähernd so guter Plan wurde gefunden, der ohne auskommt.`
      : `${count} Schnitte nehmen einen Streifen ab, der schmaler als ${least} ist: kein annähernd so guter Plan wurde gefunden, der ohne auskommt.`,
  skinFirst:
    "Dieser Stoff hat keine gerade Kante: den Fadenlauf einzeichnen und von den äußersten Punkten messen, längs und quer.",
  page: (number, all) => `${number} von ${all}`,
};
