import { useState } from "preact/hooks";
import type { MachineSettings } from "../../../core/project/outputSettings.ts";
import { OptionalLengthBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";

const BED = { minMm: 50, maxMm: 10_000 };

/** Asks how large the mat or bed is, which nobody can guess; the machine is added when both sides are known. */
export function NewMachine({ onMachine }: { onMachine: (machine: MachineSettings) => void }) {
  const words = useTexts().table.machine;
  const [asked, setAsked] = useState(false);
  const [sides, setSides] = useState<{ readonly width: number | null; readonly height: number | null }>({
    width: null,
    height: null,
  });
  const put = (next: typeof sides) => {
    setSides(next);
    const { width, height } = next;
    if (width !== null && height !== null) onMachine({ bedWidth: width, bedHeight: height, ...PLAIN_KNIFE });
  };
  if (!asked)
    return (
      <p>
        <button type="button" class="press" onClick={() => setAsked(true)}>
          {words.add}
        </button>
      </p>
    );
  return (
    <p class="sentence">
      {words.newBed(
        <OptionalLengthBlank
          label={words.bedWidth}
          path="output.machine.bedWidth"
          value={sides.width}
          empty={words.bedUnknown}
          range={BED}
          onValue={(width) => put({ ...sides, width })}
        />,
        <OptionalLengthBlank
          label={words.bedHeight}
          path="output.machine.bedHeight"
          value={sides.height}
          empty={words.bedUnknown}
          range={BED}
          onValue={(height) => put({ ...sides, height })}
        />,
      )}
    </p>
  );
}

const PLAIN_KNIFE = { grip: 0, kerf: 0, tool: "knife", bladeOffset: 0, overcut: 0, order: "nearest" } as const;
