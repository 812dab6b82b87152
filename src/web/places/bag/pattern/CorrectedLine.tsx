import { lineKey } from "../../../../core/patterns/correctPattern.ts";
import type { TablePicture } from "../../../../core/patterns/patternDrawing.ts";
import type { PatternOutline } from "../../../../core/patterns/patternOutline.ts";
import { OutlineDesk } from "../../../parts/outline/OutlineDesk.tsx";
import { contourPath } from "../../../parts/screenPath.ts";
import { TablePhoto } from "../../../parts/TablePhoto.tsx";
import { useBroughtIntoView } from "../../../parts/useBroughtIntoView.ts";
import { useTexts } from "../../../texts/texts.ts";
import type { CorrectingHand } from "./useCorrections.ts";

/** A line of a pattern on the drawing desk, over the photograph and the other lines it came with. */
export function CorrectedLine(props: {
  /** As it was read. */
  line: PatternOutline;
  others: readonly PatternOutline[];
  picture: TablePicture | undefined;
  hand: CorrectingHand;
  onDone: () => void;
}) {
  const { pattern: words, shell } = useTexts();
  const { line, hand, picture } = props;
  const key = lineKey(line);
  const opened = useBroughtIntoView<HTMLElement>();
  const isCorrected = hand.corrections.has(key);
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    // A field keeps its own undo.
    if (event.target instanceof HTMLInputElement) return;
    const letter = event.key.toLowerCase();
    if (letter === "z" && !event.shiftKey) hand.undo();
    else if (letter === "y" || letter === "z") hand.redo();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <section
      ref={opened}
      class="stack corrected-line"
      aria-label={words.correcting(line.name)}
      onKeyDown={onKeyDown}
    >
      <h3>{words.correcting(line.name)}</h3>
      <p class="soft">{picture === undefined ? words.correctAbout : words.correctOverPhoto}</p>
      <OutlineDesk
        name={line.name}
        path={`pattern.lines.${line.name}`}
        contour={hand.corrections.get(key) ?? line.contour}
        under={<Under picture={picture} line={line} others={props.others} />}
        onContour={(contour, joinKey) => hand.correct(key, contour, joinKey)}
      />
      <div class="row">
        <button type="button" class="press" onClick={props.onDone}>
          {words.correctDone}
        </button>
        <button type="button" class="press" disabled={!hand.canUndo} onClick={hand.undo}>
          {shell.undoWord}
        </button>
        <button type="button" class="press" disabled={!hand.canRedo} onClick={hand.redo}>
          {shell.redoWord}
        </button>
        <button type="button" class="press plain" disabled={!isCorrected} onClick={() => hand.letGo(key)}>
          {words.asRead}
        </button>
      </div>
    </section>
  );
}

function Under(props: {
  picture: TablePicture | undefined;
  line: PatternOutline;
  others: readonly PatternOutline[];
}) {
  const { picture } = props;
  return (
    <>
      {picture !== undefined && <TablePhoto picture={picture} />}
      {props.others.map((other) => (
        <path key={other.name} class="ink-other" d={contourPath(other.contour)} />
      ))}
      <path class="ink-read" d={contourPath(props.line.contour)} />
    </>
  );
}
