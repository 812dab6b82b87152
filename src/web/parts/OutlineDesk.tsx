import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Contour } from "../../core/geometry/contour.ts";
import { type ContourEdge, contourBox, contourEdges } from "../../core/geometry/contourArcs.ts";
import type { Polygon } from "../../core/geometry/ring.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { LengthBlank } from "../fields/blanks.tsx";
import { Refusal } from "../fields/TypedBlank.tsx";
import { useLengths } from "../fields/units.ts";
import { useRefusal } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";
import { Icon } from "./Icon.tsx";
import { addCorner, type Corner, cornerAt, cornersOf, moveCorner, removeCorner } from "../../core/geometry/contourEdits.ts";
import { contourPath, ringPath } from "./screenPath.ts";

interface DeskProps {
  readonly name: string;
  readonly path: string;
  readonly contour: Contour;
  /** Drawn inside the outline, not edited here. */
  readonly flaws?: readonly Polygon[];
  readonly onContour: (contour: Contour, joinKey: string) => void;
  /** Called with a point of the cloth when the inside is pressed; without it the inside does nothing. */
  readonly onInside?: (x: number, y: number) => void;
  readonly insideHint?: string;
}

/** A corner being dragged. */
interface HeldCorner {
  /** Where it was last put, and its number then. */
  readonly place: Corner;
  readonly index: number;
  readonly key: string;
  readonly box: ReturnType<typeof contourBox>;
}

let visits = 0;
const GRID = 5;

/**
 * An outline that is drawn by its corners: drag one, press a plus on an edge for a new one, or type them.
 * Keys on a corner: arrows move it, Delete takes it away.
 */
