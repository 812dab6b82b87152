import { useState } from "preact/hooks";
import { clothUsed } from "../../../core/lay/problem/planSums.ts";
import type { OutputId } from "../../../export/outputs.ts";
import { askExport } from "../../exports/askExport.ts";
import { derivedOf } from "../../state/derived.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { type StackInput, savePlanFile } from "./tableParts.ts";

/** One button for a kind of file: works those files out, saves them, and works out nothing else. */
export function SaveFiles(props: {
  input: StackInput;
  label: string;
  main?: boolean;
  outputs: readonly OutputId[];
}) {
  const { board, plans } = useWorkbench();
  const texts = useTexts();
  const language = useLanguage();
  const [state, setState] = useState<"idle" | "working" | "failed" | readonly string[]>("idle");
  const { input } = props;
  // Pages printed tomorrow are to match those of today: the plans they show stay.
  const holdPlans = () => {
    const when = new Date().toLocaleString(language, { dateStyle: "medium", timeStyle: "short" });
    for (const { material, problem, plan } of input.lays)
      if (board.lays.get().get(material.id)?.plan === plan)
        plans.keep(material.id, texts.lay.kept.saved(when), clothUsed(problem, plan));
  };
  const save = async () => {
    setState("working");
    try {
      const { files, missingGlyphs } = await askExport({
        kind: "files",
        outputs: props.outputs,
        project: input.project,
        pieces: input.pieces,
        straps: derivedOf(input.project, language).straps,
        lays: input.lays,
        language,
      });
      const names = files.map((file) => savePlanFile(input.project, file));
      holdPlans();
      setState([...names, ...missingGlyphs.map(texts.table.missingGlyph)]);
    } catch (error) {
      console.error(error);
      setState("failed");
    }
  };
  return (
    <span class="row save-files">
      <button
        type="button"
        class={props.main ? "press main" : "press"}
        disabled={state === "working" || input.lays.length === 0 || !input.maySave}
        onClick={save}
      >
        {props.label}
      </button>
      <span role="status" class="small">
        {state === "working" && texts.table.working}
        {state === "failed" && texts.table.failed}
        {typeof state === "object" && texts.table.saved(state.join(", "))}
      </span>
    </span>
  );
}
