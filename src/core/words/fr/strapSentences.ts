import type { SentenceTable } from "../../problems/problem.ts";
import type { StrapProblem } from "../../problems/strapProblems.ts";
import { formatLength } from "../../units/formatLength.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { straps as english } from "../en/straps.ts";
import { type Draft, withEnglish } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";
import { straps as own } from "./straps.ts";

const both = (mm: number): string => `${formatLength(mm, "mm", "fr")} (${formatLength(mm, "in/16", "fr")})`;
const straps = withEnglish(own, english);
const decimal = (text: string): string => withDecimalSign(text, "fr");

const CORES = { cord: "ce cordon", webbing: "cette sangle tissée" } as const;
const OTHER_CORES = { cord: "un autre cordon", webbing: "une autre sangle tissée" } as const;
const HARDWARE = { ring: "L’anneau", slider: "Le coulant", clasp: "Le fermoir" } as const;

const ROLES: Readonly<Record<string, string>> = {
  outer: "l’extérieur",
  facing: "la parementure",
  interfacing: "l’entoilage",
  padding: "le rembourrage",
  webbing: "la sangle tissée",
  cord: "le cordon",
};
const roleOf = (role: string): string => ROLES[role] ?? role;

const named = (table: object, id: string): string => (table as Readonly<Record<string, string>>)[id] ?? id;

/** A construction by its name, as a maker knows it. */
const nameOf = (id: string): string =>
  (straps.constructions as Readonly<Record<string, { readonly name: string }>>)[id]?.name ?? id;

/** More constructions than this are not listed. */
const MOST_NAMED = 3;

