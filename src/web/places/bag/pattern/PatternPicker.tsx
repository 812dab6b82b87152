import { useRef } from "preact/hooks";
import { Icon } from "../../../parts/Icon.tsx";
import { useTexts } from "../../../texts/texts.ts";

/** Asks for a maker's own pattern. */
export function PatternPicker({ onFile }: { onFile: (file: File) => void }) {
  const { pattern } = useTexts();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class="press" title={pattern.kinds} onClick={() => picker.current?.click()}>
        <Icon name="plus" /> {pattern.bringIn}
      </button>
      <input
        ref={picker}
        type="file"
        hidden
        accept=".svg,.dxf,.pdf,image/svg+xml,application/pdf"
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
