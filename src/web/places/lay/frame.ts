import type { Box } from "../../../core/geometry/box.ts";

/**
 * How the table (mm, y up) is seen on the screen (px, y down): `scale` px per mm, and where the table's origin
 * lies. `upright` turns the table a quarter clockwise, so that the cloth unrolls downwards on a narrow screen.
 */
export interface Frame {
  readonly scale: number;
  readonly originX: number;
  readonly originY: number;
  readonly upright: boolean;
}

/** Width and height on the screen, px. */
export interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

/** Closest and furthest view, px per mm: a millimetre as wide as a finger, ten metres on a phone. */
const SCALES = { least: 0.01, most: 20 } as const;

/** SVG matrix that draws table coordinates on the screen. */
export function frameMatrix({ scale, originX, originY, upright }: Frame): string {
  return upright
    ? `matrix(0 ${scale} ${scale} 0 ${originX} ${originY})`
    : `matrix(${scale} 0 0 ${-scale} ${originX} ${originY})`;
}

/** Screen point of a table point. */
export function toScreen(frame: Frame, x: number, y: number): readonly [number, number] {
  const [across, down] = frame.upright ? [y, x] : [x, -y];
  return [frame.originX + frame.scale * across, frame.originY + frame.scale * down];
}

/** Table point of a screen point. */
export function toTable(frame: Frame, screenX: number, screenY: number): readonly [number, number] {
  const across = (screenX - frame.originX) / frame.scale;
  const down = (screenY - frame.originY) / frame.scale;
  return frame.upright ? [down, across] : [across, -down];
}

/** Table shift of a shift on the screen. */
export function shiftToTable(frame: Frame, dx: number, dy: number): readonly [number, number] {
  return frame.upright ? [dy / frame.scale, dx / frame.scale] : [dx / frame.scale, -dy / frame.scale];
}

/** A view that shows the whole box, `pad` px free around it. */
export function fitFrame(box: Box, screen: ScreenSize, upright: boolean, pad = 24): Frame {
  const width = Math.max(1, upright ? box.maxY - box.minY : box.maxX - box.minX);
  const height = Math.max(1, upright ? box.maxX - box.minX : box.maxY - box.minY);
  const scale = clampScale(Math.min((screen.width - 2 * pad) / width, (screen.height - 2 * pad) / height));
  const freeX = (screen.width - width * scale) / 2;
  const freeY = (screen.height - height * scale) / 2;
  return {
    scale,
    upright,
    originX: freeX - scale * (upright ? box.minY : box.minX),
    originY: upright ? freeY - scale * box.minX : freeY + scale * box.maxY,
  };
}

/** Buttons over a corner of the view, px: a column at the top right, or a row at the bottom right. */
export interface Buttons {
  readonly corner: "top-right" | "bottom-right";
  /** From the corner of the view to the far side of the buttons. */
  readonly width: number;
  readonly height: number;
}

/** A view that shows the whole box with no button over it: as large as beside them or above (below) them it can be. */
export function clearFrame(box: Box, screen: ScreenSize, upright: boolean, buttons: Buttons): Frame {
  const { width, height, corner } = buttons;
  const whole = fitFrame(box, screen, upright);
  const [[x1, y1], [x2, y2]] = [toScreen(whole, box.minX, box.minY), toScreen(whole, box.maxX, box.maxY)];
  const isTop = corner === "top-right";
  const [right, top, bottom] = [Math.max(x1, x2), Math.min(y1, y2), Math.max(y1, y2)];
  const isClear = right <= screen.width - width || (isTop ? top >= height : bottom <= screen.height - height);
  if (isClear) return whole;
  // The free edge on their side of the box may be as narrow as this, px.
  const near = 12;
  const beside = fitFrame(box, { ...screen, width: screen.width - width + near }, upright);
  const past = fitFrame(box, { ...screen, height: screen.height - height + near }, upright);
  return beside.scale >= past.scale ? beside : panFrame(past, 0, isTop ? height - near : 0);
}

/** The view after coming closer by `factor` with the screen point (x, y) held still. */
export function zoomFrame(frame: Frame, factor: number, x: number, y: number): Frame {
  const scale = clampScale(frame.scale * factor);
  const real = scale / frame.scale;
  return { ...frame, scale, originX: x + (frame.originX - x) * real, originY: y + (frame.originY - y) * real };
}

/** The view shifted by screen pixels. */
export function panFrame(frame: Frame, dx: number, dy: number): Frame {
  return { ...frame, originX: frame.originX + dx, originY: frame.originY + dy };
}

function clampScale(scale: number): number {
  return Math.min(SCALES.most, Math.max(SCALES.least, scale));
}
