import type { Contour } from "../../geometry/contour.ts";
import type { DrawingRole } from "../../project/outputSettings.ts";
import type { AreaTone, DrawnArea, DrawnLine, DrawnText } from "./drawing.ts";

/** A line of a role; `owner` is the piece copy it belongs to. */
export function drawLine(role: DrawingRole, contour: Contour, owner?: string): DrawnLine {
  return owner === undefined ? { kind: "line", role, contour } : { kind: "line", role, contour, owner };
}

/** A filled area of one closed contour or more (even-odd). */
export function drawArea(tone: AreaTone, contours: readonly Contour[], owner?: string): DrawnArea {
  return owner === undefined ? { kind: "area", tone, contours } : { kind: "area", tone, contours, owner };
}

/** What can be said about a text beyond its words and place. */
export interface TextLook {
  readonly role?: DrawingRole;
  readonly anchor?: DrawnText["anchor"];
  readonly turnDeg?: number;
  readonly bold?: boolean;
  readonly tone?: AreaTone;
  readonly owner?: string;
}

/** A line of text with its baseline through (x, y), `size` mm high; role `label`, left-anchored unless told. */
export function drawText(text: string, x: number, y: number, size: number, look: TextLook = {}): DrawnText {
  const { role = "label", anchor = "start", turnDeg = 0, bold, tone, owner } = look;
  return {
    kind: "text",
    role,
    text,
    x,
    y,
    size,
    anchor,
    turnDeg,
    ...(bold === undefined ? {} : { bold }),
    ...(tone === undefined ? {} : { tone }),
    ...(owner === undefined ? {} : { owner }),
  };
}
