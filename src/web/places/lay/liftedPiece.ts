import { type G, SVG } from "@svgdotjs/svg.js";
import type { Pose } from "../../../core/geometry/pose.ts";
import { type Frame, frameMatrix, toScreen } from "./frame.ts";
import type { Offset } from "./planPaths.ts";

/**
 * A piece in hand, in a drawing of its own above the plan. The browser keeps such a drawing as a picture and shifts
 * the picture: carrying a piece draws nothing anew, however many pieces lie under it.
 */
export class LiftedPiece {
  readonly key: string;
  private readonly piece: G;
  private readonly picture: HTMLElement;
  private readonly ground: G;
  private matrix = "";
  private shift = "";

  /** Takes a piece out of the plan that is drawn in `host`. */
  constructor(host: HTMLElement, key: string, piece: G) {
    this.key = key;
    this.piece = piece;
    this.picture = document.createElement("div");
    this.picture.className = "lifted";
    this.ground = SVG().addTo(this.picture).group();
    const hasKeyboard = document.activeElement === piece.node;
    this.ground.add(piece);
    host.append(this.picture);
    keepAsPicture(this.picture);
    if (hasKeyboard) piece.node.focus({ preventScroll: true });
  }

  /** Shows the piece at a pose, its own orientation left to the piece: only the shift is the drawing's. */
  place(frame: Frame, pose: Pose, { offsetX, offsetY }: Offset): void {
    const matrix = frameMatrix({ ...frame, originX: 0, originY: 0 });
    if (matrix !== this.matrix) this.ground.node.setAttribute("transform", matrix);
    this.matrix = matrix;
    const [x, y] = toScreen(frame, pose.x + offsetX, pose.y + offsetY);
    // Whole pixels of the screen: a picture between them would have to be mixed anew at each step.
    const shift = `translate(${wholePixels(x)}px, ${wholePixels(y)}px)`;
    if (shift !== this.shift) this.picture.style.transform = shift;
    this.shift = shift;
  }

  /** Puts the piece among the others again, on top. */
  putInto(pieces: G): void {
    const hasKeyboard = document.activeElement === this.piece.node;
    pieces.add(this.piece);
    this.picture.remove();
    if (hasKeyboard) this.piece.node.focus({ preventScroll: true });
  }
}

/**
 * Has the browser keep an element as a picture that it shifts and scales. A shift of something at rest makes Chromium
 * work out anew, for all pieces, what lies over what. Under an animation it takes the worst for granted, so an
 * animation that stands still and changes nothing spares that: 4 ms a step of a drag with 1,000 pieces, 8 of a zoom.
 */
export function keepAsPicture(element: Element): void {
  element.animate({ transform: ["none", "none"] }, { duration: 1e9, composite: "add" }).pause();
}

function wholePixels(px: number): number {
  const ratio = devicePixelRatio;
  return Math.round(px * ratio) / ratio;
}
