import { purchaseOf } from "../../../core/buying/purchase.ts";
import { shopLength } from "../../../core/buying/shopLength.ts";
import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import type { LayPlan } from "../../../core/lay/problem/layProblem.ts";
import { clothUsed, copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import { LEAST_STRIP, type Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { useAnswer } from "../../exports/askExport.ts";
import type { RulerAnswer, RulerStack } from "../../exports/protocol.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { PageMiniature } from "../../parts/PageMiniature.tsx";
import { useTakePlan } from "../../state/takePlan.ts";
import { useChange, useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { differenceWords } from "../lay/LayOptions.tsx";
import { SaveFiles } from "./SaveFiles.tsx";
import type { StackInput } from "./tableParts.ts";

/** The plan that ruler and rotary cutter can cut, what it costs, and its cuts in order. */
export function RulerStackView(input: StackInput) {
  const texts = useTexts();
  return (
    <section class="stack" aria-label={texts.table.stackNames.ruler}>
      <LeastStrip project={input.project} />
      <p class="caution">{texts.table.sheet.caution}</p>
      {input.shown !== null && <MaterialCuts key={input.shown.material.id} input={input} lay={input.shown} />}
    </section>
  );
}

/** How narrow a strip the cuts may take off. */
function LeastStrip({ project }: { project: Project }) {
  const words = useTexts().table.ruler;
  const change = useChange();
  return (
    <p class="sentence not-on-paper">
      {words.leastStrip(
        <LengthBlank
          label={words.leastStripLabel}
          path="leastStrip"
          value={project.leastStrip ?? LEAST_STRIP}
          range={{ minMm: 0, maxMm: 100 }}
          onValue={(leastStrip, key) => change((now) => ({ ...now, leastStrip }), words.leastStripLabel, key)}
        />,
      )}
    </p>
  );
}

function MaterialCuts({ input, lay }: { input: StackInput; lay: LaidCloth }) {
  const texts = useTexts();
  const { project, pieces } = input;
  const language = useLanguage();
  const { plan } = lay;
  const key = JSON.stringify([
    project.output.lengths,
    plan.uses,
    plan.placements,
    pieces.length,
    lay.material.id,
    language,
  ]);
  const answer = useAnswer({ kind: "ruler", project, pieces, language, lay }, key);
  return (
    <section class="sheet stack" aria-label={lay.material.name} aria-busy={answer.state === "working"}>
      <h2>{lay.material.name}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {answer.value !== null && (
        <>
          <RulerPlanWords input={input} lay={lay} answer={answer.value} isOld={answer.state !== "ready"} />
          {answer.value.stacks.map((stack) => (
            <StockCuts
              key={stack.stockId}
              stack={stack}
              material={lay.material.name}
              isOnly={answer.value?.stacks.length === 1}
            />
          ))}
        </>
      )}
    </section>
  );
}

/** The plan for the ruler beside the one on the table, and what can be done with it. */
function RulerPlanWords(props: { input: StackInput; lay: LaidCloth; answer: RulerAnswer; isOld: boolean }) {
  const words = useTexts().table.ruler;
  const takePlan = useTakePlan();
  const { input, lay, answer, isOld } = props;
  const { material, problem } = lay;
  const { plan, isOnTable, stacks } = answer;
  const some = stacks.some(({ cards }) => cards !== null);
  const leftOut = copiesLeftOut(plan);
  return (
    <>
      {isOnTable && answer.found !== null && plan.placements.length > 0 && <p>{words.isOnTable}</p>}
      {!isOnTable && some && <Compared lay={lay} answer={answer} />}
      {leftOut > 0 && <p class="caution">{words.leavesOut(leftOut)}</p>}
      {some && (
        <div class="row not-on-paper">
          {!isOnTable && (
            <button
              type="button"
              class="press main"
              disabled={isOld}
              onClick={() => takePlan(material.id, plan, words.took)}
            >
              {words.take}
            </button>
          )}
          <SaveFiles
            main={isOnTable}
            input={{ ...input, lays: isOld ? [] : [{ material, problem, plan, mode: "ruler" }] }}
            label={words.save}
            outputs={["ruler-pages"]}
          />
        </div>
      )}
      {!isOnTable && some && <p class="soft small">{words.notYet}</p>}
    </>
  );
}

function Compared({ lay, answer }: { lay: LaidCloth; answer: RulerAnswer }) {
  const project = useProject();
  const language = useLanguage();
  const texts = useTexts();
  const lengths = useLengths();
  const words = texts.table.ruler;
  const { material, problem } = lay;
  const [free, byRuler] = [clothUsed(problem, lay.plan), clothUsed(problem, answer.plan)];
  const told = differenceWords(byRuler - free, texts.lay.ways, lengths);
  const shop = (plan: LayPlan) =>
    unbroken(shopLength(purchaseOf(material, plan, project).buyLength, material.price, language));
  const buys =
    purchaseOf(material, lay.plan, project).buyLength + purchaseOf(material, answer.plan, project).buyLength > 0;
  const cuts = (figures: RulerAnswer["found"]) => (figures === null ? words.alongPaper : String(figures.cuts));
  const settings = (figures: RulerAnswer["found"]) => (figures === null ? "–" : words.times(figures.settings));
  return (
    <table class="compared" aria-label={words.compare}>
      <thead>
        <tr>
          <td />
          <th scope="col">{words.onTable}</th>
          <th scope="col">{words.byRuler}</th>
        </tr>
      </thead>
      <tbody>
        {free + byRuler > 0 && (
          <tr>
            <th scope="row">{words.taken}</th>
            <td class="number">{lengths.taken(free)}</td>
            <td>
              <span class="number">{lengths.taken(byRuler)}</span> <span class="soft small">{told}</span>
            </td>
          </tr>
        )}
        {buys && (
          <tr>
            <th scope="row">{words.buy}</th>
            <td class="number">{shop(lay.plan)}</td>
            <td class="number">{shop(answer.plan)}</td>
          </tr>
        )}
        <tr>
          <th scope="row">{words.cuts}</th>
          <td>{cuts(answer.onTable)}</td>
          <td>{cuts(answer.found)}</td>
        </tr>
        <tr>
          <th scope="row">{words.settings}</th>
          <td class="number">{settings(answer.onTable)}</td>
          <td class="number">{settings(answer.found)}</td>
        </tr>
      </tbody>
    </table>
  );
}

/** One stock's cuts in order; a stock beside others is named. */
function StockCuts({ stack, material, isOnly }: { stack: RulerStack; material: string; isOnly: boolean }) {
  const texts = useTexts();
  const words = texts.table.ruler;
  return (
    <div class="stack">
      {!isOnly && <h3>{unbroken(stack.name)}</h3>}
      {stack.cards === null ? (
        <p>{words.none}</p>
      ) : (
        <>
          <p>{words.look}</p>
          <p class="lay-length">{words.count(stack.cuts, stack.settings)}</p>
        </>
      )}
      <DrawingPicture
        class="ruler-plan"
        drawing={stack.drawing}
        name={texts.lay.plan(isOnly ? material : `${material}, ${stack.name}`)}
        pad={8}
      />
      {stack.cards !== null && (
        <>
          <ul class="soft small">
            {stack.notes.map((note) => (
              <li key={note}>{unbroken(note)}</li>
            ))}
          </ul>
          <ol class="cut-steps">
            {stack.cards.map(({ number, words: lines, picture }) => (
              <li key={number}>
                <PageMiniature page={picture} name={lines[0] ?? ""} />
                <p>
                  <strong>{number}.</strong> {unbroken(lines[0] ?? "")}
                </p>
                {lines.slice(1).map((line) => (
                  <p key={line} class="soft small">
                    {unbroken(line)}
                  </p>
                ))}
              </li>
            ))}
          </ol>
        </>
      )}
    </div>
  );
}
