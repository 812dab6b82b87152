import { useState } from "preact/hooks";
import type { CupboardPiece } from "../../../core/cupboard/cupboard.ts";
import { paperOf } from "../../../core/project/papers.ts";
import { askExport } from "../../exports/askExport.ts";
import { downloadFile } from "../../files/projectFiles.ts";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** As the cupboard's own file is called: its labels are titled after it. */
const TITLE = "cupboard.json";

/** One button that saves labels of pieces, each with its code to scan, at true size. */
export function PrintLabels({ pieces }: { pieces: readonly CupboardPiece[] }) {
  const texts = useTexts();
  const words = texts.cupboard;
  const language = useLanguage();
  const { output } = useProject();
  const [state, setState] = useState<"idle" | "working" | "failed" | string>("idle");
  const name = pieces.length === 1 ? `label-${pieces[0]!.code}.pdf` : "labels.pdf";
  const save = async () => {
    setState("working");
    try {
      const telling = { lengths: output.lengths, language };
      const paper = paperOf(output.paper);
      const { bytes, missingGlyphs } = await askExport({
        kind: "shelf-labels",
        pieces,
        telling,
        paper,
        title: TITLE,
      });
      downloadFile(name, new Blob([bytes as BlobPart], { type: "application/pdf" }));
      setState(texts.table.saved([name, ...missingGlyphs.map(texts.table.missingGlyph)].join(", ")));
    } catch (error) {
      console.error(error);
      setState("failed");
    }
  };
  return (
    <span class="row">
      <button
        type="button"
        class="press"
        title={words.labelsAbout}
        disabled={state === "working" || pieces.length === 0}
        onClick={save}
      >
        {pieces.length === 1 ? words.label(pieces[0]!.code) : words.labels(pieces.length)}
      </button>
      <span role="status" class="small">
        {state === "working"
          ? texts.table.working
          : state === "failed"
            ? texts.table.failed
            : state !== "idle" && state}
      </span>
    </span>
  );
}