/** Straps in French. */
export const strapSentences: Draft<SentenceTable<StrapProblem>> = {
  "strap-too-narrow": ({ widthMm, leastMm }) => ({
    what: `Une sangle large de ${both(widthMm)} est trop étroite pour ses plis.`,
    remedy: `Faites-la large d’au moins ${both(leastMm)}, ou choisissez moins de couches ou une matière plus fine.`,
  }),
  "strap-strip-too-narrow": ({ cutMm, leastMm }) => ({
    what: `Une bande coupée large de ${both(cutMm)} est trop étroite pour se plier ainsi.`,
    remedy: `Coupez-la large d’au moins ${both(leastMm)}, ou choisissez moins de couches ou une matière plus fine.`,
  }),
  "strap-too-thick": ({ construction, thicknessMm, mostMm }) => ({
    what: `Une couche de ${formatLength(thicknessMm, "mm", "fr")} est trop épaisse pour cette façon (${nameOf(construction)}).`,
    remedy: `Elle prend jusqu’à ${formatLength(mostMm, "mm", "fr")}\u00a0: choisissez-en une avec moins de plis (${nameOf("bonded")}), parez le cuir aux plis, ou prenez une matière plus fine.`,
  }),
  "strap-width-missing": ({ construction }) => ({
    what: `Cette façon (${nameOf(construction)}) demande une largeur.`,
    remedy: "Donnez la largeur finie, ou la largeur de coupe de la bande.",
  }),
  "strap-cord-missing": () => ({
    what: "Une anse à cordon demande le diamètre de son cordon.",
    remedy: "Donnez le diamètre du cordon\u00a0; la largeur de l’anse en découle.",
  }),
  "strap-width-conflict": ({ core, widthMm, followsMm }) => ({
    what: `Avec ${CORES[core]}, la sangle vient large de ${both(followsMm)}, et non de ${both(widthMm)}.`,
    remedy: `Ôtez la largeur, ou choisissez ${OTHER_CORES[core]}.`,
  }),
  "strap-too-short": ({ lengthMm, leastMm }) => ({
    what: `Une longueur de ${both(lengthMm)} passe tout entière dans les bouts de la sangle.`,
    remedy: `Faites-la plus longue que ${both(leastMm)}, ou choisissez d’autres bouts.`,
  }),
  "strap-hardware-narrow": ({ kind, innerMm, widthMm, leastMm }) => ({
    what: `${HARDWARE[kind]} est large de ${both(innerMm)} à l’intérieur, trop étroit pour une sangle de ${both(widthMm)}.`,
    remedy: `Prenez-en un d’au moins ${both(leastMm)} à l’intérieur, ou une sangle plus étroite.`,
  }),
  "strap-material-missing": ({ role, id }) => ({
    what:
      id === null
        ? `Il manque à la sangle une matière pour ${roleOf(role)}.`
        : `Il n’y a pas de matière ${quoted(id)} pour ${roleOf(role)}.`,
    remedy: "Nommez l’une des matières du projet.",
  }),
  "strap-role-unused": ({ role, construction }) => ({
    what: `Cette façon (${nameOf(construction)}) n’a pas besoin de ceci\u00a0: ${roleOf(role)}.`,
    remedy: `Ôtez ${roleOf(role)}, ou choisissez une façon qui s’en sert.`,
  }),
  "strap-choice-out-of-range": ({ value, least, most }) => ({
    what: `${decimal(String(value))} est hors limites.`,
    remedy: `Prenez un nombre de ${decimal(String(least))} à ${decimal(String(most))}.`,
  }),
  "strap-turned-edge-wide": ({ allowanceMm, mostMm, widthMm }) => ({
    what: `Un bord rentré de ${both(allowanceMm)} n’a pas de place dans une sangle large de ${both(widthMm)}.`,
    remedy: `Rentrez au plus ${both(mostMm)}, ou cousez-le plus large et recoupez-le à cela.`,
  }),
  "strap-stitch-off": ({ fromEdgeMm, mostMm, widthMm }) => ({
    what: `Des piqûres à ${both(fromEdgeMm)} de chaque bord se touchent ou se croisent sur une sangle large de ${both(widthMm)}.`,
    remedy: `Piquez à ${both(mostMm)} du bord au plus.`,
  }),
  "strap-short-part-short": ({ lengthMm, leastMm }) => ({
    what: `La partie courte, ${both(lengthMm)}, passe tout entière dans ce que ses bouts replient.`,
    remedy: `Coupez-la longue de ${both(leastMm)} ou plus.`,
  }),
  "strap-choice-unused": ({ choice, construction, heededBy }) => {
    const needs = named(straps.choiceNeeds, choice);
    const others = heededBy.length <= MOST_NAMED ? `\u00a0: ${heededBy.map(nameOf).join("\u00a0; ")}` : "";
    return {
      what: `Cette façon (${nameOf(construction)}) n’a que faire de ceci\u00a0: ${named(straps.choices, choice)}.`,
      remedy:
        needs === choice
          ? `Ôtez-le, ou choisissez une autre façon${others}.`
          : `Ôtez-le\u00a0; il faut pour cela ${needs}.`,
    };
  },
  "strap-fold-test-open": ({ construction }) => ({
    what: `Cet essai (${nameOf(construction)}) ne dit rien\u00a0: son erreur est aussi large que tout ce qui est possible. Rien n’est gardé.`,
    remedy: "Lisez au pied à coulisse et donnez --reading-error, ou laissez à un tissu fin ses valeurs d’usage.",
  }),
  "strap-on-bias": () => ({
    what: "Une sangle ne peut pas se couper dans le biais\u00a0: elle s’étirerait et se tordrait.",
    remedy: 'Choisissez "lengthwise", "crosswise" ou "either".',
  }),
  "strap-fold-test-unreadable": ({ neutral, clearance }) => ({
    what: `Ces mesures donnent K ${decimal(neutral.toFixed(2))} et un écart de ${decimal(clearance.toFixed(2))}, ce que ne fait aucune matière (K est entre 0 et 1).`,
    remedy:
      "Mesurez l’épaisseur de la pile pliée, puis pliez et mesurez encore\u00a0; un millimètre mal lu suffit à cela.",
  }),
};
