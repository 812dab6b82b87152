import type { Measure, MeasureTerm } from "../../panels/measure.ts";
import type { FollowingPiece, Panel, PanelShape } from "../../panels/panel.ts";
import { SHAPES } from "../../panels/shapes/registry.ts";
import { type Json, pointsJson, type Say } from "./writeJson.ts";

/** A panel as it stands in a file. */
export function panelJson(panel: Panel, say: Say): Json {
  const measure = (value: Measure): Json => measureJson(value, say);
  const arrow = panel.grainArrow;
  return {
    id: panel.id,
    name: panel.name,
    material: panel.materialId,
    count: panel.count,
    mirrored: panel.mirroredCount,
    shape: panelShapeJson(panel.shape, say),
    drawn: panel.drawn,
    seamAllowance: measure(panel.seamAllowance),
    edges: panel.edges?.map(({ edge, allowance, hem }) => ({
      edge,
      allowance: allowance === undefined ? undefined : measure(allowance),
      hem,
    })),
    cornerStyle: panel.cornerStyle,
    corners: panel.corners?.map(({ corner, style }) => ({ corner, style })),
    fold: panel.foldEdge ?? undefined,
    grain: panel.grain,
    grainArrow: arrow && [
      [say(arrow[0]), say(arrow[1])],
      [say(arrow[2]), say(arrow[3])],
    ],
    notches: panel.notches.map(({ edge, at, cut, mark }) => ({
      edge,
      at: typeof at === "object" && "share" in at ? { share: at.share } : measure(at),
      cut,
      mark,
    })),
    drills: panel.drills?.map(({ x, y, text }) => ({ x: measure(x), y: measure(y), text })),
    texts: panel.texts?.map(({ x, y, text }) => ({ x: measure(x), y: measure(y), text })),
    lines: panel.lines?.map(({ role, contour }) => ({
      role,
      points: pointsJson(contour, say),
      closed: contour.closed,
    })),
    interfacing: panel.interfacing ? followingJson(panel.interfacing, say) : undefined,
    lining: panel.lining && followingJson(panel.lining, say),
  };
}

function panelShapeJson(shape: PanelShape, say: Say): Json {
  if (shape.kind === "measured") {
    const counts = SHAPES[shape.shape].dimensions.filter(({ isCount }) => isCount).map(({ id }): string => id);
    const plain = (size: Measure): Json => (typeof size === "number" ? size : measureJson(size, say));
    const sizes = Object.entries(shape.sizes).map(
      ([key, size]) => [key, counts.includes(key) ? plain(size) : measureJson(size, say)] as const,
    );
    return { kind: shape.shape, ...Object.fromEntries(sizes) };
  }
  return {
    kind: shape.kind,
    points: pointsJson(shape.contour, say),
    edges: shape.edges?.map(({ name, start }) => ({ name, start })),
  };
}

function followingJson({ materialId, cut, inset }: FollowingPiece, say: Say): Json {
  return { material: materialId, cut, inset: inset === undefined ? undefined : measureJson(inset, say) };
}

function measureJson(measure: Measure, say: Say): Json {
  if (typeof measure === "number") return say(measure);
  const term = (one: MeasureTerm): Json =>
    typeof one === "number" ? say(one) : { of: one.of, measure: one.measure, times: one.times };
  const [only] = measure;
  return measure.length === 1 && typeof only !== "number" && only !== undefined ? term(only) : measure.map(term);
}
