import type { ComponentChildren } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Contour } from "../../../core/geometry/contour.ts";
import { contourEdges } from "../../../core/geometry/contourArcs.ts";
import {
  addCorner,
  bowEdge,
  type Corner,
  cornerAt,
  cornersOf,
  edgePoint,
  moveCorner,
  removeCorner,
} from "../../../core/geometry/contourEdits.ts";
import { mirroredOver, wholeBox } from "../../../core/project/outlineEdits.ts";
import { useLengths } from "../../fields/units.ts";
import { useTexts } from "../../texts/texts.ts";
import { contourPath } from "../screenPath.ts";
import { EdgeSize, WholeSize } from "./DeskSizes.tsx";
import { ARROWS, CornerHandle, DeskGrid, EdgeHandle, FoldLine, measuredEdges } from "./deskHandles.tsx";
import { type Draft, type Held, pulledTo } from "./deskHold.ts";
import { REACH, type Target, targetAt, toScreen, toTable } from "./deskView.ts";
import { useDeskZoom, zoomByKey } from "./deskZoom.ts";
import { heldToFold, isFoldEnd } from "./snapping.ts";
import { ZoomButtons } from "./ZoomButtons.tsx";

/** Steps of the desk, mm. */
export interface DeskSteps {
  /** Lines of the grid, also while snapping is let go of. */
  readonly grid: number;
  /** What places are drawn to; 0 for none. */
  readonly snap: number;
  /** One millimetre or a sixteenth of an inch. */
  readonly fine: number;
  /** Places are written no finer than this. */
  readonly finest: number;
}

interface BoardProps {
  readonly name: string;
  readonly path: string;
  readonly contour: Contour;
  /** The edge over which the other half is mirrored. */
  readonly fold: number | null;
  readonly steps: DeskSteps;
  /** Lies under the outline, in mm, y up: flaws, a photograph, other lines. */
  readonly under: ComponentChildren;
  readonly chosen: Held | null;
  readonly onChosen: (chosen: Held | null) => void;
  /** Whether the new contour was taken. */
  readonly onShape: (contour: Contour, joinKey: string) => boolean;
  readonly onInside?: ((x: number, y: number) => void) | undefined;
}

/** A press that has not yet moved, or moves. */
interface Press {
  readonly target: Target;
  readonly at: readonly [number, number];
  readonly pointer: number;
  readonly key: string;
}

/** A hand trembles by this much without meaning to drag, px. */
const TREMBLE = 4;
/** So near to another corner's level a corner is taken there, px. */
const LEVEL = 9;
/** A shorter edge has no handle until it is chosen, px. */
const ROOM_FOR_HANDLE = 54;

let visits = 0;

