import { boxCorners } from "./boxCorners.ts";
import { circle } from "./circle.ts";
import { curvedTop } from "./curvedTop.ts";
import { ellipse } from "./ellipse.ts";
import { flapPointed } from "./flapPointed.ts";
import { flapRound } from "./flapRound.ts";
import { gusset } from "./gusset.ts";
import { gussetBoxed } from "./gussetBoxed.ts";
import { gussetTapered } from "./gussetTapered.ts";
import { oval } from "./oval.ts";
import { rectangle } from "./rectangle.ts";
import { hexagon, regularPolygon } from "./regularPolygon.ts";
import { rounded } from "./rounded.ts";
import { roundedBase } from "./roundedBase.ts";
import type { ShapeRecord } from "./shapeRecord.ts";
import { roundBottom, slipPocket } from "./slipPocket.ts";
import { biasBinding, binding, piping } from "./strips.ts";
import { tab } from "./tab.ts";
import { trapezoid } from "./trapezoid.ts";
import { wrapBody } from "./wrapBody.ts";
import { zipPanel } from "./zipPanel.ts";
import { zipPocket } from "./zipPocket.ts";

/** Shapes that are made from their measures, as project files call them. */
export type ShapeId =
  | "rectangle"
  | "rounded"
  | "trapezoid"
  | "box-corners"
  | "round-bottom"
  | "curved-top"
  | "flap-round"
  | "flap-pointed"
  | "wrap"
  | "gusset"
  | "gusset-tapered"
  | "gusset-boxed"
  | "circle"
  | "ellipse"
  | "oval"
  | "rounded-base"
  | "hexagon"
  | "polygon"
  | "slip-pocket"
  | "zip-pocket"
  | "zip-panel"
  | "tab"
  | "binding"
  | "bias-binding"
  | "piping";

/** Every shape, in the order they are offered. */
export const SHAPES: Readonly<Record<ShapeId, ShapeRecord>> = {
  rectangle,
  rounded,
  trapezoid,
  "box-corners": boxCorners,
  "round-bottom": roundBottom,
  "curved-top": curvedTop,
  "flap-round": flapRound,
  "flap-pointed": flapPointed,
  wrap: wrapBody,
  gusset,
  "gusset-tapered": gussetTapered,
  "gusset-boxed": gussetBoxed,
  circle,
  ellipse,
  oval,
  "rounded-base": roundedBase,
  hexagon,
  polygon: regularPolygon,
  "slip-pocket": slipPocket,
  "zip-pocket": zipPocket,
  "zip-panel": zipPanel,
  tab,
  binding,
  "bias-binding": biasBinding,
  piping,
};

export const SHAPE_IDS: readonly ShapeId[] = Object.keys(SHAPES) as ShapeId[];
