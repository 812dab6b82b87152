import type { SentenceTable } from "../../problems/problem.ts";
import type { LengthProblem } from "../../units/lengthProblem.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

const EXAMPLES = 'Écrivez-la comme "4 7/8 in", "123,8 mm", "12 cm", "1 m 20" ou "1 yd 4 in".';

const percent = (share: number): string => withDecimalSign(`${Number((share * 100).toFixed(2))} %`, "fr");

/** Lengths, counts, shares, money and thickness in French. */
export const lengthSentences: Draft<SentenceTable<LengthProblem>> = {
  "length-unreadable": ({ text }) => ({ what: `${quoted(text)} n’est pas une longueur.`, remedy: EXAMPLES }),
  "length-ambiguous": ({ text, asDecimal, asThousands }) => ({
    what: `La virgule dans ${quoted(text)} se lit de deux façons.`,
    remedy: `Écrivez ${asDecimal} ou ${asThousands}, avec un point pour les décimales et rien entre les milliers.`,
  }),
  "length-not-finite": ({ text }) => ({ what: `${quoted(text)} n’est pas un nombre.`, remedy: EXAMPLES }),
  "length-out-of-range": ({ mm, minMm, maxMm }, say) =>
    mm < minMm
      ? {
          what: `La longueur ${say(mm)} est trop petite.`,
          remedy: `Donnez au moins ${say(minMm)}.`,
        }
      : {
          what: `La longueur ${say(mm)} est trop grande.`,
          remedy: `Donnez au plus ${say(maxMm)}, et vérifiez l’unité.`,
        },
  "length-unit-unknown": ({ text, unit }) => ({
    what: `L’unité ${quoted(unit)} dans ${quoted(text)} n’est pas connue.`,
    remedy: "Prenez mm, cm, m, in, ft ou yd.",
  }),
  "length-units-mixed": ({ text, first, second }) => ({
    what: `${quoted(text)} met ${second} après ${first}.`,
    remedy: "Après une unité ne peut venir qu’une plus petite de la même sorte\u00a0: m cm mm, ou yd ft in.",
  }),
  "length-fraction-by-zero": ({ text }) => ({
    what: `La fraction dans ${quoted(text)} divise par zéro.`,
    remedy: EXAMPLES,
  }),
  "length-fraction-bare": ({ text, unit }) => ({
    what: `La fraction ${quoted(text)} n’a pas d’unité, et les ${unit} ne s’écrivent pas en fractions.`,
    remedy: `Écrivez ${quoted(`${text.trim()} in`)}, ou les ${unit} en nombre décimal.`,
  }),
  "share-unreadable": ({ text }) => ({
    what: `${quoted(text)} n’est pas un pourcentage.`,
    remedy: 'Écrivez-le comme "3 %".',
  }),
  "share-out-of-range": ({ share, min, max, isNumber }) => ({
    what: `${percent(share)} est hors limites.`,
    remedy: `Donnez de ${percent(min)} à ${percent(max)}${isNumber ? "\u00a0; en nombre, 0.03 veut dire 3 %" : ""}.`,
  }),
  "count-unreadable": ({ text }) => ({
    what: `${quoted(text)} n’est pas un nombre entier.`,
    remedy: "Écrivez un nombre de pièces comme 2.",
  }),
  "count-out-of-range": ({ count, min, max }) => ({
    what: `Le nombre ${count} est hors limites.`,
    remedy: `Donnez de ${min} à ${max}.`,
  }),
  "money-unreadable": ({ text }) => ({
    what: `${quoted(text)} n’est pas une somme d’argent.`,
    remedy: "Écrivez-la comme 12,50.",
  }),
  "thickness-range": ({ text, lowMm, highMm }) => ({
    what: `${quoted(text)} dit une fourchette\u00a0: ${withDecimalSign(`${lowMm.toFixed(2)} à ${highMm.toFixed(2)}`, "fr")} mm.`,
    remedy: "Mesurez la peau là où la sangle sera coupée et écrivez cette seule épaisseur, par exemple en mm.",
  }),
  "thickness-in-cloth-ounces": ({ text }) => ({
    what: `${quoted(text)} est un poids de tissu, pas une épaisseur.`,
    remedy:
      "Mesurez une pile pliée, divisez par ses couches, et écrivez des mm. (Seul le cuir se vend en onces d’épaisseur.)",
  }),
};
