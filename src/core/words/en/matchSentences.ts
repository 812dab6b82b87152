import type { MatchProblem } from "../../problems/matchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** What is to meet on a cloth's pattern, in English. */
export const matchSentences: SentenceTable<MatchProblem> = {
  "match-no-common-cloth": ({ first, second }) => ({
    what: `${quoted(first)} and ${quoted(second)} are not cut from one cloth, so its pattern cannot run on from one to the other.`,
    remedy: "Cut both from the same cloth, or leave the match out.",
  }),
  "match-aslant": ({ first, second, byDeg }) => ({
    what: `The edges of ${quoted(first)} and ${quoted(second)} meet at a slant of ${Math.round(byDeg)}°: a stripe that meets there turns off.`,
    remedy: "Match edges that run along or across both pieces, or leave the match out.",
  }),
  "match-contradicts": ({ part, offMm, mostMm }, say) => ({
    what: `The pattern cannot meet here: on ${quoted(part)} other matches put it ${say(offMm)} away, and ${say(mostMm)} is allowed.`,
    remedy: "Leave one of the matches out, change a size to whole repeats, or allow more.",
  }),
  "match-turn-conflict": ({ part, isMirrored }) => ({
    what: `${isMirrored ? "The mirror image of " : ""}${quoted(part)} cannot lie so that the pattern matches: its grain, the nap or the top of the pattern forbids every such turn.`,
    remedy: isMirrored
      ? "Say that the pattern is symmetric if it is, match it along only, or leave the match out."
      : "Give the matched pieces the same grain, or leave the match out.",
  }),
  "unknown-part": ({ id, nearest, known }) => ({
    what: `There is no panel or strap ${quoted(id)}.${nearest === null ? "" : ` Did you mean ${quoted(nearest)}?`}`,
    remedy: `Name one of ${known.slice(0, 12).map(quoted).join(", ")}.`,
  }),
  "match-on-layers": ({ materialId }) => ({
    what: `${quoted(materialId)} is folded or lies face to face: in the layers turned over its pattern runs the other way across, so it is matched along the roll only.`,
    remedy: "Match along only, lay all layers face up, or cut in one layer.",
  }),
};
