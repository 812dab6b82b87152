import type { PanelProblem } from "../../problems/panelProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { SayLength } from "../../units/sayLength.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string =>
  nearest === null ? "" : ` Vouliez-vous dire ${quoted(nearest)}\u00a0?`;
/** Edges are counted from 1 for people; in the file they have names, or numbers from 0. */
const edgeName = (edge: number | string): string =>
  typeof edge === "number" ? `Le bord ${edge + 1} (dans le fichier\u00a0: ${edge})` : `Le bord ${edge}`;

function fitting(leastMm: number | null, mostMm: number | null, say: SayLength): string {
  if (leastMm === null) return mostMm === null ? "Changez une taille" : `Donnez au plus ${say(mostMm)}`;
  return mostMm === null ? `Donnez au moins ${say(leastMm)}` : `Donnez de ${say(leastMm)} à ${say(mostMm)}`;
}

/** Panels in French. */
export const panelSentences: Draft<SentenceTable<PanelProblem>> = {
  "notch-off-edge": ({ atMm, edgeMm }, say) => ({
    what: `Un cran à ${say(atMm)} le long de son bord sort d’un bord long de ${say(edgeMm)}.`,
    remedy: "Mesurez depuis le début du bord, contre les aiguilles d’une montre.",
  }),
  "no-such-edge": ({ edge, edges }) => ({
    what: `Il n’y a pas de bord ${edge + 1} (dans le fichier\u00a0: ${edge}).`,
    remedy: `Le contour a les bords 1 à ${edges}\u00a0; le bord 1 part du premier point, et c’est 0 dans le fichier.`,
  }),
  "no-such-edge-name": ({ name, nearest, known }) => ({
    what: `Cette forme n’a pas de bord ${quoted(name)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Ses bords n’ont pas de noms\u00a0: donnez le numéro, 0 pour le bord qui part du premier point."
        : `Ses bords sont ${listed(known)}.`,
  }),
  "fold-edge-not-straight": ({ edge }) => ({
    what: `${edgeName(edge)} ne peut pas être sur la pliure.`,
    remedy: "Choisissez un bord droit qui laisse toute la pièce d’un seul côté.",
  }),
  "size-does-not-fit": ({ sizeMm, leastMm, mostMm }, say) => ({
    what: `Une taille de ${say(sizeMm)} ne va pas avec les autres tailles de cette forme.`,
    remedy: `${fitting(leastMm, mostMm, say)}, ou changez une autre taille.`,
  }),
  "unknown-measure": ({ of, name, nearest, known }) => ({
    what:
      of === null
        ? `Le sac n’a pas de mesure ${quoted(name)}.${meant(nearest)}`
        : `Rien ne s’appelle ${quoted(name)} à mesurer sur ${quoted(of)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Donnez plutôt une longueur."
        : `Suivez l’une de celles-ci\u00a0: ${listed(known)}, ou donnez une longueur.`,
  }),
  "measures-in-circle": ({ names }) => ({
    what: `Ces tailles se suivent en rond\u00a0: ${listed(names)}.`,
    remedy: "Donnez une longueur à l’une d’elles.",
  }),
  "edge-start-unusable": ({ start, points }) => ({
    what: `Aucun bord ne peut se nommer depuis le coin ${start}.`,
    remedy: `Nommez les bords dans l’ordre, chacun depuis un autre coin, de 0 à ${points - 1}.`,
  }),
  "allowance-eats-panel": ({ allowanceMm }, say) => ({
    what: `Une marge de couture de ${say(allowanceMm)} à l’intérieur de la ligne de coupe ne laisse rien de cette pièce.`,
    remedy: "Agrandissez la pièce ou réduisez la marge, ou dites que la ligne de couture est dessinée.",
  }),
  "inset-eats-panel": ({ insetMm }, say) => ({
    what: `Un retrait de ${say(insetMm)} ne laisse rien de cette pièce.`,
    remedy: "Donnez un retrait plus petit.",
  }),
  "unknown-panel": ({ id, nearest, known }) => ({
    what: `Il n’y a pas de pièce ${quoted(id)}.${meant(nearest)}`,
    remedy: `Les pièces sont ${listed(known)}.`,
  }),
};
