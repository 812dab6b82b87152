import { useRef } from "preact/hooks";
import { paperNamed } from "../../../../core/project/papers.ts";
import type { Language } from "../../../../core/units/language.ts";
import { type LengthUnit, MM_PER_UNIT } from "../../../../core/units/lengthWords.ts";
import { downloadFile, fileNameOf } from "../../../files/projectFiles.ts";
import { Icon } from "../../../parts/Icon.tsx";
import { useProject } from "../../../state/workbench.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";

/** Saves the sheet for photographs as a PDF; what makes it is fetched when it is asked for. */
async function savePhotoSheet(unit: LengthUnit, language: Language, title: string): Promise<void> {
  const { photoSheetPdf } = await import("../../../../export/pdf/photoSheetPdf.ts");
  const paper = paperNamed(MM_PER_UNIT[unit] % 25.4 === 0 ? "Letter" : "A4")!;
  const bytes = await photoSheetPdf(paper, language);
  downloadFile(fileNameOf(title, ".pdf"), new Blob([Uint8Array.from(bytes)], { type: "application/pdf" }));
}

/** Asks for a maker's own pattern. */
export function PatternPicker({ onFile }: { onFile: (file: File) => void }) {
  const { pattern } = useTexts();
  const project = useProject();
  const language = useLanguage();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class="press" title={pattern.kinds} onClick={() => picker.current?.click()}>
        <Icon name="plus" /> {pattern.bringIn}
      </button>
      <button
        type="button"
        class="press plain"
        title={pattern.photoSheetAbout}
        onClick={() => void savePhotoSheet(project.unit, language, pattern.photoSheet)}
      >
        {pattern.photoSheet}
      </button>
      <input
        ref={picker}
        type="file"
        hidden
        accept=".svg,.dxf,.pdf,.png,.jpg,.jpeg,image/svg+xml,application/pdf,image/png,image/jpeg"
        data-picker="pattern"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen once more after it was mended elsewhere.
          event.currentTarget.value = "";
          if (file !== undefined) onFile(file);
        }}
      />
    </>
  );
}
