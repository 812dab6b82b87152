import { type Frame, panFrame, zoomFrame } from "./frame.ts";

/** What fingers, mouse and wheel mean on the plan. Points are px from the drawing's corner. */
export interface PlanHands {
  frame(): Frame;
  look(frame: Frame): void;
  /** The last finger that moved the view is off. */
  rest(): void;
  /** A piece was touched; true when it may be picked up. */
  take(key: string): boolean;
  /** The piece in hand is `dx, dy` px from where it was taken. */
  carry(dx: number, dy: number): void;
  /** Let go; `moved` is false for a mere touch. */
  drop(moved: boolean): void;
  /** The table itself was touched. */
  touchTable(): void;
}

interface Finger {
  x: number;
  y: number;
}

/** How far a finger may tremble before it is a move, px. */
const TREMBLE = 4;

/** Listens to what the plan is drawn in; gives a function that stops it. */
export function listenToHands(element: HTMLElement, hands: PlanHands): () => void {
  const fingers = new Map<number, Finger>();
  let held: { pointer: number; x: number; y: number; moved: boolean } | null = null;
  // Asking the page where the drawing is makes it lay itself out; while a finger is down the drawing stays there.
  let box = element.getBoundingClientRect();
  const at = (event: MouseEvent): Finger => {
    if (fingers.size === 0) box = element.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const onDown = (event: PointerEvent) => {
    if (event.button > 0) return;
    const finger = at(event);
    fingers.set(event.pointerId, finger);
    element.setPointerCapture(event.pointerId);
    if (fingers.size > 1) {
      if (held !== null) hands.drop(false);
      held = null;
      return;
    }
    const key = (event.target as Element).closest<SVGElement>("[data-key]")?.dataset["key"];
    if (key === undefined) hands.touchTable();
    else if (hands.take(key)) held = { pointer: event.pointerId, ...finger, moved: false };
  };
  const onMove = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const now = at(event);
    if (held !== null && held.pointer === event.pointerId) {
      held.moved ||= Math.hypot(now.x - held.x, now.y - held.y) > TREMBLE;
      if (held.moved) hands.carry(now.x - held.x, now.y - held.y);
    } else if (fingers.size === 1) hands.look(panFrame(hands.frame(), now.x - before.x, now.y - before.y));
    else if (fingers.size === 2) hands.look(pinched(hands.frame(), fingers, event.pointerId, now));
    fingers.set(event.pointerId, now);
  };
  const onUp = (event: PointerEvent) => {
    fingers.delete(event.pointerId);
    if (fingers.size === 0 && held === null) hands.rest();
    if (held === null || held.pointer !== event.pointerId) return;
    const { moved } = held;
    held = null;
    hands.drop(moved && event.type === "pointerup");
  };
  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    const finger = at(event);
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    hands.look(zoomFrame(hands.frame(), Math.exp(-event.deltaY * lines * 0.0015), finger.x, finger.y));
  };
  element.addEventListener("pointerdown", onDown);
  element.addEventListener("pointermove", onMove);
  element.addEventListener("pointerup", onUp);
  element.addEventListener("pointercancel", onUp);
  element.addEventListener("wheel", onWheel, { passive: false });
  return () => {
    element.removeEventListener("pointerdown", onDown);
    element.removeEventListener("pointermove", onMove);
    element.removeEventListener("pointerup", onUp);
    element.removeEventListener("pointercancel", onUp);
    element.removeEventListener("wheel", onWheel);
  };
}

/** The view after one of two fingers moved: what was between them stays between them. */
function pinched(frame: Frame, fingers: ReadonlyMap<number, Finger>, moved: number, now: Finger): Frame {
  const before = fingers.get(moved)!;
  const other = [...fingers].find(([id]) => id !== moved)![1];
  const far = (a: Finger) => Math.max(1, Math.hypot(a.x - other.x, a.y - other.y));
  const middle = { x: (before.x + other.x) / 2, y: (before.y + other.y) / 2 };
  const shifted = panFrame(frame, (now.x - before.x) / 2, (now.y - before.y) / 2);
  return zoomFrame(shifted, far(now) / far(before), middle.x, middle.y);
}
