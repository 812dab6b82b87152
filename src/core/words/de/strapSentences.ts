import type { SentenceTable } from "../../problems/sentence.ts";
import type { StrapProblem } from "../../problems/strapProblems.ts";
import { formatLength } from "../../units/formatLength.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { quoted } from "../quoted.ts";

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
    what: `Material von ${formatLength(thicknessMm, "mm", "de")} Dicke lässt sich nicht als "${construction}" falten.`,
    remedy: `Diese Machart verträgt bis ${formatLength(mostMm, "mm", "de")} je Lage: wählen Sie eine mit weniger Falten, etwa "bonded", schärfen Sie Leder an den Falten, oder nehmen Sie dünneres Material.`,
  }),
  "strap-width-missing": ({ construction }) => ({
    what: `Ein Riemen "${construction}" braucht eine Breite.`,
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
    what: `Ein Riemen "${construction}" hat keinen Platz für ${roleOf(role)}.`,
    remedy: "Lassen Sie es weg, oder wählen Sie eine Machart, die es braucht.",
  }),
  "strap-choice-out-of-range": ({ value, least, most }) => ({
    what: `${value} liegt außerhalb dessen, was sich machen lässt.`,
    remedy: `Nehmen Sie eine Zahl von ${least} bis ${most}.`,
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
  "strap-fold-test-open": ({ construction }) => ({
    what: `Diese Probe von "${construction}" sagt nichts: ihr Fehler ist so groß wie alles, was sein kann. Es wird nichts gespeichert.`,
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
