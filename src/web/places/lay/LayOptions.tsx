import { useMemo, useRef } from "preact/hooks";
import { partOf } from "../../../core/buying/money.ts";
import { purchaseOf } from "../../../core/buying/purchase.ts";
import { inOtherWay } from "../../../core/job/otherWays.ts";
import { choiceTitles } from "../../../core/lay/alternatives/choiceTitles.ts";
import { layFigures } from "../../../core/lay/alternatives/layFigures.ts";
import { clothUsed } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import { useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/layBoard.ts";
import { useTakePlan } from "../../state/takePlan.ts";
import { useChange } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import type { Choices } from "./useChoices.ts";
import type { Ways } from "./useWays.ts";

/** Cloth, money and cuts of the plan, of other plans, and of what one change would give: for all bags and for one. */
export function LayOptions(props: { lay: LayState; project: Project; choices: Choices; ways: Ways }) {
  const texts = useTexts();
  const change = useChange();
  const takePlan = useTakePlan();
  const words = texts.lay.options;
  const { lay, project, choices, ways } = props;
  // While the first plan of a changed bag is found, the figures of the old one keep the place.
  const last = useRef(lay);
  if (lay.plan !== null) last.current = lay;
  const { plan, job } = last.current;
  const cuts = useMemo(
    () => (plan === null ? null : (layFigures(job.problem, plan).ruler?.cuts ?? null)),
    [job.problem, plan],
  );
  if (plan === null || plan.placements.length === 0) return null;
  const { material, problem } = job;
  const leftOut = plan.unplaced.length;
  const { shown } = choices;
  return (
    <section id="lay-options" class="sheet stack not-on-paper" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      <table class="options">
        <thead>
          <tr>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.cloth}</th>
            <th scope="col">{words.toPay}</th>
            <th scope="col">{words.cuts}</th>
          </tr>
        </thead>
        <tbody class={lay.plan === null ? "stale" : undefined}>
          <tr>
            <th scope="row">{words.now}</th>
            <Figures
              project={project}
              length={clothUsed(problem, plan)}
              toPay={purchaseOf(material, plan, project).toPay}
              cuts={cuts}
            />
          </tr>
        </tbody>
        {shown !== null && (
          <tbody class={choices.isOld ? "stale" : undefined}>
            {shown.choices.map((choice) => {
              const titles = choiceTitles(shown.problem, choice, shown.plan);
              const heading = titles.map((title) => texts.lay.choices.best[title]).join(" · ");
              return (
                <tr key={choice.best.join()}>
                  <th scope="row">
                    <button
                      type="button"
                      class="press plain"
                      disabled={choices.isOld}
                      onClick={() => takePlan(material.id, choice.plan, texts.lay.choices.took)}
                    >
                      {heading === "" ? texts.lay.choices.other : heading}
                    </button>
                  </th>
                  <Figures
                    project={project}
                    length={clothUsed(shown.problem, choice.plan)}
                    toPay={purchaseOf(material, choice.plan, project).toPay}
                    cuts={choice.figures.ruler?.cuts ?? null}
                  />
                </tr>
              );
            })}
          </tbody>
        )}
        {ways.list.length > 0 && (
          <tbody class={ways.isOld ? "stale" : undefined}>
            <tr>
              <th scope="colgroup" colSpan={4} class="soft">
                {texts.lay.ways.couldBe}
              </th>
            </tr>
            {ways.list.map((each) => (
              <tr key={JSON.stringify(each.way)}>
                <th scope="row">
                  <button
                    type="button"
                    class="press plain way"
                    disabled={ways.isOld}
                    onClick={() => change((now) => inOtherWay(now, material.id, each.way), each.name)}
                  >
                    <span>{each.name}</span>
                    <Difference mm={each.difference} placesAll={leftOut > 0} />
                  </button>
                </th>
                <Figures project={project} length={each.length} toPay={each.toPay} cuts={each.cuts} />
              </tr>
            ))}
          </tbody>
        )}
      </table>
      {!ways.isKnown && <p class="soft small">{ways.isFailed ? texts.table.failed : texts.lay.ways.working}</p>}
    </section>
  );
}

function Figures(props: { project: Project; length: number; toPay: number | null; cuts: number | null }) {
  const lengths = useLengths();
  const language = useLanguage();
  const words = useTexts().lay.options;
  const { project, length, toPay, cuts } = props;
  const { bags } = project;
  return (
    <>
      <td>
        <strong class="number">{length > 0 ? lengths.taken(length) : "–"}</strong>
        {bags > 1 && length > 0 && <span class="soft small">{words.aBag(lengths.taken(length / bags))}</span>}
      </td>
      <td>
        <span class="number">{toPay === null ? "–" : unbroken(moneyText(toPay, project.currency, language))}</span>
        {bags > 1 && toPay !== null && toPay > 0 && (
          <span class="soft small">
            {words.aBag(unbroken(moneyText(partOf(toPay, 1, bags), project.currency, language)))}
          </span>
        )}
      </td>
      <td class="number">{cuts ?? words.alongLines}</td>
    </>
  );
}

/** More or less cloth than now; where pieces have no place now, that they all have one. */
function Difference({ mm, placesAll }: { mm: number; placesAll: boolean }) {
  const lengths = useLengths();
  const words = useTexts().lay.ways;
  return <span class="soft small">{placesAll ? words.placesAll : differenceWords(mm, words, lengths)}</span>;
}

/** More or less cloth than now, in words. */
export function differenceWords(
  mm: number,
  words: { same: string; more(length: string): string; less(length: string): string },
  lengths: { taken(mm: number): string },
): string {
  if (Math.abs(mm) < 0.5) return words.same;
  const length = lengths.taken(Math.abs(mm));
  return mm > 0 ? words.more(length) : words.less(length);
}
