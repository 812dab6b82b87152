import type { PanelProblem } from "../../problems/panelProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { SayLength } from "../../units/sayLength.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string => (nearest === null ? "" : ` Meinen Sie ${quoted(nearest)}?`);
/** Edges are counted from 1 for people; in the file they have names, or numbers from 0. */
const edgeName = (edge: number | string): string =>
  typeof edge === "number" ? `Kante ${edge + 1} (in der Datei: ${edge})` : `Kante ${edge}`;

function fitting(leastMm: number | null, mostMm: number | null, say: SayLength): string {
  if (leastMm === null) return mostMm === null ? "Ändern Sie ein Maß" : `Geben Sie höchstens ${say(mostMm)} an`;
  return mostMm === null
    ? `Geben Sie mindestens ${say(leastMm)} an`
    : `Geben Sie ${say(leastMm)} bis ${say(mostMm)} an`;
}

/** Panels in German. */
export const panelSentences: SentenceTable<PanelProblem> = {
  "notch-off-edge": ({ atMm, edgeMm }, say) => ({
    what: `Ein Knips ${say(atMm)} vom Anfang seiner Kante liegt außerhalb einer Kante von ${say(edgeMm)}.`,
    remedy: "Messen Sie vom Anfang der Kante, gegen den Uhrzeigersinn.",
  }),
  "no-such-edge": ({ edge, edges }) => ({
    what: `Es gibt keine Kante ${edge + 1} (in der Datei: ${edge}).`,
    remedy: `Der Umriss hat die Kanten 1 bis ${edges}; Kante 1 beginnt am ersten Punkt und heißt in der Datei 0.`,
  }),
  "no-such-edge-name": ({ name, nearest, known }) => ({
    what: `Diese Form hat keine Kante ${quoted(name)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Ihre Kanten haben keine Namen: Geben Sie die Nummer an, 0 für die Kante am ersten Punkt."
        : `Ihre Kanten sind ${listed(known)}.`,
  }),
  "fold-edge-not-straight": ({ edge }) => ({
    what: `${edgeName(edge)} kann nicht am Stoffbruch liegen.`,
    remedy: "Wählen Sie eine gerade Kante, die das ganze Teil auf einer Seite lässt.",
  }),
  "size-does-not-fit": ({ sizeMm, leastMm, mostMm }, say) => ({
    what: `Ein Maß von ${say(sizeMm)} passt nicht zu den anderen Maßen dieser Form.`,
    remedy: `${fitting(leastMm, mostMm, say)}, oder ändern Sie ein anderes Maß.`,
  }),
  "unknown-measure": ({ of, name, nearest, known }) => ({
    what:
      of === null
        ? `Die Tasche hat kein Maß ${quoted(name)}.${meant(nearest)}`
        : `An ${quoted(of)} gibt es nichts zu messen, das ${quoted(name)} heißt.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Geben Sie stattdessen eine Länge an."
        : `Nehmen Sie eines von ${listed(known)}, oder geben Sie eine Länge an.`,
  }),
  "measures-in-circle": ({ names }) => ({
    what: `Diese Maße richten sich im Kreis nacheinander: ${listed(names)}.`,
    remedy: "Geben Sie einem davon eine Länge.",
  }),
  "edge-start-unusable": ({ start, points }) => ({
    what: `Von Ecke ${start} aus lässt sich keine Kante benennen.`,
    remedy: `Benennen Sie Kanten der Reihe nach, jede von einer anderen Ecke aus, 0 bis ${points - 1}.`,
  }),
  "allowance-eats-panel": ({ allowanceMm }, say) => ({
    what: `Eine Nahtzugabe von ${say(allowanceMm)} innerhalb der Schnittlinie lässt von diesem Teil nichts übrig.`,
    remedy:
      "Machen Sie das Teil größer oder die Zugabe kleiner, oder geben Sie an, dass die Nahtlinie gezeichnet ist.",
  }),
  "inset-eats-panel": ({ insetMm }, say) => ({
    what: `Ein Rückstand von ${say(insetMm)} lässt von diesem Teil nichts übrig.`,
    remedy: "Geben Sie einen kleineren Rückstand an.",
  }),
  "unknown-panel": ({ id, nearest, known }) => ({
    what: `Es gibt kein Teil ${quoted(id)}.${meant(nearest)}`,
    remedy: `Die Teile sind ${listed(known)}.`,
  }),
};
