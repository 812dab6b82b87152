import { useMemo } from "preact/hooks";
import { choiceTitles } from "../../../core/lay/alternatives/choiceTitles.ts";
import { clothUsed } from "../../../core/lay/alternatives/clothUsed.ts";
import type { LayChoice } from "../../../core/lay/alternatives/searchChoices.ts";
import { copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import { type LengthWords, useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/lays.ts";
import { useTakePlan } from "../../state/takePlan.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";
import { PlanMiniature } from "./PlanMiniature.tsx";
import { kindsOf } from "./pieceKind.ts";

/** Up to three plans side by side: the shortest, the easiest to cut, the one with the largest leftover for its length. */
export function LayChoices({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const language = useLanguage();
  const words = texts.lay.choices;
  const { problem } = lay.job;
  // Nothing lies: there is nothing to choose between.
  const isEmpty = lay.plan?.placements.length === 0;
  const asked = lay.plan === null || isEmpty ? null : ({ kind: "choices", problem } as const);
  const answer = useWeighed(asked, asked === null ? null : lay.signature);
  const kinds = useMemo(() => kindsOf(project, language), [project, language]);
  const choices = answer.value;
  // Plans of an older problem are not shown: their pieces may be gone.
  const isOld = answer.state !== "ready";
  const now = lay.plan === null ? 0 : clothUsed(problem, lay.plan);
  if (isEmpty) return null;
  return (
    <section class="sheet stack lay-choices not-on-paper" aria-label={words.heading} aria-busy={isOld}>
      <h2>{words.heading}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.state === "working" && <p class="soft">{words.working}</p>}
      {!isOld && choices !== null && (
        <ul class="choices">
          {choices.map((choice) => (
            <Choice key={choice.best.join()} choice={choice} lay={lay} now={now} kinds={kinds} />
          ))}
        </ul>
      )}
    </section>
  );
}

function Choice(props: { choice: LayChoice; lay: LayState; now: number; kinds: ReturnType<typeof kindsOf> }) {
  const takePlan = useTakePlan();
  const texts = useTexts();
  const lengths = useLengths();
  const words = texts.lay.choices;
  const { lay, now, kinds } = props;
  const { plan, figures } = props.choice;
  const length = clothUsed(lay.job.problem, plan);
  const { id, name } = lay.job.material;
  // The search had longer for the plan on the table: it may be better than the best found here.
  const titles = choiceTitles(lay.job.problem, props.choice, lay.plan);
  const heading = titles.length === 0 ? words.other : titles.map((title) => words.best[title]).join(" · ");
  const leftOut = copiesLeftOut(plan);
  const { ruler, offcut } = figures;
  return (
    <li class="stack choice">
      <h3>{heading}</h3>
      <PlanMiniature
        problem={lay.job.problem}
        plan={plan}
        offcut={offcut}
        kinds={kinds}
        name={texts.lay.plan(name)}
      />
      <div>
        {length + now > 0 && (
          <p>
            <strong>{lengths.taken(length)}</strong>{" "}
            <span class="soft">{differenceWords(length - now, texts.lay.ways, lengths)}</span>
          </p>
        )}
        <p class="small">
          {leftOut > 0 && `${texts.table.ruler.leavesOut(leftOut)} `}
          {ruler === null ? words.noRuler : words.ruler(ruler.cuts, ruler.settings)}{" "}
          {offcut !== null && words.offcut(lengths.box(offcut.box.dx, offcut.box.dy))}
        </p>
      </div>
      <button type="button" class="press" onClick={() => takePlan(id, plan, words.took)}>
        {words.take}
      </button>
    </li>
  );
}

/** More or less cloth than now, in words. */
export function differenceWords(
  mm: number,
  words: { same: string; more(length: string): string; less(length: string): string },
  lengths: LengthWords,
): string {
  if (Math.abs(mm) < 0.5) return words.same;
  const length = lengths.taken(Math.abs(mm));
  return mm > 0 ? words.more(length) : words.less(length);
}
