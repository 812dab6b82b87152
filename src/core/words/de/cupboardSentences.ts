import type { CupboardProblem } from "../../problems/cupboardProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** The cupboard in German. */
export const cupboardSentences: SentenceTable<CupboardProblem> = {
  "no-such-piece": ({ label, nearest }) => ({
    what: `Ein Stück ${label} gibt es in diesem Stoffschrank nicht.`,
    remedy: nearest === null ? "Sehen Sie noch einmal auf das Etikett." : `Meinen Sie ${nearest}?`,
  }),
  "piece-out-already": ({ label, project, on }) => ({
    what: `Das Stück ${label} wurde am ${on} für ${quoted(project)} herausgenommen.`,
    remedy: "Legen Sie es erst zurück, wenn es nicht zerschnitten ist, oder legen Sie neu aus, ohne dieses Stück.",
  }),
  "project-has-pieces-out": ({ project, labels, on }) => ({
    what: `Für ein Projekt namens ${quoted(project)} sind schon Stücke draußen: ${labels.join(", ")}, seit ${on}.`,
    remedy:
      "Ist es dieses Projekt, nehmen Sie diese als weitere dafür. Ist es ein anderes gleichen Namens, geben Sie diesem zuerst einen anderen Namen.",
  }),
  "photo-unreadable": ({ mostKb }) => ({
    what: "Das Foto ist weder der Name einer Datei noch ein kleines Bild.",
    remedy: `Schreiben Sie den Namen einer Datei oder ein JPEG, PNG oder WebP von höchstens ${mostKb} kB als Datenadresse.`,
  }),
  "piece-not-out": ({ label }) => ({
    what: `Das Stück ${label} liegt schon im Stoffschrank.`,
    remedy: "Es gibt nichts zurückzulegen.",
  }),
  "piece-twice": ({ label, firstPath }) => ({
    what: `Der Code ${label} steht schon bei ${firstPath}.`,
    remedy: "Geben Sie jedem Stück einen eigenen Code.",
  }),
  "piece-open-ended": ({ label }) => ({
    what: `Die Rolle ${label} hat keine Länge.`,
    remedy: "Messen Sie, was noch darauf ist, und schreiben Sie das hin.",
  }),
  "piece-code-taken": ({ label }) => ({
    what: `Im Projekt heißt ein Stück im Bestand ${label}, wie ein Stück im Stoffschrank.`,
    remedy: "Benennen Sie es im Projekt um.",
  }),
  "shades-mixed": ({ cloth, shades }) => ({
    what: `Im Stoffschrank liegt ${quoted(cloth)} in mehreren Farbtönen: ${shades.join(", ")}.`,
    remedy: "Sagen Sie, welcher genommen werden soll.",
  }),
  "plan-kept-already": ({ on }) => ({
    what: `Was dieser Plan übrig lässt, kam am ${on} in den Stoffschrank.`,
    remedy: "Einmal genügt; nehmen Sie den Schritt zurück, wenn er falsch war.",
  }),
  "plan-leaves-nothing": () => ({
    what: "Dieser Plan lässt nichts übrig, was sich aufzuheben lohnt.",
    remedy: "Aufgehoben wird ein Rest ab 60 mm Breite und Länge.",
  }),
  "plan-takes-nothing": () => ({
    what: "Dieser Plan schneidet aus keinem Stück des Stoffschranks zu.",
    remedy: "Legen Sie zuerst mit dem Stoffschrank aus, damit seine Stücke genommen werden.",
  }),
  "day-unreadable": ({ value }) => ({
    what: `${quoted(value)} ist kein Datum.`,
    remedy: "Schreiben Sie Jahr, Monat und Tag, etwa 2027-03-31.",
  }),
  "cupboard-not-stored": () => ({
    what: "Dieser Browser konnte die Änderung nicht behalten.",
    remedy:
      "Schaffen Sie Platz auf dem Gerät oder erlauben Sie der Seite, Daten zu behalten, und versuchen Sie es noch einmal.",
  }),
  "nothing-to-undo": () => ({
    what: "Es gibt nichts zurückzunehmen.",
    remedy: "Die letzten 100 Änderungen lassen sich zurücknehmen, die neueste zuerst.",
  }),
};
