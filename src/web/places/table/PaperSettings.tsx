import { OUTPUT_CHOICES, type OutputSettings, type PaperSize } from "../../../core/project/outputSettings.ts";
import { PAPERS, paperOf } from "../../../core/project/papers.ts";
import { ChoiceBlank, LengthBlank } from "../../fields/blanks.tsx";
import { Term } from "../../parts/Term.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { SetOutput } from "./tableParts.ts";

/** Paper of a size that no standard names. */
const OWN = "own";
const SIDE = { minMm: 140, maxMm: 3000 };
const EDGE = { minMm: 0, maxMm: 50 };

/** What the sheets are printed on and what they show, each choice with what follows from it. */
export function PaperSettings({ output, set }: { output: OutputSettings; set: SetOutput }) {
  const words = useTexts().table.paper;
  const { paper } = output;
  const choose = (id: string) => {
    const { width, height } = paperOf(paper);
    set({ paper: id === OWN ? { width, height } : id }, words.paperLabel);
  };
  return (
    <>
      <p class="sentence">
        {words.sentence(
          <ChoiceBlank
            label={words.paperLabel}
            path="output.paper"
            value={typeof paper === "string" ? paper : OWN}
            options={[...PAPERS.map(({ id }) => [id, id] as const), [OWN, words.ownPaper] as const]}
            onValue={choose}
          />,
          <ChoiceBlank<OutputSettings["orientation"]>
            label={words.orientationLabel}
            path="output.orientation"
            value={output.orientation}
            options={OUTPUT_CHOICES.orientation.map((choice) => [choice, words.orientations[choice]] as const)}
            onValue={(orientation) => set({ orientation }, words.orientationLabel)}
          />,
          <LengthBlank
            label={words.marginLabel}
            path="output.pageMargin"
            value={output.pageMargin}
            range={EDGE}
            onValue={(pageMargin, key) => set({ pageMargin }, words.marginLabel, key)}
          />,
          <Term id="overlap" />,
          <LengthBlank
            label={words.overlapLabel}
            path="output.overlap"
            value={output.overlap}
            range={EDGE}
            onValue={(overlap, key) => set({ overlap }, words.overlapLabel, key)}
          />,
        )}
      </p>
      {typeof paper !== "string" && <OwnPaper paper={paper} set={set} />}
      <p class="sentence">
        {words.sheets(
          <ChoiceBlank<OutputSettings["sheets"]>
            label={words.sheetsLabel}
            path="output.sheets"
            value={output.sheets}
            options={OUTPUT_CHOICES.sheets.map((choice) => [choice, words.sheetsShow[choice]])}
            onValue={(sheets) => set({ sheets }, words.sheetsLabel)}
          />,
          <LengthBlank
            label={words.rollLabel}
            path="output.rollWidth"
            value={output.rollWidth}
            range={{ minMm: 200, maxMm: 5000 }}
            onValue={(rollWidth, key) => set({ rollWidth }, words.rollLabel, key)}
          />,
        )}
      </p>
      {output.sheets === "curved" && <p class="soft">{words.curvedTold}</p>}
    </>
  );
}

function OwnPaper({ paper, set }: { paper: PaperSize; set: SetOutput }) {
  const words = useTexts().table.paper;
  const side = (which: "width" | "height", label: string) => (
    <LengthBlank
      label={label}
      path={`output.paper.${which}`}
      value={paper[which]}
      range={SIDE}
      onValue={(mm, key) => set({ paper: { ...paper, [which]: mm } }, label, key)}
    />
  );
  return (
    <p class="sentence">
      {words.ownSize(side("width", words.ownWidth), side("height", words.ownHeight))}{" "}
      <span class="soft">{words.ownTold}</span>
    </p>
  );
}
