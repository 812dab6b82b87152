import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import { outputProblems } from "../../../core/project/outputProblems.ts";
import { type MachineSettings, OUTPUT_CHOICES } from "../../../core/project/outputSettings.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { laserRefusal } from "../../../export/laserRefusal.ts";
import { useAnswer } from "../../exports/askExport.ts";
import { ChoiceBlank, LengthBlank } from "../../fields/blanks.tsx";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { PageMiniature } from "../../parts/PageMiniature.tsx";
import { Term } from "../../parts/Term.tsx";
import { useChange } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { FileSettings } from "./FileSettings.tsx";
import { NewMachine } from "./NewMachine.tsx";
import { SaveFiles } from "./SaveFiles.tsx";
import { type SetOutput, type StackInput, savePlanFile, shownOnly } from "./tableParts.ts";

/** Files for a cutting machine: the whole plan, or one mat after the other. */
export function MachineStack(input: StackInput) {
  const texts = useTexts();
  const change = useChange();
  const words = texts.table.machine;
  const { output } = input.project;
  const { machine } = output;
  const setOutput: SetOutput = (part, label, key) =>
    change((now) => ({ ...now, output: { ...now.output, ...part } }), label, key);
  const set = (next: MachineSettings | null, label: string, key?: string) =>
    setOutput({ machine: next }, label, key);
  const faults = outputProblems(output).filter(({ path }) => path !== "output.paper");
  const length = (
    field: "bedWidth" | "bedHeight" | "grip" | "kerf" | "bladeOffset" | "overcut",
    label: string,
    range: { minMm: number; maxMm: number },
  ) =>
    machine !== null && (
      <LengthBlank
        label={label}
        path={`output.machine.${field}`}
        value={machine[field]}
        fine={!field.startsWith("bed")}
        range={range}
        onValue={(mm, key) => set({ ...machine, [field]: mm }, label, key)}
      />
    );
  const language = useLanguage();
  const refusal = input.shown === null ? null : laserRefusal(input.shown.material, output, language);
  return (
    <section class="stack" aria-label={texts.table.stackNames.machine}>
      <div class="sheet stack">
        <p>{words.whole}</p>
        {refusal === null ? (
          <div class="row">
            <SaveFiles input={shownOnly(input)} label={words.saveSvg} outputs={["svg"]} />
            <SaveFiles input={shownOnly(input)} label={words.saveDxf} outputs={["dxf"]} />
          </div>
        ) : (
          <p class="caution">{unbroken(refusal)}</p>
        )}
        {machine?.tool !== "knife" && <p class="caution">{words.laserCaution}</p>}
        <FileSettings output={output} set={setOutput} />
        {faults.length > 0 && <Refusal problems={faults} />}
        {machine === null ? (
          <NewMachine onMachine={(next) => set(next, words.add)} />
        ) : (
          <>
            <p class="sentence">
              {words.sentence(
                <ChoiceBlank<MachineSettings["tool"]>
                  label={words.toolLabel}
                  path="output.machine.tool"
                  value={machine.tool}
                  options={OUTPUT_CHOICES.tool.map((choice) => [choice, words.tools[choice]] as const)}
                  onValue={(tool) =>
                    set(
                      { ...machine, tool, ...(tool === "laser" ? { bladeOffset: 0, overcut: 0 } : { kerf: 0 }) },
                      words.toolLabel,
                    )
                  }
                />,
                length("bedWidth", words.bedWidth, { minMm: 50, maxMm: 10_000 }),
                length("bedHeight", words.bedHeight, { minMm: 50, maxMm: 10_000 }),
                length("grip", words.grip, { minMm: 0, maxMm: 100 }),
                <Term id="kerf" />,
                length("kerf", words.kerf, { minMm: 0, maxMm: 5 }),
              )}
            </p>
            <p class="sentence">
              {machine.tool === "knife" &&
                words.knife(
                  length("bladeOffset", words.bladeOffset, { minMm: 0, maxMm: 5 }),
                  length("overcut", words.overcut, { minMm: 0, maxMm: 10 }),
                )}{" "}
              {words.ordered(
                <ChoiceBlank<MachineSettings["order"]>
                  label={words.orderLabel}
                  path="output.machine.order"
                  value={machine.order}
                  options={OUTPUT_CHOICES.order.map((choice) => [choice, words.orders[choice]] as const)}
                  onValue={(order) => set({ ...machine, order }, words.orderLabel)}
                />,
              )}
            </p>
            <ul class="soft">
              {machine.kerf > 0 && <li>{words.kerfTold}</li>}
              {machine.bladeOffset > 0 && <li>{words.bladeTold}</li>}
              {machine.overcut > 0 && <li>{words.overcutTold}</li>}
              <li>{words.orderTold[machine.order]}</li>
            </ul>
            <p>
              <button type="button" class="press" onClick={() => set(null, words.remove)}>
                {words.remove}
              </button>
            </p>
          </>
        )}
        <p class="caution">{words.caution}</p>
      </div>
      {input.shown !== null &&
        faults.length === 0 &&
        (machine === null ? (
          <WholeSheets key={input.shown.material.id} input={input} lay={input.shown} />
        ) : (
          <MaterialMats key={input.shown.material.id} input={input} lay={input.shown} />
        ))}
    </section>
  );
}

/** Without a mat: every stock's sheet as it is sent. */
function WholeSheets({ input, lay }: { input: StackInput; lay: LaidCloth }) {
  const texts = useTexts();
  const { project, pieces } = input;
  const language = useLanguage();
  const key = JSON.stringify([language, project.output, lay.plan.uses, lay.plan.placements, pieces.length]);
  const answer = useAnswer({ kind: "drawings", project, pieces, language, lay }, key);
  return (
    <section class="sheet stack" aria-label={lay.material.name} aria-busy={answer.state === "working"}>
      <h2>{lay.material.name}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {(answer.value ?? []).map(({ stockId, name, drawing }) => (
        <figure key={stockId}>
          <DrawingPicture class="ruler-plan" drawing={drawing} name={`${lay.material.name}, ${name}`} pad={8} />
          <figcaption class="small">{unbroken(name)}</figcaption>
        </figure>
      ))}
    </section>
  );
}

function MaterialMats({ input, lay }: { input: StackInput; lay: LaidCloth }) {
  const texts = useTexts();
  const words = texts.table.machine;
  const { project, pieces } = input;
  const { kind, coating, polymer } = lay.material;
  const { output } = project;
  const language = useLanguage();
  const key = JSON.stringify([language, output, kind, coating, polymer, lay.plan.uses, pieces.length]);
  const answer = useAnswer({ kind: "mats", project, pieces, language, lay }, key);
  const { mats = [], tooLarge = [] } = answer.value ?? {};
  return (
    <section class="sheet stack" aria-label={lay.material.name} aria-busy={answer.state === "working"}>
      <h2>{lay.material.name}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {tooLarge.length > 0 && <p class="caution">{words.tooLarge(tooLarge.join("; "))}</p>}
      {mats.length > 0 && <p class="lay-length">{words.mats(mats.length)}</p>}
      <ul class="miniatures">
        {mats.map(({ page, files }) => (
          <li key={page.name}>
            <PageMiniature page={page} name={page.name} />
            <span class="row">
              {files.map((file) => (
                <button
                  key={file.name}
                  type="button"
                  class="press"
                  disabled={!input.maySave}
                  onClick={() => savePlanFile(project, file)}
                >
                  {file.name.endsWith(".svg") ? "SVG" : "DXF"}
                  <span class="only-read"> {page.name}</span>
                </button>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
