import type { Mend } from "../../../../core/patterns/understandPattern.ts";
import { describeProblem } from "../../../../core/problems/describeProblem.ts";
import type { PatternProblem } from "../../../../core/problems/patternProblems.ts";
import { unbroken } from "../../../../core/units/numberWords.ts";
import { SENTENCES } from "../../../../core/words/words.ts";
import { useSayLength } from "../../../fields/units.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";

/** What puts a problem right. */
const MEND_OF: Readonly<Partial<Record<PatternProblem["code"], Mend>>> = {
  "pattern-gap": "gaps",
  "pattern-doubled": "doubles",
  "pattern-partly-doubled": "doubles",
  "pattern-crosses-itself": "crossings",
  "pattern-sliver": "slivers",
  "pattern-scale-doubtful": "scale",
};
/** Of one kind so many are told; a mend puts all of them right. */
const MOST_TOLD = 5;

interface Group {
  readonly mend: Mend | null;
  readonly isMended: boolean;
  readonly problems: PatternProblem[];
}

/** What is wrong with a pattern, kind by kind, each with the press that mends it or takes the mend back. */
export function PatternTroubles(props: {
  problems: readonly PatternProblem[];
  onMend: (mend: Mend, isWanted: boolean) => void;
}) {
  const { pattern: words } = useTexts();
  const groups = grouped(props.problems);
  if (groups.length === 0) return null;
  return (
    <ul class="stack pattern-troubles" aria-label={words.troubles}>
      {groups.map(({ mend, isMended, problems }) => (
        <li key={`${mend ?? problems[0]!.code} ${isMended}`} data-mend={mend ?? undefined}>
          {problems.slice(0, MOST_TOLD).map((problem, i) => (
            <Trouble key={i} problem={problem} withRemedy={mend === null || isMended} />
          ))}
          {problems.length > MOST_TOLD && <p class="soft">{words.more(problems.length - MOST_TOLD)}</p>}
          {mend !== null && (
            <button type="button" class="press" onClick={() => props.onMend(mend, !isMended)}>
              {isMended ? words.asDrawn : words.mends[mend]}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}

function Trouble({ problem, withRemedy }: { problem: PatternProblem; withRemedy: boolean }) {
  const { path, what, remedy } = describeProblem(problem, SENTENCES[useLanguage()], useSayLength());
  return (
    <p>
      {path !== "" && <strong>{path}: </strong>}
      {unbroken(withRemedy ? `${what} ${remedy}` : what)}
    </p>
  );
}

function grouped(problems: readonly PatternProblem[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const problem of problems) {
    const mend = MEND_OF[problem.code] ?? null;
    const isMended = "mended" in problem && problem.mended;
    const key = `${mend ?? problem.code} ${isMended}`;
    const group = groups.get(key) ?? { mend, isMended, problems: [] };
    groups.set(key, group);
    group.problems.push(problem);
  }
  return [...groups.values()];
}
