import type { MatchProblem } from "../../problems/matchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** What is to meet on a cloth's pattern, in German. */
export const matchSentences: SentenceTable<MatchProblem> = {
  "match-no-common-cloth": ({ first, second }) => ({
    what: `${quoted(first)} und ${quoted(second)} werden nicht aus einem Stoff geschnitten, das Muster kann also nicht von einem zum anderen weiterlaufen.`,
    remedy: "Beide aus demselben Stoff schneiden oder die Musterpassung weglassen.",
  }),
  "match-aslant": ({ first, second, byDeg }) => ({
    what: `Die Kanten von ${quoted(first)} und ${quoted(second)} treffen sich um ${Math.round(byDeg)}° schräg: Ein Streifen, der dort passt, knickt ab.`,
    remedy: "Kanten wählen, die in beiden Teilen längs oder quer laufen, oder die Musterpassung weglassen.",
  }),
  "match-contradicts": ({ part, offMm, mostMm }, say) => ({
    what: `Das Muster kann hier nicht passen: Auf ${quoted(part)} liegt es wegen anderer Passungen ${say(offMm)} daneben, erlaubt sind ${say(mostMm)}.`,
    remedy: "Eine der Passungen weglassen, ein Maß auf ganze Rapporte ändern oder mehr erlauben.",
  }),
  "match-turn-conflict": ({ part, isMirrored }) => ({
    what: `${isMirrored ? "Das Spiegelbild von " : ""}${quoted(part)} kann nicht so liegen, dass das Muster passt: Fadenlauf, Strich oder die Richtung des Musters verbieten es.`,
    remedy: isMirrored
      ? "Angeben, dass das Muster symmetrisch ist, wenn es das ist, nur längs passen lassen oder die Passung weglassen."
      : "Den Teilen denselben Fadenlauf geben oder die Musterpassung weglassen.",
  }),
  "unknown-part": ({ id, nearest, known }) => ({
    what: `Es gibt kein Teil und keinen Riemen ${quoted(id)}.${nearest === null ? "" : ` Ist ${quoted(nearest)} gemeint?`}`,
    remedy: `Eines davon nennen: ${known.slice(0, 12).map(quoted).join(", ")}.`,
  }),
  "match-on-layers": ({ materialId }) => ({
    what: `${quoted(materialId)} ist gefaltet oder liegt rechts auf rechts: In den gewendeten Lagen läuft das Muster quer andersherum, es wird darum nur längs der Rolle abgestimmt.`,
    remedy: "Nur längs abstimmen, alle Lagen mit der rechten Seite nach oben legen oder in einer Lage schneiden.",
  }),
};
