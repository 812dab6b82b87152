import { useMemo } from "preact/hooks";
import { purchaseOf } from "../../../core/buying/purchase.ts";
import { shopLength } from "../../../core/buying/shopLength.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import { percent, useLengths } from "../../fields/units.ts";
import { Term } from "../../parts/Term.tsx";
import type { LayState } from "../../state/layBoard.ts";
import { routeHash } from "../../state/route.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { OpenedStock } from "./OpenedStock.tsx";
import type { Ways } from "./useWays.ts";

/** One line under the plan: how much, how good, what it costs, what one change would spare; and the search's own word. */
export function LayLine({ lay, project, ways }: { lay: LayState; project: Project; ways: Ways }) {
  const texts = useTexts();
  const language = useLanguage();
  const { job, plan } = lay;
  const shop = useMemo(
    () => (plan === null ? null : purchaseOf(job.material, plan, project)),
    [job, plan, project],
  );
  return (
    <div class="lay-line sheet">
      <div class="lay-sentence" role="status" aria-live="polite">
        <Needs lay={lay} />
        {lay.rules !== null && <OpenedStock lay={lay} project={project} />}
        {shop !== null && shop.buyLength > 0 && lay.rules === null && (
          <strong>
            {unbroken(
              texts.lay.buy(
                shopLength(shop.buyLength, job.material.price, language),
                shop.toPay === null ? null : moneyText(shop.toPay, project.currency, language),
              ),
            )}
          </strong>
        )}
        {shop !== null && (
          <a class="not-on-paper" href={routeHash("table", "shopping")}>
            {texts.shop.list.link}
          </a>
        )}
        <Improvement ways={ways} />
      </div>
      <SearchWord lay={lay} />
    </div>
  );
}

/** The roll that is cut into, what is used of it, and how far that can be from the best. */
function Needs({ lay: { job, plan, finding } }: { lay: LayState }) {
  const texts = useTexts();
  const lengths = useLengths();
  const language = useLanguage();
  if (plan === null) return <p>{finding === "failed" ? texts.lay.failed : texts.lay.findingFirst}</p>;
  const used = plan.uses.filter(({ usedLength }) => usedLength > 0);
  const roll = used.find(({ stockId }) =>
    job.problem.stocks.some(({ id, kind }) => id === stockId && kind === "roll"),
  );
  const unplaced = plan.unplaced.reduce((sum, { count }) => sum + count, 0);
  if (plan.placements.length === 0) return <p class="lay-length">{texts.lay.nothingFits}</p>;
  if (roll === undefined) return unplaced === 0 ? <p class="lay-length">{texts.lay.allOnLeftovers}</p> : null;
  const { spread } = job.problem;
  const length = lengths.taken(roll.usedLength);
  const { name } = job.material;
  const isShortest = finding === "proven" || (roll.bound !== null && roll.usedLength <= roll.bound + 0.05);
  return (
    <p class="lay-length">
      {spread === undefined
        ? texts.lay.needs(length, name)
        : spread.folded
          ? texts.lay.needsFolded(length, name)
          : texts.lay.needsLayers(length, name, spread.layers)}{" "}
      {roll.bound !== null && unplaced === 0 && (
        <span class="soft">
          {isShortest
            ? texts.lay.proven
            : withTerm(texts.lay.gap(percent(roll.usedLength / roll.bound - 1, language)), <Term id="bound" />)}
        </span>
      )}
    </p>
  );
}

/** The one change that spares most, as a way down to all of them. */
function Improvement({ ways }: { ways: Ways }) {
  const texts = useTexts();
  const lengths = useLengths();
  const best = ways.list.find(({ difference }) => difference < -1);
  if (best === undefined) return null;
  const show = () => document.getElementById("lay-options")?.scrollIntoView({ block: "start" });
  return (
    <button type="button" class="press plain lay-better" disabled={ways.isOld} onClick={show}>
      {texts.lay.ways.best(lengths.taken(-best.difference), best.name)}
    </button>
  );
}

/** How far the search is, and the press that ends it or lets it go on. */
function SearchWord({ lay }: { lay: LayState }) {
  const texts = useTexts();
  const { board } = useWorkbench();
  const { job, plan, finding } = lay;
  const { id } = job.material;
  // "Shortest" is a word about an open roll, and about a job that is whole: limited stock can only be full or not.
  const isShortest = plan !== null && plan.unplaced.length === 0 && plan.uses.some(({ bound }) => bound !== null);
  const word = finding === "proven" && !isShortest ? null : texts.lay.findings[finding];
  return (
    <div class="row lay-search not-on-paper">
      {word !== null && <span class={`search-word ${finding}`}>{word}</span>}
      {finding === "finding" || finding === "waiting" ? (
        <button type="button" class="press" onClick={() => board.pause(id)}>
          {texts.lay.goodEnough}
        </button>
      ) : (
        finding !== "proven" && (
          <button type="button" class="press" onClick={() => board.resume(id)}>
            {finding === "held" ? texts.lay.kept.lookOn : texts.lay.keepLooking}
          </button>
        )
      )}
    </div>
  );
}

function withTerm(sentence: string, term: preact.ComponentChildren) {
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
