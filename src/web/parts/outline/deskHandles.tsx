import type { contourEdges } from "../../../core/geometry/contourArcs.ts";
import type { Held } from "./deskHold.ts";
import { type DeskView, toScreen, toTable } from "./deskView.ts";

interface HandleProps {
  readonly handle: (element: SVGGElement | null) => void;
  readonly label: string;
  /** px. */
  readonly x: number;
  readonly y: number;
  readonly reach: number;
  readonly isChosen: boolean;
  readonly onFocus: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** A corner to take hold of. The board itself tells what is pressed; this is its look, its keys and its name. */
export function CornerHandle(props: HandleProps) {
  return (
    <Handle {...props} class="corner">
      <circle r={props.isChosen ? 8 : 6.5} />
    </Handle>
  );
}

/** The middle of an edge, to pull it into an arc. Short edges show theirs only when chosen. */
export function EdgeHandle(props: HandleProps & { isTight: boolean }) {
  return (
    <Handle {...props} class={`edge-middle ${props.isTight ? "is-tight" : ""}`}>
      <path d="M-7 0 0 -7 7 0 0 7Z" />
    </Handle>
  );
}

function Handle(props: HandleProps & { class: string; children: preact.ComponentChildren }) {
  return (
    <g
      ref={props.handle}
      class={`${props.class} ${props.isChosen ? "is-chosen" : ""}`}
      role="button"
      tabindex={0}
      aria-label={props.label}
      transform={`translate(${props.x} ${props.y})`}
      onFocus={props.onFocus}
      onKeyDown={props.onKeyDown}
    >
      <circle class="reach" r={props.reach} />
      {props.children}
    </g>
  );
}

/** Lines nearer to each other than this are left out, px. */
const LEAST_APART = 7;

/** The table's grid: a line a step, every second, fourth … where they would stand too close. */
export function DeskGrid({ view, step }: { view: DeskView; step: number }) {
  let apart = step;
  while (apart * view.scale < LEAST_APART) apart *= 2;
  const [left, top] = toTable(view, 0, 0);
  const [right, bottom] = toTable(view, view.width, view.height);
  let path = "";
  for (let i = Math.ceil(left / apart); i * apart <= right; i++)
    path += `M${Math.round(toScreen(view, i * apart, 0)[0])} 0V${view.height}`;
  for (let i = Math.ceil(bottom / apart); i * apart <= top; i++)
    path += `M0 ${Math.round(toScreen(view, 0, i * apart)[1])}H${Math.round(view.width)}`;
  return <path class="desk-grid" d={path} />;
}

/** Steps of the arrow keys. */
export const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The edges whose lengths are written: the chosen one, or those that touch the chosen corner. */
export function measuredEdges(chosen: Held | null, total: number): readonly number[] {
  if (chosen === null || chosen.index >= total) return [];
  return chosen.kind === "edge" ? [chosen.index] : [(chosen.index + total - 1) % total, chosen.index];
}

/** The edge on the fold. */
export function FoldLine({ edge: { x0, y0, x1, y1 } }: { edge: ReturnType<typeof contourEdges>[number] }) {
  return <path class="ink-fold desk-fold" d={`M${x0} ${y0}L${x1} ${y1}`} />;
}
