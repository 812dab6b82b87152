import { rectangleContour } from "../../../core/geometry/contourShapes.ts";
import type { Shape } from "../../../core/geometry/shape.ts";
import type { Panel, PanelShape } from "../../../core/panels/panel.ts";
import type { Project } from "../../../core/project/project.ts";
import { sizedPanelOf } from "../../../core/project/sizedPanels.ts";

/** A panel's shape as the sentences of sides and radius tell it: what has more to it counts as an outline. */
export function plainShape(project: Project, panel: Panel): Shape {
  const { shape } = panel;
  if (shape.kind === "outline") return { kind: "outline", contour: shape.contour };
  const { along, across, radius } = shape.sizes;
  if (typeof along === "number" && typeof across === "number") {
    if (shape.shape === "rectangle") return { kind: "rectangle", along, across };
    if (shape.shape === "rounded" && typeof radius === "number" && Object.keys(shape.sizes).length === 3)
      return { kind: "rounded", along, across, radius };
  }
  const contour = sizedPanelOf(project, panel.id)?.outline.contour ?? rectangleContour(0, 0, 100, 100);
  return { kind: "outline", contour };
}

/** The shape of a panel that a sentence tells. */
export function panelShape(shape: Shape): PanelShape {
  if (shape.kind === "outline") return shape;
  const { kind, ...sizes } = shape;
  return { kind: "measured", shape: kind, sizes };
}