export function OutlineDesk(props: DeskProps) {
  const texts = useTexts();
  const lengths = useLengths();
  const svg = useRef<SVGSVGElement>(null);
  const [held, setHeld] = useState<HeldCorner | null>(null);
  const takeRefusal = useRefusal();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  /** Whether the new contour was taken. */
  const shape = (contour: Contour, joinKey: string): boolean => {
    props.onContour(contour, joinKey);
    const problems = takeRefusal();
    setRefused(problems);
    return problems.length === 0;
  };
  const moved = useRef<{ readonly place: Corner; readonly index: number } | null>(null);
  const handles = useRef<(SVGGElement | null)[]>([]);
  const corners = cornersOf(props.contour);
  // A corner moved across its outline has another number: the keyboard stays with the corner, not with the number.
  useLayoutEffect(() => {
    if (moved.current === null) return;
    const { place, index } = moved.current;
    moved.current = null;
    const now = cornerAt(props.contour, place, index);
    if (now !== index) handles.current[now]?.focus();
  }, [props.contour]);
  const box = held?.box ?? contourBox(props.contour);
  const span = Math.max(box.maxX - box.minX, box.maxY - box.minY, 10);
  const pad = span * 0.12;
  const dot = span * 0.022;
  const viewBox = [box.minX - pad, -box.maxY - pad, box.maxX - box.minX + 2 * pad, box.maxY - box.minY + 2 * pad];
  const pointOf = (event: PointerEvent): readonly [number, number] => {
    const matrix = svg.current?.getScreenCTM()?.inverse();
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    return [point.x, -point.y];
  };
  const toGrid = (mm: number) => Math.round(mm / GRID) * GRID;
  const onPointerMove = (event: PointerEvent) => {
    if (held === null) return;
    const [x, y] = pointOf(event);
    const index = cornerAt(props.contour, held.place, held.index);
    const place = { x: toGrid(x), y: toGrid(y) };
    const taken = shape(moveCorner(props.contour, index, place.x, place.y), held.key);
    setHeld({ ...held, index, place: taken ? place : held.place });
  };
  const onCornerKey = (event: KeyboardEvent, index: number) => {
    const corner = corners[index]!;
    const step = event.shiftKey ? 1 : GRID;
    const moves: Record<string, readonly [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    };
    const move = moves[event.key];
    if (move !== undefined) {
      const place = { x: corner.x + move[0], y: corner.y + move[1] };
      if (shape(moveCorner(props.contour, index, place.x, place.y), `${props.path}-keys`))
        moved.current = { place, index };
    } else if (event.key === "Delete" && corners.length > 3)
      shape(removeCorner(props.contour, index), `${props.path}@${++visits}`);
    else return;
    event.preventDefault();
  };
  const onInside = (event: MouseEvent) => {
    if (props.onInside === undefined) return;
    const [x, y] = pointOf(event as PointerEvent);
    props.onInside(toGrid(x), toGrid(y));
  };
  return (
    <figure class="outline-desk">
      <svg
        ref={svg}
        class="drawing"
        viewBox={viewBox.join(" ")}
        role="group"
        aria-label={texts.outline.label(props.name)}
        onPointerMove={onPointerMove}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        <g transform="scale(1 -1)">
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the flaw list below does the same by keys */}
          <path
            class={`tone-cloth ink-cut ${props.onInside === undefined ? "" : "pressable"}`}
            d={contourPath(props.contour)}
            onClick={onInside}
          />
          {props.flaws?.map((flaw) => (
            <path key={ringPath(flaw.outer)} class="tone-flaw ink-flaw" d={ringPath(flaw.outer)} />
          ))}
          {contourEdges(props.contour).map((edge, i) => {
            const [x, y] = edgeMiddle(edge);
            return (
              <g
                key={`${i}+`}
                class="corner-add"
                role="button"
                tabindex={0}
                aria-label={texts.outline.addAfter(i + 1)}
                transform={`translate(${x} ${y}) scale(${dot})`}
                onClick={() => shape(addCorner(props.contour, i), `${props.path}@${++visits}`)}
                onKeyDown={(event) => {
                  if (event.key === "Enter" || event.key === " ") {
                    event.preventDefault();
                    shape(addCorner(props.contour, i), `${props.path}@${++visits}`);
                  }
                }}
              >
                <circle class="reach" r="1.6" />
                <path d="M-0.8 0H0.8M0 -0.8V0.8" />
              </g>
            );
          })}
          {corners.map((corner, i) => (
            <g
              key={`${i}o`}
              ref={(element: SVGGElement | null) => {
                handles.current[i] = element;
              }}
              class="corner"
              role="button"
              tabindex={0}
              aria-label={texts.outline.corner(i + 1, lengths.size(corner.x), lengths.size(corner.y))}
              transform={`translate(${corner.x} ${corner.y}) scale(${dot})`}
              onPointerDown={(event) => {
                event.preventDefault();
                svg.current?.setPointerCapture(event.pointerId);
                setHeld({ place: corners[i]!, index: i, key: `${props.path}@${++visits}`, box });
              }}
              onKeyDown={(event) => onCornerKey(event, i)}
            >
              <circle class="reach" r="1.8" />
              <circle r="0.9" />
            </g>
          ))}
        </g>
      </svg>
      <figcaption class="soft small">
        {texts.outline.hint} {props.insideHint}
      </figcaption>
      <Refusal problems={refused} />
      <details>
        <summary>{texts.outline.type}</summary>
        <ol class="corner-list">
          {corners.map((corner, i) => (
            <li key={i}>
              <LengthBlank
                label={texts.outline.along(i + 1)}
                path={`${props.path}[${i}].x`}
                value={corner.x}
                range={REACH}
                onValue={(x, key) => props.onContour(moveCorner(props.contour, i, x, corner.y), key)}
              />
              <LengthBlank
                label={texts.outline.across(i + 1)}
                path={`${props.path}[${i}].y`}
                value={corner.y}
                range={REACH}
                onValue={(y, key) => props.onContour(moveCorner(props.contour, i, corner.x, y), key)}
              />
              <button
                type="button"
                class="press plain"
                disabled={corners.length <= 3}
                aria-label={texts.outline.removeCorner(i + 1)}
                onClick={() => shape(removeCorner(props.contour, i), `${props.path}@${++visits}`)}
              >
                <Icon name="bin" />
              </button>
            </li>
          ))}
        </ol>
      </details>
    </figure>
  );
}

/** Middle of an edge; of an arc, the point half way along it. */
function edgeMiddle({ x0, y0, x1, y1, bulge }: ContourEdge): readonly [number, number] {
  return [(x0 + x1 + bulge * (y1 - y0)) / 2, (y0 + y1 - bulge * (x1 - x0)) / 2];
}

const REACH = { minMm: -20_000, maxMm: 20_000 };
