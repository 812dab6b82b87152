/**
 * The library: everything another program needs to take a project from its file to the cutting table. Pure and
 * deterministic but for `nodePool`; the same core as the command line and the page.
 */
export {
  BAG_BODIES,
  BAG_CHOICES,
  BAG_LIMITS,
  type BagBody,
  type BagWish,
  usualBag,
} from "./core/bags/bagWish.ts";
export { startBag } from "./core/bags/startBag.ts";
export { STARTERS, type Starter, starterBag } from "./core/bags/starters.ts";
export { type CostSheet, costSheet } from "./core/buying/costSheet.ts";
export { type Offcut, offcutsOf } from "./core/buying/offcuts.ts";
export { type Purchase, purchaseOf } from "./core/buying/purchase.ts";
export type { Drawing } from "./core/drawing/list/drawing.ts";
export { type StrapPicture, strapPictures } from "./core/drawing/strap/strapPictures.ts";
export { ringBox } from "./core/geometry/box.ts";
export type { Contour } from "./core/geometry/contour.ts";
export { type Orientation, type Pose, posePolygon, poseRing } from "./core/geometry/pose.ts";
export { type Polygon, polygonArea, type Ring } from "./core/geometry/ring.ts";
export { layProblemsOf } from "./core/job/layProblems.ts";
export { type LengthForStraps, lengthForStraps } from "./core/lay/boxes/straps/lengthForStraps.ts";
export type { StrapOnCloth } from "./core/lay/boxes/straps/strapProblem.ts";
export { type StrapYield, strapYield } from "./core/lay/boxes/straps/strapYield.ts";
export { checkPlan } from "./core/lay/check/checkPlan.ts";
export { chooseEngines } from "./core/lay/engines/chooseEngines.ts";
export type { LayPiece, LayPlan, LayProblem, Stock, StockPlacement } from "./core/lay/problem/layProblem.ts";
export { arrange } from "./core/lay/search/arrange/arrange.ts";
export type { Arrangement, ArrangeStep } from "./core/lay/search/arrange/layingDesk.ts";
export type { Engine } from "./core/lay/search/engine.ts";
export { CUT_MODES, type CutMode } from "./core/lay/search/engine.ts";
export type { CutPiece } from "./core/materials/cutPiece.ts";
export type { Material } from "./core/materials/material.ts";
export {
  biasOfLength,
  biasOfSquare,
  clothForBias,
  squareForBias,
} from "./core/panels/bias/biasStrips.ts";
export { buildPanel } from "./core/panels/buildPanel.ts";
export type { Panel, PanelShape } from "./core/panels/panel.ts";
export { type Seam, type SeamLengths, seamLengths } from "./core/panels/seams.ts";
export { SHAPE_IDS, SHAPES, type ShapeId } from "./core/panels/shapes/registry.ts";
export type { Dimension, ShapeOutline, ShapeRecord, SizeFault, Sizes } from "./core/panels/shapes/shapeRecord.ts";
export type { SizedPanel } from "./core/panels/sizedPanel.ts";
export { sizePanels } from "./core/panels/sizePanels.ts";
export type { PatternDrawing, PatternKind, PatternLine } from "./core/patterns/patternDrawing.ts";
export type { PatternOutline, PatternRole, UnderstoodPattern } from "./core/patterns/patternOutline.ts";
export { type PanelWish, type PatternPanel, patternPanels, projectPanel } from "./core/patterns/patternPanels.ts";
export {
  FIT_TOLERANCE,
  MENDS,
  type Mend,
  type UnderstandOptions,
  understandPattern,
} from "./core/patterns/understandPattern.ts";
export { describeProblem, type ProblemText, problemLine } from "./core/problems/describeProblem.ts";
export type { Problem, Result } from "./core/problems/problem.ts";
export { type CutList, cutListOf, strapMaterial } from "./core/project/cutList.ts";
export { readProject } from "./core/project/file/readProject.ts";
export { writeProject } from "./core/project/file/writeProject.ts";
export type { Project } from "./core/project/project.ts";
export { buildStrap } from "./core/straps/build/buildStrap.ts";
export type { StrapResult } from "./core/straps/build/strapResult.ts";
export { CONSTRUCTION_IDS, type ConstructionId, type StrapWish } from "./core/straps/wish/strapWish.ts";
export { formatLength, type LengthStyle } from "./core/units/formatLength.ts";
export { type LengthUnit, MM_PER_UNIT } from "./core/units/lengthWords.ts";
export { parseLength } from "./core/units/parseLength.ts";
export { PANEL_WORDS } from "./core/words/words.ts";
export { dxfText } from "./export/dxf/dxfText.ts";
export type { FontBytes } from "./export/fonts/faces.ts";
export type { PlanFile, PlanFilesInput } from "./export/planFile.ts";
export { type PlanFiles, planFiles } from "./export/planFiles.ts";
export { svgText } from "./export/svg/svgText.ts";
export { answerPattern as readPattern, type PatternJob } from "./reading/patternJob.ts";
