import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Box } from "../../../core/geometry/box.ts";
import { type DeskView, toTable, useSteadyView } from "./deskView.ts";

/** The desk, seen as near as she wants. */
export interface DeskZoom {
  readonly desk: RefObject<SVGSVGElement | null>;
  readonly view: DeskView;
  readonly isCloser: boolean;
  /** So many times closer, what lies at a place of the screen stays there; px. The middle unless said. */
  by(factor: number, px?: number, py?: number): void;
  /** The whole outline again. */
  whole(): void;
  /** Brings a place of the screen to the middle where it is out of sight. */
  show(px: number, py: number): void;
  /** More than one finger is down: nothing is taken hold of. */
  isPinched(): boolean;
}

/** How much closer, and what lies in the middle, mm. */
interface Closer {
  readonly times: number;
  readonly x: number;
  readonly y: number;
}

/** Most that the desk is closer: a millimetre is a finger wide on a bag's side. */
const CLOSEST = 24;
/** A step of a key or a button. */
export const ZOOM_STEP = 1.5;
/** So near the rim of the desk something is out of sight, px. */
const RIM = 24;

/**
 * The view of a box on the desk, closer as the hands want it: Ctrl or two fingers on a touchpad and the wheel, the wheel alone once
 * something of the desk is in the keyboard's hands, two fingers on the screen; moved by what is not held. `isHeld` says
 * whether something of the outline is in the hand, `isPulled` that it already moves.
 */
export function useDeskZoom(box: Box, isPulled: boolean, isHeld: () => boolean): DeskZoom {
  const [closer, setCloser] = useState<Closer | null>(null);
  const { desk, view: fit } = useSteadyView(box, isPulled || closer !== null);
  const view = closer === null ? fit : viewCloser(fit, closer);
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const by = (factor: number, px = fit.width / 2, py = fit.height / 2) =>
    setCloser((now) => zoomed(fit, now, factor, px, py));
  const move = (dx: number, dy: number) => setCloser((now) => now && { ...now, ...moved(fit, now, dx, dy) });
  // The listeners stay for as long as the desk does, and act by what is there when they are called.
  const latest = useRef({ by, move, isHeld, isCloser: false });
  latest.current = { by, move, isHeld, isCloser: closer !== null };
  useEffect(() => {
    const own = desk.current;
    if (own === null) return;
    const down = fingers.current;
    const place = (event: MouseEvent) => {
      const box = own.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    };
    const onDown = (event: PointerEvent) => {
      if (event.button === 0) down.set(event.pointerId, place(event));
    };
    const onMove = (event: PointerEvent) => {
      const before = down.get(event.pointerId);
      if (before === undefined) return;
      const now = place(event);
      down.set(event.pointerId, now);
      const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
      if (other !== undefined) {
        const far = (a: { x: number; y: number }) => Math.max(1, Math.hypot(a.x - other.x, a.y - other.y));
        latest.current.by(far(now) / far(before), (now.x + other.x) / 2, (now.y + other.y) / 2);
      } else if (latest.current.isCloser && !latest.current.isHeld())
        latest.current.move(now.x - before.x, now.y - before.y);
    };
    const onUp = (event: PointerEvent) => down.delete(event.pointerId);
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !own.contains(document.activeElement)) return;
      event.preventDefault();
      const { x, y } = place(event);
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      latest.current.by(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.006 : 0.0015)), x, y);
    };
    // A finger that holds something, one of two, and one on a desk that is closer do not roll the page.
    const hold = (event: TouchEvent) => {
      if (event.touches.length > 1 || latest.current.isHeld() || latest.current.isCloser) event.preventDefault();
    };
    own.addEventListener("pointerdown", onDown, true);
    own.addEventListener("pointermove", onMove, true);
    for (const end of ["pointerup", "pointercancel"] as const) own.addEventListener(end, onUp, true);
    own.addEventListener("wheel", onWheel, { passive: false });
    for (const touch of ["touchstart", "touchmove"] as const) own.addEventListener(touch, hold, { passive: false });
    return () => {
      own.removeEventListener("pointerdown", onDown, true);
      own.removeEventListener("pointermove", onMove, true);
      for (const end of ["pointerup", "pointercancel"] as const) own.removeEventListener(end, onUp, true);
      own.removeEventListener("wheel", onWheel);
      for (const touch of ["touchstart", "touchmove"] as const) own.removeEventListener(touch, hold);
    };
  }, []);
  return {
    desk,
    view,
    isCloser: closer !== null,
    by,
    whole: () => setCloser(null),
    show: (px, py) => {
      const isSeen = px >= RIM && py >= RIM && px <= view.width - RIM && py <= view.height - RIM;
      if (!isSeen) move(view.width / 2 - px, view.height / 2 - py);
    },
    isPinched: () => fingers.current.size > 1,
  };
}

/** The view with (x, y) in its middle, so many times closer than the whole. */
export function viewCloser(fit: DeskView, { times, x, y }: Closer): DeskView {
  const scale = fit.scale * times;
  return { ...fit, scale, left: x - fit.width / 2 / scale, top: y + fit.height / 2 / scale };
}

/** Closer by a factor, with what lies at a place of the screen staying there; null for the whole. */
export function zoomed(fit: DeskView, now: Closer | null, factor: number, px: number, py: number): Closer | null {
  const before = now?.times ?? 1;
  const times = Math.min(CLOSEST, before * factor);
  if (times <= 1.001) return null;
  const view = now === null ? fit : viewCloser(fit, now);
  const [x, y] = toTable(view, px, py);
  const scale = fit.scale * times;
  return { times, x: x + (fit.width / 2 - px) / scale, y: y - (fit.height / 2 - py) / scale };
}

function moved({ scale }: DeskView, { times, x, y }: Closer, dx: number, dy: number): { x: number; y: number } {
  return { x: x - dx / scale / times, y: y + dy / scale / times };
}

/** Plus and minus zoom, 0 shows the whole, as on the plan. */
export function zoomByKey(event: KeyboardEvent, zoom: DeskZoom): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === "+" || event.key === "=") zoom.by(ZOOM_STEP);
  else if (event.key === "-") zoom.by(1 / ZOOM_STEP);
  else if (event.key === "0") zoom.whole();
  else return;
  event.preventDefault();
}
