import type { SentenceTable } from "../../problems/problem.ts";
import type { LengthProblem } from "../../units/lengthProblem.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { quoted } from "../phrase.ts";

const EXAMPLES = 'Zum Beispiel so: "4 7/8 in", "123,8 mm", "12 cm", "1 m 20" oder "1 yd 4 in".';

const percent = (share: number): string => withDecimalSign(`${Number((share * 100).toFixed(2))} %`, "de");

/** Lengths, counts, shares, money and thickness in German. */
export const lengthSentences: SentenceTable<LengthProblem> = {
  "length-unreadable": ({ text }) => ({ what: `${quoted(text)} ist keine Länge.`, remedy: EXAMPLES }),
  "length-ambiguous": ({ text, asDecimal, asThousands }) => ({
    what: `Das Komma in ${quoted(text)} lässt sich auf zwei Arten lesen.`,
    remedy: `Schreiben Sie ${asDecimal} oder ${asThousands}, mit einem Punkt vor den Dezimalen und nichts zwischen den Tausendern.`,
  }),
  "length-not-finite": ({ text }) => ({ what: `${quoted(text)} ist keine Zahl.`, remedy: EXAMPLES }),
  "length-out-of-range": ({ mm, minMm, maxMm }, say) =>
    mm < minMm
      ? {
          what: `Die Länge ${say(mm)} ist zu klein.`,
          remedy: `Geben Sie mindestens ${say(minMm)} an.`,
        }
      : {
          what: `Die Länge ${say(mm)} ist zu groß.`,
          remedy: `Geben Sie höchstens ${say(maxMm)} an und prüfen Sie die Einheit.`,
        },
  "length-unit-unknown": ({ text, unit }) => ({
    what: `Die Einheit ${quoted(unit)} in ${quoted(text)} ist nicht bekannt.`,
    remedy: "Nehmen Sie mm, cm, m, in, ft oder yd.",
  }),
  "length-units-mixed": ({ text, first, second }) => ({
    what: `${quoted(text)} setzt ${second} hinter ${first}.`,
    remedy: "Nach einer Einheit kann nur eine kleinere derselben Art folgen: m cm mm oder yd ft in.",
  }),
  "length-fraction-by-zero": ({ text }) => ({
    what: `Der Bruch in ${quoted(text)} teilt durch null.`,
    remedy: EXAMPLES,
  }),
  "length-fraction-bare": ({ text, unit }) => ({
    what: `Der Bruch ${quoted(text)} hat keine Einheit, und ${unit} schreibt man nicht als Bruch.`,
    remedy: `Schreiben Sie ${quoted(`${text.trim()} in`)} oder die ${unit} als Dezimalzahl.`,
  }),
  "share-unreadable": ({ text }) => ({
    what: `${quoted(text)} ist kein Prozentwert.`,
    remedy: 'Schreiben Sie ihn wie "3 %".',
  }),
  "share-out-of-range": ({ share, min, max, isNumber }) => ({
    what: `${percent(share)} liegt außerhalb dessen, was sein kann.`,
    remedy: `Geben Sie ${percent(min)} bis ${percent(max)} an${isNumber ? "; als Zahl heißt 0.03 drei Prozent" : ""}.`,
  }),
  "count-unreadable": ({ text }) => ({
    what: `${quoted(text)} ist keine ganze Zahl.`,
    remedy: "Schreiben Sie eine Stückzahl wie 2.",
  }),
  "count-out-of-range": ({ count, min, max }) => ({
    what: `Die Zahl ${count} liegt außerhalb dessen, was sein kann.`,
    remedy: `Geben Sie ${min} bis ${max} an.`,
  }),
  "money-unreadable": ({ text }) => ({
    what: `${quoted(text)} ist kein Geldbetrag.`,
    remedy: "Schreiben Sie ihn wie 12,50.",
  }),
  "thickness-range": ({ text, lowMm, highMm }) => ({
    what: `${quoted(text)} nennt einen Bereich: ${withDecimalSign(`${lowMm.toFixed(2)} bis ${highMm.toFixed(2)}`, "de")} mm.`,
    remedy:
      "Messen Sie die Haut dort, wo der Riemen geschnitten wird, und schreiben Sie diese eine Dicke, etwa in mm.",
  }),
  "thickness-in-cloth-ounces": ({ text }) => ({
    what: `${quoted(text)} ist ein Stoffgewicht, keine Dicke.`,
    remedy:
      "Messen Sie einen gefalteten Stapel, teilen Sie durch seine Lagen und schreiben Sie mm. (Nur Leder wird nach Unzen der Dicke verkauft.)",
  }),
};