/** The outline on its grid, by mouse, finger and keys. What is dragged is one change when it is let go. */
export function OutlineBoard(props: BoardProps) {
  const { contour, fold, steps, chosen, onChosen } = props;
  const texts = useTexts().outline;
  const lengths = useLengths();
  const [draft, setDraft] = useState<Draft | null>(null);
  const press = useRef<Press | null>(null);
  const keyRun = useRef("");
  const moved = useRef<{ readonly place: Corner; readonly index: number } | null>(null);
  const corner = useRef<(SVGGElement | null)[]>([]);
  const edge = useRef<(SVGGElement | null)[]>([]);
  const shown = draft?.contour ?? contour;
  const mirrored = fold === null ? null : mirroredOver(shown, fold);
  const zoom = useDeskZoom(wholeBox(contour, fold), draft !== null, () => press.current !== null);
  const { desk, view } = zoom;
  const corners = cornersOf(shown);
  const edges = contourEdges(shown);
  // A corner moved across its outline has another number: the keyboard stays with the corner, not with the number.
  useLayoutEffect(() => {
    if (moved.current === null) return;
    const { place, index } = moved.current;
    moved.current = null;
    const now = cornerAt(contour, place, index);
    if (now !== index) corner.current[now]?.focus();
  }, [contour]);
  // What was chosen may be gone with an undone step.
  useEffect(() => {
    if (chosen !== null && chosen.index >= contour.vertices.length / 3) onChosen(null);
  }, [contour, chosen]);
  const hasHandle = (i: number): boolean => {
    if (i === fold) return false;
    if (chosen?.kind === "edge" && chosen.index === i) return true;
    const { x0, y0, x1, y1 } = edges[i]!;
    return Math.hypot(x1 - x0, y1 - y0) * view.scale >= ROOM_FOR_HANDLE;
  };
  const pixelOf = (event: PointerEvent | MouseEvent): readonly [number, number] => {
    const own = desk.current!.getBoundingClientRect();
    return [event.clientX - own.left, event.clientY - own.top];
  };
  const snapping = (isLetGo: boolean) => ({
    step: isLetGo ? 0 : steps.snap,
    reach: isLetGo || steps.snap === 0 ? 0 : LEVEL / view.scale,
    finest: steps.finest,
  });
  const onPointerDown = (event: PointerEvent) => {
    if (zoom.isPinched()) return letGo();
    if (event.button !== 0 || press.current !== null) return;
    const at = pixelOf(event);
    const target = targetAt(view, corners, edges, hasHandle, at);
    if (target === null || (target.kind === "edge" && target.index === fold)) return;
    event.preventDefault();
    press.current = { target, at, pointer: event.pointerId, key: `${props.path}@${++visits}` };
    desk.current?.setPointerCapture(event.pointerId);
    const handle = target.kind === "corner" ? corner.current[target.index] : edge.current[target.index];
    handle?.focus({ preventScroll: true });
    onChosen({ kind: target.kind, index: target.index });
  };
  const onPointerMove = (event: PointerEvent) => {
    const now = press.current;
    if (now === null || event.pointerId !== now.pointer) return;
    const at = pixelOf(event);
    if (draft === null && Math.hypot(at[0] - now.at[0], at[1] - now.at[1]) < TREMBLE) return;
    const { kind, index } = now.target;
    const letGo = snapping(event.shiftKey);
    const pull = { snapping: letGo, fine: event.shiftKey ? steps.finest : steps.fine, fold };
    // From where the corner is, not from where the finger took it.
    const [x, y] = toTable(view, ...grabbed(now, at));
    setDraft(pulledTo(draft ?? { contour, guides: [], isStopped: false }, { kind, index }, x, y, pull));
  };
  const grabbed = ({ target, at: from }: Press, at: readonly [number, number]): readonly [number, number] => {
    if (target.kind === "edge") return at;
    const own = cornersOf(contour)[target.index]!;
    const [px, py] = toScreen(view, own.x, own.y);
    return [at[0] + px - from[0], at[1] + py - from[1]];
  };
  const onPointerUp = () => {
    const now = press.current;
    press.current = null;
    if (now !== null && draft !== null && draft.contour !== contour) props.onShape(draft.contour, now.key);
    setDraft(null);
  };
  const letGo = () => {
    press.current = null;
    setDraft(null);
  };
  const onDoubleClick = (event: MouseEvent) => {
    const target = targetAt(view, [], edges, () => false, pixelOf(event));
    if (target?.kind === "edge" && target.index !== fold) newCorner(target.index, target.share);
  };
  const newCorner = (index: number, share = 0.5) => {
    if (props.onShape(addCorner(contour, index, share), `${props.path}@${++visits}`))
      onChosen({ kind: "corner", index: index + 1 });
  };
  const onClick = (event: MouseEvent) => {
    if (props.onInside === undefined || targetAt(view, corners, edges, hasHandle, pixelOf(event)) !== null) return;
    const [x, y] = toTable(view, ...pixelOf(event));
    const grid = (mm: number) => Math.round(mm / steps.grid) * steps.grid;
    props.onInside(grid(x), grid(y));
  };
  const onCornerKey = (event: KeyboardEvent, index: number) => {
    const way = ARROWS[event.key];
    if (way !== undefined) {
      const step = event.shiftKey ? steps.fine : steps.snap || steps.grid;
      const from = corners[index]!;
      const place = heldToFold(contour, fold, index, { x: from.x + way[0] * step, y: from.y + way[1] * step });
      if (props.onShape(moveCorner(contour, index, place.x, place.y), keyRun.current))
        moved.current = { place, index };
    } else if (event.key === "Delete" && corners.length > 3 && !isFoldEnd(contour, fold, index)) {
      props.onShape(removeCorner(contour, index), `${props.path}@${++visits}`);
    } else return;
    event.preventDefault();
  };
  const onEdgeKey = (event: KeyboardEvent, index: number) => {
    const { x0, y0, x1, y1, bulge } = edges[index]!;
    const rise = (bulge * Math.hypot(x1 - x0, y1 - y0)) / 2;
    const step = event.shiftKey ? steps.fine : steps.snap || steps.grid;
    if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      const more = event.key === "ArrowUp" ? step : -step;
      // Through straight: what rounding leaves is no arc.
      const next = Math.abs(rise + more) < 1e-6 ? 0 : rise + more;
      props.onShape(bowEdge(contour, index, next), keyRun.current);
    } else if (event.key === "Delete") props.onShape(bowEdge(contour, index, 0), `${props.path}@${++visits}`);
    else if (event.key === "Enter" || event.key === " ") newCorner(index);
    else return;
    event.preventDefault();
  };
  const focused = (next: Held) => {
    keyRun.current = `${props.path}.keys@${++visits}`;
    if (press.current !== null) return;
    onChosen(next);
    const { x, y } = corners[next.index]!;
    const [px, py] = next.kind === "corner" ? [x, y] : edgePoint(edges[next.index]!, 0.5);
    if (zoom.isCloser) zoom.show(...toScreen(view, px, py));
  };
  const measured = measuredEdges(chosen, edges.length).filter((i) => i !== fold);
  const scaled = `translate(${-view.left * view.scale} ${view.top * view.scale}) scale(${view.scale} ${-view.scale})`;
  return (
    <>
      <svg
        ref={desk}
        class={`drawing desk-board ${draft === null ? "" : "is-held"} ${zoom.isCloser ? "is-closer" : ""} ${draft?.isStopped ? "is-stopped" : ""}`}
        height={view.height}
        role="group"
        aria-label={texts.label(props.name)}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={letGo}
        onClick={onClick}
        onDblClick={onDoubleClick}
        onKeyDown={(event) => {
          if (event.key === "Escape" && draft !== null) {
            event.stopPropagation();
            letGo();
          } else zoomByKey(event, zoom);
        }}
      >
        <DeskGrid view={view} step={steps.grid} />
        <g transform={scaled}>
          {mirrored !== null && <path class="tone-cloth mirrored-half" d={contourPath(mirrored)} />}
          <path
            class={`tone-cloth ink-cut desk-outline ${props.onInside === undefined ? "" : "pressable"}`}
            d={contourPath(shown)}
          />
          {props.under}
          {props.under !== null && (
            <>
              <path class="desk-halo" d={contourPath(shown)} />
              <path class="ink-cut desk-line" d={contourPath(shown)} />
            </>
          )}
          {fold !== null && <FoldLine edge={edges[fold]!} />}
        </g>
        {draft?.guides.map(({ x, y }) => {
          const own = corners[press.current?.target.index ?? 0]!;
          const [x0, y0] = toScreen(view, x, y);
          const [x1, y1] = toScreen(view, own.x, own.y);
          return <path key={`${x} ${y}`} class="desk-guide" d={`M${x0} ${y0}L${x1} ${y1}`} />;
        })}
        <WholeSize box={wholeBox(shown, fold)} view={view} />
        {measured.map((i) => (
          <EdgeSize key={i} edge={edges[i]!} view={view} />
        ))}
        {edges.map((one, i) => {
          if (i === fold) return null;
          const [x, y] = toScreen(view, ...edgePoint(one, 0.5));
          return (
            <EdgeHandle
              key={`${i}+`}
              handle={(element) => {
                edge.current[i] = element;
              }}
              label={texts.edgeHandle(i + 1, lengths.size(Math.hypot(one.x1 - one.x0, one.y1 - one.y0)))}
              x={x}
              y={y}
              reach={REACH}
              isTight={!hasHandle(i)}
              isChosen={chosen?.kind === "edge" && chosen.index === i}
              onFocus={() => focused({ kind: "edge", index: i })}
              onKeyDown={(event) => onEdgeKey(event, i)}
            />
          );
        })}
        {corners.map(({ x, y }, i) => {
          const [px, py] = toScreen(view, x, y);
          return (
            <CornerHandle
              key={`${i}o`}
              handle={(element) => {
                corner.current[i] = element;
              }}
              label={texts.corner(i + 1, lengths.size(x), lengths.size(y))}
              x={px}
              y={py}
              reach={REACH}
              isChosen={chosen?.kind === "corner" && chosen.index === i}
              onFocus={() => focused({ kind: "corner", index: i })}
              onKeyDown={(event) => onCornerKey(event, i)}
            />
          );
        })}
      </svg>
      <ZoomButtons zoom={zoom} />
    </>
  );
}
