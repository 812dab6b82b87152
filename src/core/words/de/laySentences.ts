import type { CopyName, LayProblemFinding } from "../../problems/layProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { quoted } from "../phrase.ts";

const copyOf = ({ pieceId, copy, name }: CopyName): string => name ?? `${quoted(pieceId)} Nr. ${copy + 1}`;
const clothOf = ({ stockId, stockName }: { readonly stockId: string; readonly stockName?: string }): string =>
  quoted(stockName ?? stockId);
const mm2 = (value: number): string => withDecimalSign(`${Number(value.toPrecision(4))} mm²`, "de");
const times = (pieceId: string, count: number): string =>
  count === 1 ? quoted(pieceId) : `${count} × ${quoted(pieceId)}`;
const REDO = "Legen Sie die Teile neu; nach diesem Plan darf nicht geschnitten werden.";
const MOVE = "Verschieben Sie eines der beiden, oder legen Sie die Teile neu.";
const IN = "Rücken Sie es hinein, oder legen Sie die Teile neu.";
const OFF = "Rücken Sie es weg, oder legen Sie die Teile neu.";

/** Lay problems and plans in German. */
export const laySentences: SentenceTable<LayProblemFinding> = {
  "plan-unknown-piece": ({ pieceId }) => ({
    what: `Der Plan enthält ein Teil ${quoted(pieceId)}, das die Zuschnittliste nicht kennt.`,
    remedy: REDO,
  }),
  "plan-unknown-stock": ({ stockId }) => ({
    what: `Der Plan benutzt ${quoted(stockId)}, das nicht unter dem vorhandenen Stoff ist.`,
    remedy: REDO,
  }),
  "plan-pose-unreadable": (problem) => ({
    what: `Die Lage von ${copyOf(problem)} ist keine Zahl.`,
    remedy: REDO,
  }),
  "plan-copy-unknown": (problem) => ({
    what: `Der Plan enthält ${copyOf(problem)}, aber nur ${problem.count} werden gebraucht.`,
    remedy: REDO,
  }),
  "plan-copy-twice": (problem) => ({ what: `Der Plan enthält ${copyOf(problem)} zweimal.`, remedy: REDO }),
  "plan-turn-not-allowed": (problem) => ({
    what: `${copyOf(problem)} ist um ${problem.turnDeg}° gedreht${problem.mirrored ? " und gespiegelt" : ""}, was Fadenlauf, Strich oder rechte Seite verbieten.`,
    remedy: "Drehen Sie es in eine erlaubte Richtung, oder legen Sie die Teile neu.",
  }),
  "plan-overlap": (problem) => ({
    what: `${copyOf(problem)} liegt auf ${copyOf(problem.other)}: sie überdecken sich um ${mm2(problem.areaMm2)}.`,
    remedy: MOVE,
  }),
  "plan-too-close": (problem, say) => ({
    what: `${copyOf(problem)} und ${copyOf(problem.other)} sind ${say(problem.distanceMm, "fine")} auseinander; der Schnittabstand ist ${say(problem.leastMm, "fine")}.`,
    remedy: MOVE,
  }),
  "plan-outside-stock": (problem) => ({
    what: `${copyOf(problem)} ragt um ${mm2(problem.areaMm2)} über ${clothOf(problem)} hinaus.`,
    remedy: IN,
  }),
  "plan-too-near-edge": (problem, say) => ({
    what: `${copyOf(problem)} ist ${say(problem.distanceMm, "fine")} vom Rand von ${clothOf(problem)}; der Randabstand ist ${say(problem.leastMm, "fine")}.`,
    remedy: IN,
  }),
  "plan-on-flaw": (problem) => ({
    what: `${copyOf(problem)} liegt mit ${mm2(problem.areaMm2)} auf Fehler ${problem.flaw + 1} von ${clothOf(problem)}.`,
    remedy: OFF,
  }),
  "plan-too-near-flaw": (problem, say) => ({
    what: `${copyOf(problem)} ist ${say(problem.distanceMm, "fine")} von Fehler ${problem.flaw + 1} von ${clothOf(problem)}; der Schnittabstand ist ${say(problem.leastMm, "fine")}.`,
    remedy: OFF,
  }),
  "plan-miscounted": ({ pieceId, wanted, placed, unplaced }) => ({
    what: `${quoted(pieceId)}: ${wanted} gebraucht, aber ${placed} gelegt und ${unplaced} als übrig genannt.`,
    remedy: REDO,
  }),
  "plan-pin-moved": (problem) => ({
    what: `${copyOf(problem)} war festgesteckt und liegt nicht mehr, wo es war.`,
    remedy: REDO,
  }),
  "plan-off-pattern": (problem, say) => ({
    what: `${copyOf(problem)} liegt ${problem.axis === "along" ? "längs" : "quer"} ${say(problem.offMm, "fine")} neben dem Muster${problem.other === undefined ? "" : `, anders als ${copyOf(problem.other)}`}; höchstens ${say(problem.mostMm, "fine")} sind erlaubt.`,
    remedy: "Auf das Muster schieben oder neu auslegen.",
  }),
  "plan-against-pattern": (problem) => ({
    what: `${copyOf(problem)} ist so gedreht, dass das Muster anders läuft als auf ${copyOf(problem.other)}, zu dem es passen soll.`,
    remedy: "Drehen oder neu auslegen.",
  }),
  "plan-pattern-unknown": (problem) => ({
    what: `${copyOf(problem)} soll zum Muster passen, aber wo das Muster auf ${clothOf(problem)} liegt, ist nicht gesagt.`,
    remedy: "Angeben, wo dort die erste Linie liegt, oder das Teil auf anderen Stoff legen.",
  }),
  "plan-two-ways": (problem) => ({
    what: `${copyOf(problem)} liegt andersherum als ${copyOf(problem.other)}; auf diesem Stoff liegen alle Teile in einer Richtung.`,
    remedy: "Um eine halbe Drehung wenden oder neu legen lassen.",
  }),
  "plan-bag-apart": (problem) => ({
    what: `${copyOf(problem)} und ${copyOf(problem.other)} gehören zu Tasche ${problem.bag} und liegen auf zwei Stücken Stoff, deren Farbton verschieden sein kann.`,
    remedy: MOVE,
  }),
  "plan-bag-scattered": (problem, say) => ({
    what: `Die Teile von Tasche ${problem.bag}, von ${copyOf(problem.other)} bis ${copyOf(problem)}, liegen auf ${say(problem.lengthMm)} der Rolle verteilt; für einen Farbton sollen sie innerhalb von ${say(problem.mostMm)} liegen.`,
    remedy: MOVE,
  }),
  "plan-layers-miscounted": ({ pieceId, hand, wanted, given }) => ({
    what: `${quoted(pieceId)}, ${hand === "mirrored" ? "gespiegelt" : "wie gezeichnet"}: ${wanted} gebraucht; alle Lagen zusammen geben ${given}.`,
    remedy: REDO,
  }),
  "plan-hands-untrue": ({ pieceId }) => ({
    what: `${quoted(pieceId)} soll Teile geben, die so gelegte Lagen nicht geben.`,
    remedy: REDO,
  }),
  "plan-off-fold": (problem) => ({
    what: `${copyOf(problem)} ist ein halbes Teil, und seine Bruchkante liegt nicht am Bruch des Stoffs.`,
    remedy: "An den Bruch schieben oder neu legen lassen.",
  }),
  "plan-length-untrue": ({ stockId, toldMm, measuredMm }, say) => ({
    what: `Der Plan sagt, dass ${say(toldMm, "fine")} von ${quoted(stockId)} gebraucht werden; die Teile brauchen ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "plan-bound-untrue": ({ stockId, boundMm, measuredMm }, say) => ({
    what: `Der Plan sagt, dass ${quoted(stockId)} nicht kürzer als ${say(boundMm, "fine")} geschnitten werden kann; die Teile brauchen ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "piece-too-long-for-width": ({ pieceId, count, neededWidthMm, widestMm, fitsTurned }, say) => ({
    what: `${times(pieceId, count)} lässt sich nicht schneiden: in diesem Fadenlauf braucht es ${say(neededWidthMm, "fine")} quer, und die breiteste Rolle hat ${say(widestMm, "fine")}.`,
    remedy: fitsTurned
      ? "Lassen Sie es in der anderen geraden Richtung liegen, oder nehmen Sie eine breitere Rolle."
      : "Nehmen Sie eine breitere Rolle, oder machen Sie das Teil kürzer oder aus zwei Teilen.",
  }),
  "piece-too-large-for-stock": ({ pieceId, count, alongMm, acrossMm }, say) => ({
    what: `${times(pieceId, count)} lässt sich nicht schneiden: ${say(alongMm, "fine")} längs und ${say(acrossMm, "fine")} quer sind mehr, als irgendein vorhandener Stoff hat.`,
    remedy:
      "Fügen Sie ein größeres Stück Stoff oder eine Rolle hinzu, oder machen Sie das Teil kleiner oder aus zwei Teilen.",
  }),
  "piece-stock-used-up": ({ pieceId, count, moreLengthMm }, say) => ({
    what: `${times(pieceId, count)} passt nicht: Der Stoff im Bestand ist aufgebraucht.`,
    remedy:
      moreLengthMm === null
        ? "Fügen Sie Stoff hinzu, oder machen Sie weniger Taschen."
        : `${say(Math.ceil(moreLengthMm), "fine")} mehr von der Rolle nehmen alles auf, was übrig blieb.`,
  }),
  "piece-no-room-on-pattern": ({ pieceId, count, neededWidthMm, widestMm }, say) => ({
    what: `${times(pieceId, count)} lässt sich nicht schneiden: Keine Linie des Musters, auf der es liegen soll, lässt ihm Platz zwischen den Rändern. Auf der ersten, die es tut, muss die Rolle zwischen den Webkanten ${say(neededWidthMm, "fine")} breit sein, und die breiteste hat ${say(widestMm, "fine")}.`,
    remedy:
      "Nehmen Sie eine breitere Rolle, lassen Sie das Teil frei vom Muster liegen, oder legen Sie es auf eine andere Stelle des Musters.",
  }),
  "piece-band-too-short": ({ pieceId, count, bandMm, neededMm }, say) => ({
    what: `${times(pieceId, count)} lässt sich nicht zuschneiden: Die Teile einer Tasche passen nicht auf ${say(bandMm)} der Rolle, die sie in einem Farbton halten sollen.`,
    remedy:
      neededMm === null
        ? "Das Stück länger machen oder eine breitere Rolle nehmen."
        : `Ein Stück von ${say(Math.ceil(neededMm))} reicht.`,
  }),
  "piece-no-stock": ({ pieceId, count }) => ({
    what: `${times(pieceId, count)} lässt sich nicht schneiden: vom Material ist kein Stoff da.`,
    remedy: "Geben Sie dem Material eine Rolle, einen Rest oder eine Lederhaut.",
  }),
};
