import { useState } from "preact/hooks";
import { clothUsed } from "../../../core/lay/problem/planSums.ts";
import type { OutputId } from "../../../export/outputs.ts";
import { askExport } from "../../exports/askExport.ts";
import type { MadeFiles } from "../../exports/protocol.ts";
import { derivedOf } from "../../state/derived.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { type StackInput, savePlanFile } from "./tableParts.ts";

interface SaveButton {
  readonly input: StackInput;
  readonly label: string;
  readonly main?: boolean;
}

/** One button for a kind of file: works those files out, saves them, and works out nothing else. */
export function SaveFiles(props: SaveButton & { outputs: readonly OutputId[] }) {
  const language = useLanguage();
  const { project, pieces, lays } = props.input;
  const make = () => {
    const { straps } = derivedOf(project, language);
    return askExport({ kind: "files", outputs: props.outputs, project, pieces, straps, lays, language });
  };
  return <SaveMade {...props} make={make} />;
}

/** One button that saves what `make` works out, and holds the plans that it was made from. */
export function SaveMade(props: SaveButton & { make: () => Promise<MadeFiles> }) {
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
      const { files, missingGlyphs } = await props.make();
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
