import { describePrinter, diagnosePrinter } from "../../../core/drawing/sheets/printer.ts";
import { MOST_SHEETS } from "../../../core/drawing/sheets/tiling.ts";
import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import { outputProblems } from "../../../core/project/outputProblems.ts";
import type { OutputSettings } from "../../../core/project/outputSettings.ts";
import { PAPERS, paperOf } from "../../../core/project/papers.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { FILE_TEXTS } from "../../../core/words/words.ts";
import { useAnswer } from "../../exports/askExport.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { LineKey } from "../../parts/LineKey.tsx";
import { PageMiniature } from "../../parts/PageMiniature.tsx";
import { useChange } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { PaperSettings } from "./PaperSettings.tsx";
import { SaveFiles } from "./SaveFiles.tsx";
import { type SetOutput, type StackInput, shownOnly } from "./tableParts.ts";

/** Sheets whose miniatures are drawn; the page map shows the rest. */
const SHOWN = 24;

/** Full-size pages: their look, their number on every paper, and the printer made true. */
export function PaperStackView(input: StackInput) {
  const texts = useTexts();
  const change = useChange();
  const words = texts.table.paper;
  const { output } = input.project;
  const set = (part: Partial<OutputSettings>, label: string, key?: string) =>
    change((now) => ({ ...now, output: { ...now.output, ...part } }), label, key);
  const faults = outputProblems(output).filter(({ path }) => path === "output.paper");
  return (
    <section class="stack" aria-label={texts.table.stackNames.paper}>
      <div class="sheet stack">
        <PaperSettings output={output} set={set} />
        {faults.length > 0 && <Refusal problems={faults} />}
        <PrinterWords output={output} set={set} />
        <div class="row">
          <SaveFiles main input={shownOnly(input)} label={words.savePages} outputs={["sheets", "patterns"]} />
          <SaveFiles input={shownOnly(input)} label={words.saveRoll} outputs={["long-sheet"]} />
          <SaveFiles input={shownOnly(input)} label={words.saveProjector} outputs={["projector"]} />
        </div>
      </div>
      {input.shown !== null && faults.length === 0 && (
        <MaterialPages key={input.shown.material.id} input={input} lay={input.shown} set={set} />
      )}
    </section>
  );
}

function PrinterWords({ output, set }: { output: OutputSettings; set: SetOutput }) {
  const words = useTexts().table.paper;
  const { testSquare } = output;
  const finding = diagnosePrinter(100, testSquare.x, testSquare.y, PAPERS);
  const measured = (side: "x" | "y", label: string) => (
    <LengthBlank
      label={label}
      path={`output.testSquare.${side}`}
      value={testSquare[side]}
      range={{ minMm: 50, maxMm: 150 }}
      onValue={(mm, key) => set({ testSquare: { ...testSquare, [side]: mm } }, label, key)}
    />
  );
  return (
    <details class="more" open={finding.kind !== "true"}>
      <summary>{words.printer}</summary>
      <p>{words.printerHow}</p>
      <p class="sentence">{words.measured(measured("x", words.measuredX), measured("y", words.measuredY))}</p>
      <p role="status">{describePrinter(finding, useLanguage())}</p>
    </details>
  );
}

function MaterialPages(props: { input: StackInput; lay: LaidCloth; set: SetOutput }) {
  const texts = useTexts();
  const words = texts.table.paper;
  const { project, pieces } = props.input;
  const { lay } = props;
  const language = useLanguage();
  const key = JSON.stringify([
    language,
    project.output,
    project.name,
    lay.plan.seed,
    lay.plan.evaluations,
    lay.plan.uses,
  ]);
  const answer = useAnswer({ kind: "paper", project, pieces, language, lay }, key);
  const stacks = answer.value ?? [];
  const counts = useAnswer(
    answer.state === "ready" ? { kind: "papers", project, pieces, language, lay } : null,
    `${key}${answer.state}`,
  );
  const all = stacks.reduce((sum, { sheets }) => sum + sheets, 0);
  return (
    <section class="sheet stack" aria-label={lay.material.name} aria-busy={answer.state === "working"}>
      <h2>{lay.material.name}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {stacks.length === 0 && answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {answer.state === "ready" && all === 0 && (
        <p>{lay.plan.placements.length === 0 ? texts.lay.nothingFits : words.onlyRectangles}</p>
      )}
      {all > 0 && (
        <div class="row">
          <strong class="lay-length">{unbroken(words.pages(all, paperOf(project.output.paper).id))}</strong>
          {(counts.value ?? [])
            .filter(({ paper, sheets }) => paper !== project.output.paper && sheets < all)
            .map(({ paper, sheets }) => (
              <button
                key={paper}
                type="button"
                class="press plain"
                onClick={() => props.set({ paper }, words.paperLabel)}
              >
                {words.instead(paper, sheets)}
              </button>
            ))}
        </div>
      )}
      {stacks
        .filter(({ sheets }) => sheets > MOST_SHEETS)
        .map(({ stockId, sheets }) => (
          <p key={stockId} class="caution">
            {FILE_TEXTS[language].tooManySheets(
              lay.material.name,
              sheets,
              paperOf(project.output.paper).id,
              MOST_SHEETS,
            )}
          </p>
        ))}
      <LineKey pages={stacks.flatMap(({ pages }) => pages)} />
      {stacks.map((stack) => (
        <ul key={stack.stockId} class="miniatures">
          {stack.pages.slice(0, SHOWN + 1).map((page) => {
            const name = page.name === "map" ? words.map : page.name;
            return (
              <li key={page.name}>
                <PageMiniature page={page} name={words.pageName(name)} />
                <span class="small">{name}</span>
              </li>
            );
          })}
          {stack.pages.length > SHOWN + 1 && <li class="soft">{words.more(stack.pages.length - SHOWN - 1)}</li>}
        </ul>
      ))}
    </section>
  );
}
