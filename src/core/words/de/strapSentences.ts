import type { SentenceTable } from "../../problems/problem.ts";
import type { StrapProblem } from "../../problems/strapProblems.ts";
import { formatLength } from "../../units/formatLength.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { quoted } from "../phrase.ts";
import { straps } from "./straps.ts";

const both = (mm: number): string => `${formatLength(mm, "mm", "de")} (${formatLength(mm, "in/16", "de")})`;

const CORES = { cord: "dieser Kordel", webbing: "diesem Gurtband" } as const;
const OTHER_CORES = { cord: "eine andere Kordel", webbing: "ein anderes Gurtband" } as const;
const HARDWARE = { ring: "Der Ring", slider: "Der Schieber", clasp: "Die Schließe" } as const;

const ROLES: Readonly<Record<string, string>> = {
  outer: "die Außenseite",
  facing: "die Gegenseite",
  interfacing: "die Einlage",
  padding: "das Polster",
  webbing: "das Gurtband",
  cord: "die Kordel",
};
const roleOf = (role: string): string => ROLES[role] ?? role;

const named = (table: object, id: string): string => (table as Readonly<Record<string, string>>)[id] ?? id;

/** A construction by its name, as a maker knows it. */
const nameOf = (id: string): string =>
  (straps.constructions as Readonly<Record<string, { readonly name: string }>>)[id]?.name ?? id;

/** More constructions than this are not listed. */
const MOST_NAMED = 3;

const decimal = (value: number): string => withDecimalSign(String(value), "de");

