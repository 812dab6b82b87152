import { useMemo } from "preact/hooks";
import { pieceArt } from "../../../core/drawing/lay/pieceArt.ts";
import { polygonArea } from "../../../core/geometry/ring.ts";
import type { LayJob } from "../../../core/job/projectJob.ts";
import { isMatched } from "../../../core/lay/problem/lattice.ts";
import { piecesOf } from "../../../core/lay/problem/layerSums.ts";
import type { LayPlan, LayProblem } from "../../../core/lay/problem/layProblem.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { directionWords, matchedWords, ruleCostWords } from "../../../export/cutsheet/layWords.ts";
import { percent, useLengths } from "../../fields/units.ts";
import { Term } from "../../parts/Term.tsx";
import { derivedOf } from "../../state/derived.ts";
import type { LayState } from "../../state/layBoard.ts";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";

/** What else there is to know of a plan: what has no place, what is left over, how full the cloth is. */
export function LayDetails({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const language = useLanguage();
  const { job, plan } = lay;
  const names = useMemo(
    () => pieceArt(derivedOf(project, language).pieces, project.output.lengths, language),
    [project, language],
  );
  return (
    <section class="sheet stack lay-details" aria-label={texts.lay.details}>
      {plan !== null && plan.unplaced.length > 0 && (
        <ul class="unplaced">
          {plan.unplaced.map(({ pieceId, count, reason }) => (
            <li key={pieceId + reason} class="refusal">
              {texts.lay.unplaced(names.get(pieceId)?.name ?? pieceId, piecesOf(job.problem, pieceId, count))}{" "}
              {texts.lay.reasons[reason]}
            </li>
          ))}
        </ul>
      )}
      {plan !== null && <LeftOver job={job} plan={plan} />}
      {plan !== null && plan.placements.length > 0 && (
        <p class="soft">
          <Term id="utilisation" word={texts.lay.utilisation(percent(utilisation(job.problem, plan), language))} />
        </p>
      )}
      <StripsPerMetre lay={lay} project={project} />
      {plan !== null && isRuled(job) && <ClothRules job={job} plan={plan} lay={lay} project={project} />}
    </section>
  );
}

/** Whether the cloth's direction, its pattern or its shade binds where pieces lie. */
function isRuled({ material, problem }: LayJob): boolean {
  return isMatched(problem) || material.oneWay !== false || material.shadeBand !== undefined;
}

/** What is matched on the cloth's pattern, where the cloth has to begin, what lies together, and what each rule costs. */
function ClothRules({ job, plan, lay, project }: { job: LayJob; plan: LayPlan; lay: LayState; project: Project }) {
  const language = useLanguage();
  const { material, problem } = job;
  const asked = { kind: "rules", project, materialId: material.id } as const;
  const { state, value } = useWeighed(asked, `${material.id} ${lay.signature}`);
  const words = [
    ...directionWords(material, problem, plan, project, language),
    ...matchedWords(material, problem, plan, project, language),
  ];
  const costs = ruleCostWords(value ?? [], project, language);
  return (
    <>
      {words.length > 0 && <p class="soft">{words.join(" ")}</p>}
      {costs.length > 0 && (
        <ul class={state === "working" ? "soft stale" : "soft"}>
          {costs.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
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

/** Offcuts that are told; the rest is scrap in anybody's drawer. */
const TOLD = 3;

/** The largest rectangles that a plan leaves; worked out beside the page, once plans no longer change at once. */
function LeftOver({ job, plan }: { job: LayJob; plan: LayPlan }) {
  const texts = useTexts();
  const lengths = useLengths();
  const { currency, tax } = useProject();
  const { material, problem } = job;
  const { state, value } = useWeighed({ kind: "offcuts", material, problem, plan, rules: { currency, tax } }, plan);
  const told = value?.slice(0, TOLD) ?? [];
  // The line keeps its place while the rectangles of another plan are looked for.
  if (state === "working" && told.length === 0) return <p class="soft">{texts.lay.offcuts("…")}</p>;
  if (told.length === 0) return null;
  const sizes = told.map(({ along, across }) => lengths.box(along, across)).join(", ");
  return <p class={state === "working" ? "soft stale" : "soft"}>{texts.lay.offcuts(sizes)}</p>;
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
