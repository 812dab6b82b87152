import type { MatchProblem } from "../../problems/matchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

/** What is to meet on a cloth's pattern, in French. */
export const matchSentences: Draft<SentenceTable<MatchProblem>> = {
  "match-no-common-cloth": ({ first, second }) => ({
    what: `${quoted(first)} et ${quoted(second)} ne se coupent pas dans le même tissu, le motif ne peut donc pas passer de l’une à l’autre.`,
    remedy: "Coupez les deux dans le même tissu, ou ôtez le raccord.",
  }),
  "match-aslant": ({ first, second, byDeg }) => ({
    what: `Les bords de ${quoted(first)} et de ${quoted(second)} se rejoignent de biais, à ${Math.round(byDeg)}°\u00a0: une rayure y tourne.`,
    remedy: "Raccordez des bords en long ou en travers des deux pièces, ou ôtez le raccord.",
  }),
  "match-contradicts": ({ part, offMm, mostMm }, say) => ({
    what: `Le motif ne peut pas se raccorder ici\u00a0: sur ${quoted(part)}, d’autres raccords le mettent ${say(offMm)} plus loin, et ${say(mostMm)} sont admis.`,
    remedy: "Ôtez l’un des raccords, passez une taille à des rapports entiers, ou admettez plus.",
  }),
  "match-turn-conflict": ({ part, isMirrored }) => ({
    what: `${isMirrored ? "L’image en miroir de " : ""}${quoted(part)} ne peut pas se placer de sorte que le motif se raccorde\u00a0: son droit-fil, le poil ou le haut du motif interdit tous ces sens.`,
    remedy: isMirrored
      ? "Dites que le motif est symétrique s’il l’est, raccordez-le en long seulement, ou ôtez le raccord."
      : "Donnez le même droit-fil aux pièces raccordées, ou ôtez le raccord.",
  }),
  "unknown-part": ({ id, nearest, known }) => ({
    what: `Il n’y a ni pièce ni sangle ${quoted(id)}.${nearest === null ? "" : ` Vouliez-vous dire ${quoted(nearest)}\u00a0?`}`,
    remedy: `Nommez l’une de celles-ci\u00a0: ${known.slice(0, 12).map(quoted).join(", ")}.`,
  }),
  "match-on-layers": ({ materialId }) => ({
    what: `${quoted(materialId)} est plié ou posé endroit contre endroit\u00a0: dans les couches retournées son motif va dans l’autre sens en travers, il ne se raccorde donc qu’en long.`,
    remedy: "Raccordez en long seulement, posez toutes les couches l’endroit dessus, ou coupez en une couche.",
  }),
};
