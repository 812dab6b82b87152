import { useMemo } from "preact/hooks";
import { choiceTitles } from "../../../core/lay/alternatives/choiceTitles.ts";
import type { LayChoice } from "../../../core/lay/alternatives/searchChoices.ts";
import { clothUsed, copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import { useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/layBoard.ts";
import { useTakePlan } from "../../state/takePlan.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { differenceWords } from "./LayOptions.tsx";
import { PlanMiniature } from "./PlanMiniature.tsx";
import { kindsOf } from "./pieceKind.ts";
import type { Choices } from "./useChoices.ts";

/** Up to three plans side by side: the shortest, the easiest to cut, the one with the largest leftover for its length. */
export function LayChoices({ lay, project, choices }: { lay: LayState; project: Project; choices: Choices }) {
  const texts = useTexts();
  const language = useLanguage();
  const words = texts.lay.choices;
  const kinds = useMemo(() => kindsOf(project, language), [project, language]);
  const { shown, isOld, isFailed } = choices;
  // Nothing lies: there is nothing to choose between.
  if (lay.plan?.placements.length === 0) return null;
  return (
    <section class="sheet stack lay-choices not-on-paper" aria-label={words.heading} aria-busy={isOld}>
      <h2>{words.heading}</h2>
      {isFailed && <p class="caution">{texts.table.failed}</p>}
      {shown === null && !isFailed && <p class="soft">{words.working}</p>}
      {shown !== null && (
        <ul class={isOld ? "choices stale" : "choices"}>
          {shown.choices.map((choice) => (
            <Choice key={choice.best.join()} choice={choice} lay={lay} of={shown} isOld={isOld} kinds={kinds} />
          ))}
        </ul>
      )}
    </section>
  );
}

function Choice(props: {
  choice: LayChoice;
  lay: LayState;
  of: NonNullable<Choices["shown"]>;
  isOld: boolean;
  kinds: ReturnType<typeof kindsOf>;
}) {
  const takePlan = useTakePlan();
  const texts = useTexts();
  const lengths = useLengths();
  const words = texts.lay.choices;
  const { lay, kinds, isOld } = props;
  const { problem, plan: table } = props.of;
  const { plan, figures } = props.choice;
  const length = clothUsed(problem, plan);
  const now = table === null ? 0 : clothUsed(problem, table);
  const { id, name } = lay.job.material;
  // The search had longer for the plan on the table: it may be better than the best found here.
  const titles = choiceTitles(problem, props.choice, table);
  const heading = titles.length === 0 ? words.other : titles.map((title) => words.best[title]).join(" · ");
  const leftOut = copiesLeftOut(plan);
  const { ruler, offcut } = figures;
  return (
    <li class="stack choice">
      <h3>{heading}</h3>
      <PlanMiniature problem={problem} plan={plan} offcut={offcut} kinds={kinds} name={texts.lay.plan(name)} />
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
      <button type="button" class="press" disabled={isOld} onClick={() => takePlan(id, plan, words.took)}>
        {words.take}
      </button>
    </li>
  );
}
