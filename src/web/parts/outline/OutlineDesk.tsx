import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Contour } from "../../../core/geometry/contour.ts";
import { contourEdges } from "../../../core/geometry/contourArcs.ts";
import { addCorner, removeCorner } from "../../../core/geometry/contourEdits.ts";
import type { Polygon } from "../../../core/geometry/ring.ts";
import type { Problem } from "../../../core/problems/problem.ts";
import { acrossEdge } from "../../../core/project/outlineEdits.ts";
import { ChoiceBlank } from "../../fields/blanks.tsx";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { useLengths } from "../../fields/units.ts";
import { useRefusal } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { Icon } from "../Icon.tsx";
import { ringPath } from "../screenPath.ts";
import { CornerList } from "./CornerList.tsx";
import type { Held } from "./deskHold.ts";
import { EdgeWords } from "./EdgeWords.tsx";
import { type DeskSteps, OutlineBoard } from "./OutlineBoard.tsx";
import { isFoldEnd } from "./snapping.ts";

interface DeskProps {
  readonly name: string;
  readonly path: string;
  readonly contour: Contour;
  /** Edge over which the other half is mirrored, drawn beside it. */
  readonly fold?: number | null;
  /** Drawn inside the outline, not edited here. */
  readonly flaws?: readonly Polygon[];
  /** Lies under the outline, in mm, y up. */
  readonly under?: ComponentChildren;
  readonly onContour: (contour: Contour, joinKey: string) => void;
  /** Makes an edge the fold; without it no edge is offered for it. */
  readonly onFold?: (edge: number) => void;
  /** Called with a point of the cloth when the inside is pressed; without it the inside does nothing. */
  readonly onInside?: (x: number, y: number) => void;
  readonly insideHint?: string;
}

let visits = 0;
/** What the grid is, as long as the page is open: in mm, 0 for none. */
const chosenSteps = { metric: 5, inches: 6.35 };
const INCH = 25.4;

/**
 * An outline drawn on the table's grid: corners are dragged, edges pulled into arcs, sizes typed; one half mirrors the
 * other where there is a fold. Every drag is one change.
 */
export function OutlineDesk(props: DeskProps) {
  const words = useTexts().outline;
  const { system } = useLengths().units;
  const { contour, path } = props;
  const fold = props.fold ?? null;
  const [snap, setSnap] = useState(chosenSteps[system]);
  const [chosen, setChosen] = useState<Held | null>(null);
  const takeRefusal = useRefusal();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const shape = (next: Contour, joinKey: string): boolean => {
    props.onContour(next, joinKey);
    const problems = takeRefusal();
    setRefused(problems);
    return problems.length === 0;
  };
  const once = () => `${path}@desk${++visits}`;
  const steps = stepsOf(system, snap);
  const total = contour.vertices.length / 3;
  const held = chosen !== null && chosen.index < total ? chosen : null;
  const edge = held?.kind === "edge" && held.index !== fold ? held.index : null;
  const { onFold } = props;
  const canFold = edge !== null && fold === null && onFold !== undefined && isRim(contour, edge);
  const under = (
    <>
      {props.under}
      {props.flaws?.map((flaw) => (
        <path key={ringPath(flaw.outer)} class="tone-flaw ink-flaw" d={ringPath(flaw.outer)} />
      ))}
    </>
  );
  return (
    <figure class="outline-desk">
      <OutlineBoard
        name={props.name}
        path={path}
        contour={contour}
        fold={fold}
        steps={steps}
        under={props.under === undefined && (props.flaws?.length ?? 0) === 0 ? null : under}
        chosen={held}
        onChosen={setChosen}
        onShape={shape}
        onInside={props.onInside}
      />
      <Refusal problems={refused} />
      <div class="desk-words">
        {edge !== null && (
          <EdgeWords
            key={edge}
            contour={contour}
            index={edge}
            fold={fold}
            path={path}
            onContour={props.onContour}
            onNewCorner={() => {
              if (shape(addCorner(contour, edge), once())) setChosen({ kind: "corner", index: edge + 1 });
            }}
            onFold={canFold ? () => onFold?.(edge) : undefined}
          />
        )}
        {held?.kind === "corner" && (
          <p class="sentence">
            <span class="row">
              {words.cornerChosen(held.index + 1)}
              <button
                type="button"
                class="press"
                disabled={total <= 3 || isFoldEnd(contour, fold, held.index)}
                onClick={() => {
                  if (shape(removeCorner(contour, held.index), once())) setChosen(null);
                }}
              >
                <Icon name="bin" /> {words.takeCorner}
              </button>
            </span>
          </p>
        )}
        {held === null && <p class="sentence soft">{words.nothingChosen}</p>}
      </div>
      <figcaption class="soft small not-on-paper">
        {words.hint} {words.keys(system === "metric" ? "1\u00a0mm" : "1/16\u00a0in")} {props.insideHint}
      </figcaption>
      <p class="small">
        {words.snaps(
          <ChoiceBlank
            label={words.snapsLabel}
            path={`${path}.grid`}
            value={String(snap)}
            options={gridsOf(system).map(
              (mm) => [String(mm), mm === 0 ? words.noSnap : gridWord(system, mm)] as const,
            )}
            onValue={(next) => {
              chosenSteps[system] = Number(next);
              setSnap(Number(next));
            }}
          />,
        )}
      </p>
      <CornerList contour={contour} fold={fold} path={path} onContour={props.onContour} />
    </figure>
  );
}

function gridsOf(system: "metric" | "inches"): readonly number[] {
  return system === "metric" ? [10, 5, 1, 0] : [INCH / 2, INCH / 4, INCH / 8, INCH / 16, 0];
}

function gridWord(system: "metric" | "inches", mm: number): string {
  if (system === "metric") return mm === 10 ? "1\u00a0cm" : `${mm}\u00a0mm`;
  return `1/${Math.round(INCH / mm)}\u00a0in`;
}

function stepsOf(system: "metric" | "inches", snap: number): DeskSteps {
  if (system === "metric") return { grid: snap || 5, snap, fine: 1, finest: 0.1 };
  return { grid: snap || INCH / 4, snap, fine: INCH / 16, finest: INCH / 64 };
}

/** Whether an edge is straight with the whole outline on one side of it: a fold can lie there. */
function isRim(contour: Contour, edge: number): boolean {
  const edges = contourEdges(contour);
  if (edges[edge]!.bulge !== 0) return false;
  const { isBeyond } = acrossEdge(contour, edge);
  return !edges.some(({ x0, y0 }) => isBeyond(x0, y0));
}