/** Straps in German. */
export const strapSentences: SentenceTable<StrapProblem> = {
  "strap-too-narrow": ({ widthMm, leastMm }) => ({
    what: `Ein Riemen von ${both(widthMm)} Breite ist für seine Falten zu schmal.`,
    remedy: `Machen Sie ihn mindestens ${both(leastMm)} breit, oder wählen Sie weniger Lagen oder dünneres Material.`,
  }),
  "strap-strip-too-narrow": ({ cutMm, leastMm }) => ({
    what: `Ein Streifen von ${both(cutMm)} Schnittbreite ist zu schmal, um so gefaltet zu werden.`,
    remedy: `Schneiden Sie ihn mindestens ${both(leastMm)} breit, oder wählen Sie weniger Lagen oder dünneres Material.`,
  }),
  "strap-too-thick": ({ construction, thicknessMm, mostMm }) => ({
    what: `Eine Lage von ${formatLength(thicknessMm, "mm", "de")} ist für diese Machart zu dick (${nameOf(construction)}).`,
    remedy: `Sie verträgt bis ${formatLength(mostMm, "mm", "de")}: wählen Sie eine mit weniger Falten, etwa ${nameOf("bonded")}, schärfen Sie Leder an den Falten, oder nehmen Sie dünneres Material.`,
  }),
  "strap-width-missing": ({ construction }) => ({
    what: `Diese Machart (${nameOf(construction)}) braucht eine Breite.`,
    remedy: "Geben Sie die fertige Breite an oder die Schnittbreite des Streifens.",
  }),
  "strap-cord-missing": () => ({
    what: "Ein Kordelhenkel braucht den Durchmesser seiner Kordel.",
    remedy: "Geben Sie den Durchmesser der Kordel an; die Breite des Henkels folgt daraus.",
  }),
  "strap-width-conflict": ({ core, widthMm, followsMm }) => ({
    what: `Mit ${CORES[core]} wird der Riemen ${both(followsMm)} breit, nicht ${both(widthMm)}.`,
    remedy: `Lassen Sie die Breite weg, oder wählen Sie ${OTHER_CORES[core]}.`,
  }),
  "strap-too-short": ({ lengthMm, leastMm }) => ({
    what: `Eine Länge von ${both(lengthMm)} geht ganz in den Enden des Riemens auf.`,
    remedy: `Machen Sie ihn länger als ${both(leastMm)}, oder wählen Sie andere Enden.`,
  }),
  "strap-hardware-narrow": ({ kind, innerMm, widthMm, leastMm }) => ({
    what: `${HARDWARE[kind]} ist innen ${both(innerMm)} breit, zu schmal für einen Riemen von ${both(widthMm)}.`,
    remedy: `Nehmen Sie ein Teil mit mindestens ${both(leastMm)} innen oder einen schmaleren Riemen.`,
  }),
  "strap-material-missing": ({ role, id }) => ({
    what:
      id === null
        ? `Dem Riemen fehlt ein Material für ${roleOf(role)}.`
        : `Es gibt kein Material ${quoted(id)} für ${roleOf(role)}.`,
    remedy: "Nennen Sie eines der Materialien des Projekts.",
  }),
  "strap-role-unused": ({ role, construction }) => ({
    what: `Diese Machart (${nameOf(construction)}) hat keinen Platz für ${roleOf(role)}.`,
    remedy: "Lassen Sie es weg, oder wählen Sie eine Machart, die es braucht.",
  }),
  "strap-choice-out-of-range": ({ value, least, most }) => ({
    what: `${decimal(value)} liegt außerhalb dessen, was sich machen lässt.`,
    remedy: `Nehmen Sie eine Zahl von ${decimal(least)} bis ${decimal(most)}.`,
  }),
  "strap-turned-edge-wide": ({ allowanceMm, mostMm, widthMm }) => ({
    what: `Ein Einschlag von ${both(allowanceMm)} hat in einem Riemen von ${both(widthMm)} Breite keinen Platz.`,
    remedy: `Schlagen Sie höchstens ${both(mostMm)} ein, oder nähen Sie breiter und schneiden darauf zurück.`,
  }),
  "strap-stitch-off": ({ fromEdgeMm, mostMm, widthMm }) => ({
    what: `Nähte ${both(fromEdgeMm)} von jeder Kante treffen oder kreuzen sich auf ${both(widthMm)} Breite.`,
    remedy: `Steppen Sie höchstens ${both(mostMm)} von der Kante.`,
  }),
  "strap-short-part-short": ({ lengthMm, leastMm }) => ({
    what: `Das kurze Teil von ${both(lengthMm)} geht ganz in seinen umgelegten Enden auf.`,
    remedy: `Schneiden Sie es ${both(leastMm)} lang oder länger.`,
  }),
  "strap-choice-unused": ({ choice, construction, heededBy }) => {
    const needs = named(straps.choiceNeeds, choice);
    const others = heededBy.length <= MOST_NAMED ? `: ${heededBy.map(nameOf).join("; ")}` : "";
    return {
      what: `Diese Machart (${nameOf(construction)}) hat keine Verwendung für ${named(straps.choices, choice)}.`,
      remedy:
        needs === choice
          ? `Lassen Sie es weg, oder wählen Sie eine andere Machart${others}.`
          : `Lassen Sie es weg; es braucht ${needs}.`,
    };
  },
  "strap-fold-test-open": ({ construction }) => ({
    what: `Diese Probe (${nameOf(construction)}) sagt nichts: ihr Fehler ist so groß wie alles, was sein kann. Es wird nichts gespeichert.`,
    remedy:
      "Messen Sie mit der Schieblehre und geben Sie --reading-error an, oder lassen Sie dünnem Stoff seine üblichen Werte.",
  }),
  "strap-on-bias": () => ({
    what: "Ein Riemen kann nicht schräg zum Fadenlauf geschnitten werden: er würde sich unter Zug dehnen und verdrehen.",
    remedy: 'Wählen Sie "lengthwise", "crosswise" oder "either".',
  }),
  "strap-fold-test-unreadable": ({ neutral, clearance }) => ({
    what: `Diese Messwerte ergeben K ${withDecimalSign(neutral.toFixed(2), "de")} und Abstand ${withDecimalSign(clearance.toFixed(2), "de")}, was kein Material tut (K liegt zwischen 0 und 1).`,
    remedy:
      "Messen Sie die Dicke des gefalteten Stapels, falten und messen Sie dann noch einmal; ein falsch abgelesener Millimeter genügt.",
  }),
};
