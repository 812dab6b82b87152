import { useMemo } from "preact/hooks";
import { purchaseOf } from "../../../core/buying/purchase.ts";
import { shopLength } from "../../../core/buying/shopLength.ts";
import { pieceArt } from "../../../core/drawing/lay/pieceArt.ts";
import { polygonArea } from "../../../core/geometry/ring.ts";
import type { LayJob } from "../../../core/job/projectJob.ts";
import type { LayPlan, LayProblem } from "../../../core/lay/problem/layProblem.ts";
import { copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import type { Language } from "../../../core/units/language.ts";
import { withDecimalSign } from "../../../core/units/numberWords.ts";
import { unbroken } from "../../../core/units/unbroken.ts";
import { money } from "../../../export/cutsheet/layWords.ts";
import { useLengths } from "../../fields/units.ts";
import { Term } from "../../parts/Term.tsx";
import { derivedOf } from "../../state/derived.ts";
import type { LayState } from "../../state/lays.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";
import { OtherWays } from "./OtherWays.tsx";

/** The sentence that answers: how much, how good, what is left; and the search's own word. */
export function LayAnswer({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const lengths = useLengths();
  const { board } = useWorkbench();
  const { job, plan, finding } = lay;
  const id = job.material.id;
  const used = plan?.uses.filter(({ usedLength }) => usedLength > 0) ?? [];
  const roll = used.find(({ stockId }) =>
    job.problem.stocks.some(({ id: own, kind }) => own === stockId && kind === "roll"),
  );
  const language = useLanguage();
  const names = useMemo(
    () => pieceArt(derivedOf(project, language).pieces, project.output.lengths, language),
    [project, language],
  );
  const shop = useMemo(() => (plan === null ? null : purchaseOf(job.material, plan)), [job, plan]);
  const unplaced = plan === null ? 0 : copiesLeftOut(plan);
  const isEmpty = plan !== null && plan.placements.length === 0;
  return (
    <div class="lay-answer sheet">
      <div class="lay-sentence" role="status" aria-live="polite">
        {plan === null ? (
          <p>{finding === "failed" ? texts.lay.failed : texts.lay.findingFirst}</p>
        ) : (
          <>
            {roll !== undefined && (
              <p class="lay-length">
                {texts.lay.needs(lengths.taken(roll.usedLength), job.material.name)}{" "}
                {roll.bound !== null && unplaced === 0 && (
                  <span class="soft">
                    {finding === "proven" || roll.usedLength <= roll.bound + 0.05
                      ? texts.lay.proven
                      : words(
                          texts.lay.gap(percent(roll.usedLength / roll.bound - 1, language)),
                          <Term id="bound" />,
                        )}
                  </span>
                )}
              </p>
            )}
            {isEmpty && <p class="lay-length">{texts.lay.nothingFits}</p>}
            {roll === undefined && used.length > 0 && unplaced === 0 && (
              <p class="lay-length">{texts.lay.allOnLeftovers}</p>
            )}
            {shop !== null && shop.buyLength > 0 && (
              <p>
                <strong>
                  {unbroken(
                    texts.lay.buy(
                      shopLength(shop.buyLength, job.material.price, language),
                      shop.toPay === null ? null : money(shop.toPay, project, language),
                    ),
                  )}
                </strong>
              </p>
            )}
            <LeftOver job={job} plan={plan} />
            {!isEmpty && (
              <p class="soft">
                <Term
                  id="utilisation"
                  word={texts.lay.utilisation(percent(utilisation(job.problem, plan), language))}
                />
              </p>
            )}
            <StripsPerMetre lay={lay} project={project} />
            {unplaced > 0 && (
              <ul class="unplaced">
                {plan.unplaced.map(({ pieceId, count, reason }) => (
                  <li key={pieceId + reason} class="refusal">
                    {texts.lay.unplaced(names.get(pieceId)?.name ?? pieceId, count)} {texts.lay.reasons[reason]}
                  </li>
                ))}
              </ul>
            )}
          </>
        )}
      </div>
      <div class="row lay-search not-on-paper">
        {/* "Shortest" is a word about a roll, and about a job that is whole. */}
        {!((unplaced > 0 || roll === undefined) && finding === "proven") && (
          <span class={`search-word ${finding}`}>{texts.lay.findings[finding]}</span>
        )}
        {finding === "finding" || finding === "waiting" ? (
          <button type="button" class="press" onClick={() => board.pause(id)}>
            {texts.lay.goodEnough}
          </button>
        ) : (
          finding !== "proven" && (
            <button type="button" class="press" onClick={() => board.resume(id)}>
              {texts.lay.keepLooking}
            </button>
          )
        )}
      </div>
      <OtherWays key={id} lay={lay} project={project} />
    </div>
  );
}

/** How many strips of each strap a metre (or a yard) of the roll gives. */
function StripsPerMetre({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const { problem } = lay.job;
  const language = useLanguage();
  const { pieces } = derivedOf(project, language);
  const { value } = useWeighed({ kind: "strips", pieces, problem }, language + lay.signature);
  if (value === null || value.length === 0) return null;
  return (
    <p class="soft">
      {texts.lay.strips}{" "}
      {value
        .map(({ piece, yield: { count, proven } }) => unbroken(texts.lay.stripsOf(piece.name, count, proven)))
        .join(", ")}
      .
    </p>
  );
}

function words(sentence: string, term: preact.ComponentChildren) {
  const [before, after] = sentence.split("{bound}");
  return (
    <>
      {before}
      <span class="together">
        {term}
        {after}
      </span>
    </>
  );
}

/** Offcuts that are told; the rest is scrap in anybody's drawer. */
const TOLD = 3;

/** The largest rectangles that a plan leaves; worked out beside the page, once plans no longer change at once. */
function LeftOver({ job, plan }: { job: LayJob; plan: LayPlan }) {
  const texts = useTexts();
  const lengths = useLengths();
  const { material, problem } = job;
  const { state, value } = useWeighed({ kind: "offcuts", material, problem, plan }, plan);
  // The line keeps its place while the rectangles of another plan are looked for.
  if (state === "working") return <p class="soft">{texts.lay.offcuts("…")}</p>;
  const told = value?.slice(0, TOLD) ?? [];
  if (told.length === 0) return null;
  return (
    <p class="soft">{texts.lay.offcuts(told.map(({ along, across }) => lengths.box(along, across)).join(", "))}</p>
  );
}

/** Piece area ÷ cloth used up, over all stocks. */
function utilisation(problem: LayProblem, plan: LayPlan): number {
  const areas = new Map(problem.pieces.map((piece) => [piece.id, polygonArea(piece.outline)]));
  const pieces = plan.placements.reduce((sum, { pieceId }) => sum + (areas.get(pieceId) ?? 0), 0);
  let cloth = 0;
  for (const use of plan.uses) {
    const stock = problem.stocks.find(({ id }) => id === use.stockId);
    if (stock === undefined || use.usedLength <= 0) continue;
    cloth += stock.kind === "roll" ? stock.width * use.usedLength : polygonArea(stock.outline);
  }
  return cloth === 0 ? 0 : pieces / cloth;
}

function percent(share: number, language: Language): string {
  return unbroken(withDecimalSign(`${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`, language));
}
