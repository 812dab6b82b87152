import type { CopyName, LayProblemFinding } from "../../problems/layProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

const copyOf = ({ pieceId, copy, name }: CopyName): string => name ?? `${quoted(pieceId)} n° ${copy + 1}`;
const clothOf = ({ stockId, stockName }: { readonly stockId: string; readonly stockName?: string }): string =>
  quoted(stockName ?? stockId);
const mm2 = (value: number): string => withDecimalSign(`${Number(value.toPrecision(4))} mm²`, "fr");
const times = (pieceId: string, count: number): string =>
  count === 1 ? quoted(pieceId) : `${count} × ${quoted(pieceId)}`;
const REDO = "Refaites le placement\u00a0; ce plan ne doit pas être coupé.";
const MOVE = "Déplacez l’une des deux, ou refaites le placement.";
const IN = "Rentrez-la, ou refaites le placement.";
const OFF = "Éloignez-la, ou refaites le placement.";

/** Lay problems and plans in French. */
export const laySentences: Draft<SentenceTable<LayProblemFinding>> = {
  "plan-unknown-piece": ({ pieceId }) => ({
    what: `Le plan contient une pièce ${quoted(pieceId)} que la liste de coupe ne connaît pas.`,
    remedy: REDO,
  }),
  "plan-unknown-stock": ({ stockId }) => ({
    what: `Le plan utilise ${quoted(stockId)}, qui n’est pas parmi le tissu en stock.`,
    remedy: REDO,
  }),
  "plan-pose-unreadable": (problem) => ({
    what: `La place de ${copyOf(problem)} n’est pas un nombre.`,
    remedy: REDO,
  }),
  "plan-copy-unknown": (problem) => ({
    what: `Le plan contient ${copyOf(problem)}, mais il n’en faut que ${problem.count}.`,
    remedy: REDO,
  }),
  "plan-copy-twice": (problem) => ({ what: `Le plan contient deux fois ${copyOf(problem)}.`, remedy: REDO }),
  "plan-turn-not-allowed": (problem) => ({
    what: `${copyOf(problem)} est tournée de ${problem.turnDeg}°${problem.mirrored ? " et en miroir" : ""}, ce que son droit-fil, son poil ou son endroit interdit.`,
    remedy: "Tournez-la dans un sens permis, ou refaites le placement.",
  }),
  "plan-overlap": (problem) => ({
    what: `${copyOf(problem)} est sur ${copyOf(problem.other)}\u00a0: elles se couvrent de ${mm2(problem.areaMm2)}.`,
    remedy: MOVE,
  }),
  "plan-too-close": (problem, say) => ({
    what: `${copyOf(problem)} et ${copyOf(problem.other)} sont distantes de ${say(problem.distanceMm, "fine")}\u00a0; l’écart de coupe est de ${say(problem.leastMm, "fine")}.`,
    remedy: MOVE,
  }),
  "plan-outside-stock": (problem) => ({
    what: `${copyOf(problem)} sort de ${clothOf(problem)} de ${mm2(problem.areaMm2)}.`,
    remedy: IN,
  }),
  "plan-too-near-edge": (problem, say) => ({
    what: `${copyOf(problem)} est à ${say(problem.distanceMm, "fine")} du bord de ${clothOf(problem)}\u00a0; la marge au bord est de ${say(problem.leastMm, "fine")}.`,
    remedy: IN,
  }),
  "plan-on-flaw": (problem) => ({
    what: `${copyOf(problem)} est sur le défaut ${problem.flaw + 1} de ${clothOf(problem)}, de ${mm2(problem.areaMm2)}.`,
    remedy: OFF,
  }),
  "plan-too-near-flaw": (problem, say) => ({
    what: `${copyOf(problem)} est à ${say(problem.distanceMm, "fine")} du défaut ${problem.flaw + 1} de ${clothOf(problem)}\u00a0; l’écart de coupe est de ${say(problem.leastMm, "fine")}.`,
    remedy: OFF,
  }),
  "plan-miscounted": ({ pieceId, wanted, placed, unplaced }) => ({
    what: `${quoted(pieceId)}\u00a0: il en faut ${wanted}, mais ${placed} sont placées et ${unplaced} dites laissées de côté.`,
    remedy: REDO,
  }),
  "plan-pin-moved": (problem) => ({
    what: `${copyOf(problem)} était épinglée et a bougé.`,
    remedy: REDO,
  }),
  "plan-off-pattern": (problem, say) => ({
    what: `${copyOf(problem)} est à ${say(problem.offMm, "fine")} à côté du motif, ${problem.axis === "along" ? "en long" : "en travers"}${problem.other === undefined ? "" : `, autrement que ${copyOf(problem.other)}`}\u00a0; ${say(problem.mostMm, "fine")} au plus sont admis.`,
    remedy: "Mettez-la sur le motif, ou refaites le placement.",
  }),
  "plan-against-pattern": (problem) => ({
    what: `${copyOf(problem)} est tournée de sorte que le motif va autrement que sur ${copyOf(problem.other)}, qu’elle doit rejoindre.`,
    remedy: "Tournez-la, ou refaites le placement.",
  }),
  "plan-pattern-unknown": (problem) => ({
    what: `${copyOf(problem)} se raccorde sur le motif, mais personne n’a dit où est le motif sur ${clothOf(problem)}.`,
    remedy: "Dites où y est la première ligne, ou placez la pièce sur un autre tissu.",
  }),
  "plan-two-ways": (problem) => ({
    what: `${copyOf(problem)} est dans l’autre sens que ${copyOf(problem.other)}\u00a0; sur ce tissu, toutes les pièces vont dans un sens.`,
    remedy: "Tournez-la d’un demi-tour, ou refaites le placement.",
  }),
  "plan-bag-apart": (problem) => ({
    what: `${copyOf(problem)} et ${copyOf(problem.other)} sont du sac ${problem.bag} et se trouvent sur deux morceaux de tissu, dont la nuance peut différer.`,
    remedy: MOVE,
  }),
  "plan-bag-scattered": (problem, say) => ({
    what: `Les pièces du sac ${problem.bag}, de ${copyOf(problem.other)} à ${copyOf(problem)}, s’étendent sur ${say(problem.lengthMm)} de rouleau\u00a0; pour une même nuance elles doivent tenir sur ${say(problem.mostMm)}.`,
    remedy: MOVE,
  }),
  "plan-layers-miscounted": ({ pieceId, hand, wanted, given }) => ({
    what: `${quoted(pieceId)}, ${hand === "mirrored" ? "en miroir" : "comme dessinée"}\u00a0: il en faut ${wanted}\u00a0; toutes les couches ensemble en donnent ${given}.`,
    remedy: REDO,
  }),
  "plan-hands-untrue": ({ pieceId }) => ({
    what: `${quoted(pieceId)} donnerait des pièces que ces couches, posées ainsi, ne donnent pas.`,
    remedy: REDO,
  }),
  "plan-off-fold": (problem) => ({
    what: `${copyOf(problem)} est une demi-pièce, et son bord de pliure n’est pas sur la pliure du tissu.`,
    remedy: "Mettez-la sur la pliure, ou refaites le placement.",
  }),
  "plan-length-untrue": ({ stockId, toldMm, measuredMm }, say) => ({
    what: `Le plan dit que ${say(toldMm, "fine")} de ${quoted(stockId)} sont pris\u00a0; les pièces prennent ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "plan-bound-untrue": ({ stockId, boundMm, measuredMm }, say) => ({
    what: `Le plan dit que ${quoted(stockId)} ne peut pas se couper plus court que ${say(boundMm, "fine")}\u00a0; les pièces prennent ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "piece-too-long-for-width": ({ pieceId, count, neededWidthMm, widestMm, fitsTurned }, say) => ({
    what: `${times(pieceId, count)}\u00a0: impossible à couper. Dans ce droit-fil il faut ${say(neededWidthMm, "fine")} en travers, et le rouleau le plus large a ${say(widestMm, "fine")}.`,
    remedy: fitsTurned
      ? "Laissez-la se placer dans l’autre sens droit, ou prenez un rouleau plus large."
      : "Prenez un rouleau plus large, ou faites la pièce plus courte ou en deux pièces.",
  }),
  "piece-too-large-for-stock": ({ pieceId, count, alongMm, acrossMm }, say) => ({
    what: `${times(pieceId, count)}\u00a0: impossible à couper. ${say(alongMm, "fine")} en long et ${say(acrossMm, "fine")} en travers, c’est plus grand que tout le tissu en stock.`,
    remedy:
      "Ajoutez un plus grand morceau de tissu ou un rouleau, ou faites la pièce plus petite ou en deux pièces.",
  }),
  "piece-stock-used-up": ({ pieceId, count, moreLengthMm }, say) => ({
    what: `${times(pieceId, count)} ne tient pas\u00a0: le tissu en stock est épuisé.`,
    remedy:
      moreLengthMm === null
        ? "Ajoutez du tissu, ou faites moins de sacs."
        : `${say(Math.ceil(moreLengthMm), "fine")} de rouleau en plus prennent tout ce qui a été laissé de côté.`,
  }),
  "piece-no-room-on-pattern": ({ pieceId, count, neededWidthMm, widestMm }, say) => ({
    what: `${times(pieceId, count)}\u00a0: impossible à couper. Aucune ligne du motif sur laquelle elle doit être ne lui laisse de place entre les bords. Sur la première qui en laisse, il faut un rouleau large de ${say(neededWidthMm, "fine")} entre les lisières, et le plus large a ${say(widestMm, "fine")}.`,
    remedy:
      "Prenez un rouleau plus large, laissez la pièce libre du motif, ou mettez-la sur un autre endroit du motif.",
  }),
  "piece-band-too-short": ({ pieceId, count, bandMm, neededMm }, say) => ({
    what: `${times(pieceId, count)}\u00a0: impossible à couper. Les pièces d’un sac ne tiennent pas sur ${say(bandMm)} de rouleau, qui doivent les garder d’une même nuance.`,
    remedy:
      neededMm === null
        ? "Allongez cette longueur, ou prenez un rouleau plus large."
        : `Une longueur de ${say(Math.ceil(neededMm))} les prend.`,
  }),
  "piece-no-stock": ({ pieceId, count }) => ({
    what: `${times(pieceId, count)}\u00a0: impossible à couper. La matière n’a pas de tissu.`,
    remedy: "Donnez à la matière un rouleau, une chute ou une peau.",
  }),
};
