import type { CopyName, LayProblemFinding } from "../../problems/layProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

const copyOf = ({ pieceId, copy, name }: CopyName): string => name ?? `${quoted(pieceId)} no. ${copy + 1}`;
const clothOf = ({ stockId, stockName }: { readonly stockId: string; readonly stockName?: string }): string =>
  quoted(stockName ?? stockId);
const mm2 = (value: number): string => `${Number(value.toPrecision(4))} mm²`;
const times = (pieceId: string, count: number): string =>
  count === 1 ? quoted(pieceId) : `${count} × ${quoted(pieceId)}`;
const REDO = "Lay the pieces again; this plan must not be cut.";
const MOVE = "Move one of them, or lay the pieces again.";

/** Lay problems and plans in English. */
export const laySentences: SentenceTable<LayProblemFinding> = {
  "plan-unknown-piece": ({ pieceId }) => ({
    what: `The plan holds a piece ${quoted(pieceId)} that the cut list does not know.`,
    remedy: REDO,
  }),
  "plan-unknown-stock": ({ stockId }) => ({
    what: `The plan uses ${quoted(stockId)}, which is not among the cloth in stock.`,
    remedy: REDO,
  }),
  "plan-pose-unreadable": (problem) => ({
    what: `The place of ${copyOf(problem)} is not a number.`,
    remedy: REDO,
  }),
  "plan-copy-unknown": (problem) => ({
    what: `The plan holds ${copyOf(problem)}, but only ${problem.count} are needed.`,
    remedy: REDO,
  }),
  "plan-copy-twice": (problem) => ({ what: `The plan holds ${copyOf(problem)} twice.`, remedy: REDO }),
  "plan-turn-not-allowed": (problem) => ({
    what: `${copyOf(problem)} is turned by ${problem.turnDeg}°${problem.mirrored ? " and mirrored" : ""}, which its grain, its nap or its right side forbids.`,
    remedy: "Turn it to an allowed direction, or lay the pieces again.",
  }),
  "plan-overlap": (problem) => ({
    what: `${copyOf(problem)} lies on ${copyOf(problem.other)}: they overlap by ${mm2(problem.areaMm2)}.`,
    remedy: MOVE,
  }),
  "plan-too-close": (problem, say) => ({
    what: `${copyOf(problem)} and ${copyOf(problem.other)} are ${say(problem.distanceMm, "fine")} apart; the cutting gap is ${say(problem.leastMm, "fine")}.`,
    remedy: MOVE,
  }),
  "plan-outside-stock": (problem) => ({
    what: `${copyOf(problem)} leaves ${clothOf(problem)} by ${mm2(problem.areaMm2)}.`,
    remedy: "Move it in, or lay the pieces again.",
  }),
  "plan-too-near-edge": (problem, say) => ({
    what: `${copyOf(problem)} is ${say(problem.distanceMm, "fine")} from the edge of ${clothOf(problem)}; the edge margin is ${say(problem.leastMm, "fine")}.`,
    remedy: "Move it in, or lay the pieces again.",
  }),
  "plan-on-flaw": (problem) => ({
    what: `${copyOf(problem)} lies on flaw ${problem.flaw + 1} of ${clothOf(problem)} by ${mm2(problem.areaMm2)}.`,
    remedy: "Move it off, or lay the pieces again.",
  }),
  "plan-too-near-flaw": (problem, say) => ({
    what: `${copyOf(problem)} is ${say(problem.distanceMm, "fine")} from flaw ${problem.flaw + 1} of ${clothOf(problem)}; the cutting gap is ${say(problem.leastMm, "fine")}.`,
    remedy: "Move it off, or lay the pieces again.",
  }),
  "plan-miscounted": ({ pieceId, wanted, placed, unplaced }) => ({
    what: `${quoted(pieceId)}: ${wanted} needed, but ${placed} laid and ${unplaced} reported as left out.`,
    remedy: REDO,
  }),
  "plan-pin-moved": (problem) => ({
    what: `${copyOf(problem)} was pinned and has moved.`,
    remedy: REDO,
  }),
  "plan-off-pattern": (problem, say) => ({
    what: `${copyOf(problem)} lies ${say(problem.offMm, "fine")} off the pattern ${problem.axis} the cloth${problem.other === undefined ? "" : `, beside ${copyOf(problem.other)}`}; at most ${say(problem.mostMm, "fine")} is allowed.`,
    remedy: "Move it onto the pattern, or lay the pieces again.",
  }),
  "plan-against-pattern": (problem) => ({
    what: `${copyOf(problem)} is turned so that the pattern runs another way than on ${copyOf(problem.other)}, which it has to match.`,
    remedy: "Turn it, or lay the pieces again.",
  }),
  "plan-pattern-unknown": (problem) => ({
    what: `${copyOf(problem)} is matched to the pattern, but nobody has said where the pattern lies on ${clothOf(problem)}.`,
    remedy: "Say where the first line lies on it, or lay the piece on other cloth.",
  }),
  "plan-two-ways": (problem) => ({
    what: `${copyOf(problem)} lies the other way than ${copyOf(problem.other)}; on this cloth all pieces lie one way.`,
    remedy: "Turn it by half, or lay the pieces again.",
  }),
  "plan-bag-apart": (problem) => ({
    what: `${copyOf(problem)} and ${copyOf(problem.other)} belong to bag ${problem.bag} and lie on two pieces of cloth, which may differ in shade.`,
    remedy: MOVE,
  }),
  "plan-bag-scattered": (problem, say) => ({
    what: `The parts of bag ${problem.bag}, from ${copyOf(problem.other)} to ${copyOf(problem)}, lie over ${say(problem.lengthMm)} of the roll; for one shade they are to lie within ${say(problem.mostMm)}.`,
    remedy: MOVE,
  }),
  "plan-layers-miscounted": ({ pieceId, hand, wanted, given }) => ({
    what: `${quoted(pieceId)}, ${hand === "mirrored" ? "mirrored" : "as drawn"}: ${wanted} needed; all layers together give ${given}.`,
    remedy: REDO,
  }),
  "plan-hands-untrue": ({ pieceId }) => ({
    what: `${quoted(pieceId)} is said to give pieces that these layers, laid so, do not give.`,
    remedy: REDO,
  }),
  "plan-off-fold": (problem) => ({
    what: `${copyOf(problem)} is half a piece, and its fold edge does not lie on the fold of the cloth.`,
    remedy: "Move it onto the fold, or lay the pieces again.",
  }),
  "plan-length-untrue": ({ stockId, toldMm, measuredMm }, say) => ({
    what: `The plan says that ${say(toldMm, "fine")} of ${quoted(stockId)} are used; the pieces take ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "plan-bound-untrue": ({ stockId, boundMm, measuredMm }, say) => ({
    what: `The plan says that ${quoted(stockId)} cannot be cut shorter than ${say(boundMm, "fine")}; the pieces take ${say(measuredMm, "fine")}.`,
    remedy: REDO,
  }),
  "piece-too-long-for-width": ({ pieceId, count, neededWidthMm, widestMm, fitsTurned }, say) => ({
    what: `${times(pieceId, count)} cannot be cut: on this grain it takes ${say(neededWidthMm, "fine")} across, and the widest roll has ${say(widestMm, "fine")}.`,
    remedy: fitsTurned
      ? "Let it lie the other straight way, or take a wider roll."
      : "Take a wider roll, or make the piece shorter or of two pieces.",
  }),
  "piece-too-large-for-stock": ({ pieceId, count, alongMm, acrossMm }, say) => ({
    what: `${times(pieceId, count)} cannot be cut: ${say(alongMm, "fine")} along and ${say(acrossMm, "fine")} across is larger than any cloth in stock.`,
    remedy: "Add a larger piece of cloth or a roll, or make the piece smaller or of two pieces.",
  }),
  "piece-stock-used-up": ({ pieceId, count, moreLengthMm }, say) => ({
    what: `${times(pieceId, count)} does not fit: the cloth in stock is used up.`,
    remedy:
      moreLengthMm === null
        ? "Add more cloth, or make fewer bags."
        : `${say(Math.ceil(moreLengthMm), "fine")} more of the roll takes everything that was left out.`,
  }),
  "piece-no-room-on-pattern": ({ pieceId, count, neededWidthMm, widestMm }, say) => ({
    what: `${times(pieceId, count)} cannot be cut: no line of the pattern that it is held to leaves room for it between the edges. On the first that does, the roll has to be ${say(neededWidthMm, "fine")} wide between its selvedges, and the widest has ${say(widestMm, "fine")}.`,
    remedy: "Take a wider roll, let the piece lie off the pattern, or hold it to another place of it.",
  }),
  "piece-band-too-short": ({ pieceId, count, bandMm, neededMm }, say) => ({
    what: `${times(pieceId, count)} cannot be cut: the parts of one bag do not fit into ${say(bandMm)} of the roll, which are to keep them one shade.`,
    remedy:
      neededMm === null
        ? "Make the band longer, or take a wider roll."
        : `A band of ${say(Math.ceil(neededMm))} takes them.`,
  }),
  "piece-no-stock": ({ pieceId, count }) => ({
    what: `${times(pieceId, count)} cannot be cut: the material has no cloth.`,
    remedy: "Give the material a roll, a remnant, or a hide or skin.",
  }),
};
