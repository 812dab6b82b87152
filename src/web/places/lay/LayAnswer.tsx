import { polygonArea } from "../../../core/geometry/ring.ts";
import type { LayPlan, LayProblem } from "../../../core/lay/types.ts";
import type { Project } from "../../../core/project/project.ts";
import { useLengths } from "../../fields/units.ts";
import { Term } from "../../parts/Term.tsx";
import type { LayState } from "../../state/lays.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** The sentence that answers: how much, how good, what is left; and the search's own word. */
export function LayAnswer({ lay }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const lengths = useLengths();
  const { board } = useWorkbench();
  const { job, plan, finding } = lay;
  const id = job.material.id;
  const used = plan?.uses.filter(({ usedLength }) => usedLength > 0) ?? [];
  const roll = used.find(({ stockId }) =>
    job.problem.stocks.some(({ id: own, kind }) => own === stockId && kind === "roll"),
  );
  const unplaced = plan?.unplaced.reduce((sum, { count }) => sum + count, 0) ?? 0;
  return (
    <div class="lay-answer sheet">
      <div class="lay-sentence" role="status" aria-live="polite">
        {plan === null ? (
          <p>{finding === "failed" ? texts.lay.failed : texts.lay.findingFirst}</p>
        ) : (
          <>
            {roll !== undefined && (
              <p class="lay-length">
                {texts.lay.needs(lengths.cloth(roll.usedLength), job.material.name)}{" "}
                {roll.bound !== null && (
                  <span class="soft">
                    {finding === "proven" || roll.usedLength <= roll.bound + 0.05
                      ? texts.lay.proven
                      : words(texts.lay.gap(percent(roll.usedLength / roll.bound - 1)), <Term id="bound" />)}
                  </span>
                )}
              </p>
            )}
            {roll === undefined && used.length > 0 && <p class="lay-length">{texts.lay.allOnLeftovers}</p>}
            <p class="soft">
              <Term id="utilisation" word={texts.lay.utilisation(percent(utilisation(job.problem, plan)))} />
            </p>
            {unplaced > 0 && (
              <ul class="unplaced">
                {plan.unplaced.map(({ pieceId, count, reason }) => (
                  <li key={pieceId + reason} class="refusal">
                    {texts.lay.unplaced(nameOf(job.problem, pieceId), count)} {texts.lay.reasons[reason]}
                  </li>
                ))}
              </ul>
            )}
          </>
        )}
      </div>
      <div class="row lay-search">
        <span class={`search-word ${finding}`}>{texts.lay.findings[finding]}</span>
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
    </div>
  );
}

function words(sentence: string, term: preact.ComponentChildren) {
  const [before, after] = sentence.split("{bound}");
  return (
    <>
      {before}
      {term}
      {after}
    </>
  );
}

const nameOf = (_problem: LayProblem, pieceId: string) => pieceId;

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

function percent(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;
}
