import { z } from "zod";
import type { PieceLine } from "../../materials/cutPiece.ts";
import {
  type CornerStyle,
  type FollowingPiece,
  INTERFACING_CUTS,
  type NotchCut,
  type Panel,
} from "../../panels/panel.ts";
import { panelFollows } from "../../panels/panelMeasures.ts";
import { MOST_ALLOWANCE, sizePanels } from "../../panels/sizePanels.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { edgeField } from "./edgeField.ts";
import {
  countField,
  expected,
  group,
  type IssueSink,
  idField,
  lengthField,
  list,
  named,
  nameField,
  report,
  shareField,
  text,
  yesNo,
} from "./fields.ts";
import { grainField } from "./materialFields.ts";
import { measureField, measureOrField } from "./measureFields.ts";
import { panelShapeField } from "./panelShapeFields.ts";
import { openContour, pointField } from "./shapeFields.ts";
import { turnedPanel } from "./turnedPanel.ts";

/** A line on a panel. */
function pieceLineField(unit: LengthUnit): z.ZodType<PieceLine> {
  const line = group({
    role: z.enum(["fold", "stitch", "mark"]),
    points: list(pointField(unit), 2, 2000),
    closed: yesNo().default(false),
  });
  return named("line", "A line drawn on the panel, from the same corner as its outline.", line).transform(
    ({ role, points, closed }, context): PieceLine => ({ role, contour: openContour(points, closed, context) }),
  );
}

const LONG = { minMm: 0, maxMm: 100_000 };
const PLACE = { minMm: -100_000, maxMm: 100_000 };
const ALLOWANCE = { minMm: 0, maxMm: MOST_ALLOWANCE };
const CORNER_STYLES = ["mitred", "square", "blunted", "folded-back"] as const satisfies CornerStyle[];
const NOTCH_CUTS = ["slit", "in", "out"] as const satisfies NotchCut[];

function notchField(unit: LengthUnit) {
  const share = group({ share: shareField(0, 1) });
  const notch = group({
    edge: edgeField(),
    at: measureOrField(unit, share, LONG),
    cut: z.enum(NOTCH_CUTS).optional(),
    mark: text(20).optional(),
  });
  return named("notch", "A mark on an edge, measured from the edge's start.", notch);
}

function placeFields(unit: LengthUnit) {
  return { x: measureField(unit, PLACE), y: measureField(unit, PLACE) };
}

function followingField(unit: LengthUnit): z.ZodType<FollowingPiece> {
  const inset = measureField(unit, LONG);
  const piece = group({
    material: idField(),
    cut: z.enum(INTERFACING_CUTS).default("full"),
    inset: inset.optional(),
  });
  return named("followingPiece", "A piece that follows from the panel.", piece).transform(
    ({ material, cut, inset }): FollowingPiece => ({
      materialId: material,
      cut,
      ...(inset === undefined ? {} : { inset }),
    }),
  );
}

/** The keys of a panel. */
function panelGroup(unit: LengthUnit) {
  const allowance = measureField(unit, ALLOWANCE);
  const place = lengthField(unit, PLACE);
  const point = z.tuple([place, place], expected("place"));
  return group({
    id: idField(),
    name: nameField().optional(),
    material: idField(),
    count: countField(0, 1000).default(1),
    mirrored: countField(0, 1000).default(0),
    shape: panelShapeField(unit),
    drawn: z.enum(["stitch", "cut"]).optional(),
    seamAllowance: allowance.default(0),
    edges: list(
      group({ edge: edgeField(), allowance: allowance.optional(), hem: yesNo().optional() }),
      0,
      2000,
    ).optional(),
    cornerStyle: z.enum(CORNER_STYLES).optional(),
    corners: list(group({ corner: edgeField(), style: z.enum(CORNER_STYLES) }), 0, 2000).optional(),
    fold: edgeField().optional(),
    grain: grainField().default("lengthwise"),
    grainArrow: z.tuple([point, point], expected("list")).optional(),
    notches: list(notchField(unit), 0, 2000).default([]),
    drills: list(group({ ...placeFields(unit), text: text(60).optional() }), 0, 1000).optional(),
    texts: list(group({ ...placeFields(unit), text: text(200) }), 0, 200).optional(),
    lines: list(pieceLineField(unit), 0, 1000).optional(),
    interfacing: followingField(unit).optional(),
    lining: followingField(unit).optional(),
  });
}

/** A panel as it stands in a file. */
export function panelField(unit: LengthUnit): z.ZodType<Panel> {
  return named("panel", "A flat part of the bag.", panelGroup(unit)).transform((file, context): Panel => {
    const { material, mirrored, fold, interfacing, name, shape, grainArrow, ...same } = file;
    const given: Panel = {
      ...withoutUndefined(same),
      shape: shape.shape,
      name: name ?? file.id,
      materialId: material,
      mirroredCount: mirrored,
      foldEdge: fold ?? null,
      interfacing: interfacing ?? null,
      ...(grainArrow && { grainArrow: [...grainArrow[0], ...grainArrow[1]] as const }),
    };
    const panel = shape.isTurned ? turnedPanel(given) : given;
    if (panelFollows(panel).length === 0) checkSizes(panel, shape.isTurned, context);
    if (panel.count + panel.mirroredCount === 0)
      report(context, { code: "count-out-of-range", count: 0, min: 1, max: 1000 }, ["count"]);
    return panel;
  });
}

/** What the panel says of itself that cannot be; edges and places are told as the file has them. */
function checkSizes(panel: Panel, isTurned: boolean, sink: IssueSink): void {
  const sized = sizePanels([panel], [], () => "");
  if (sized.ok) return;
  const edges = panel.shape.kind === "outline" ? panel.shape.contour.vertices.length / 3 : 0;
  const asGiven = (edge: number | string): number | string =>
    isTurned && typeof edge === "number" ? edges - 1 - edge : edge;
  for (const problem of sized.problems) {
    const { path, ...facts } = problem;
    const steps = stepsOf(path);
    if (facts.code === "no-such-edge") report(sink, { ...facts, edge: Number(asGiven(facts.edge)) }, steps);
    else if (facts.code === "fold-edge-not-straight") report(sink, { ...facts, edge: asGiven(facts.edge) }, steps);
    else if (facts.code === "notch-off-edge" && isTurned)
      report(sink, { ...facts, atMm: facts.edgeMm - facts.atMm }, steps);
    else report(sink, facts, steps);
  }
}

/** `notches[1].at` as the steps a place has. */
function stepsOf(path: string): (string | number)[] {
  const steps = path.split(/[.[\]]+/u).filter((step) => step !== "");
  return steps.map((step) => (/^\d+$/u.test(step) ? Number(step) : step));
}

type Defined<T> = { readonly [K in keyof T]: Exclude<T[K], undefined> };

/** Keys that hold nothing are left out, as an object that never had them. */
function withoutUndefined<T extends object>(value: T): Defined<T> {
  return Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as Defined<T>;
}
