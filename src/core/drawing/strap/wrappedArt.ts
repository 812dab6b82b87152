import type { Contour } from "../../geometry/contour.ts";
import { circleContour, segmentContour } from "../../geometry/contourShapes.ts";
import type { WrappedSection } from "../../straps/section/wrappedSection.ts";
import type { SectionArt } from "./sectionArt.ts";

/**
 * Art of a corded handle: the cord, the strip wrapped round it, and the fin where its edges are sewn together.
 */
export function wrappedArt(section: WrappedSection): SectionArt {
  const { ply, cordDiameter, seamAllowance } = section;
  const radius = cordDiameter / 2;
  const outside = radius + ply.thickness;
  const [cx, cy] = [outside, outside];
  // Where the fin's outer face meets the ring's outside; it then runs on for the allowance.
  const leave = Math.sqrt(outside * outside - ply.thickness * ply.thickness);
  const end = cx + radius + seamAllowance;
  // The long way round from the fin's upper face to its lower one.
  const arc = 2 * (Math.PI - Math.asin(ply.thickness / outside));
  const cover: Contour = {
    vertices: Float64Array.from(
      [
        [cx + leave, cy + ply.thickness, Math.tan(arc / 4)],
        [cx + leave, cy - ply.thickness, 0],
        [end, cy - ply.thickness, 0],
        [end, cy + ply.thickness, 0],
      ].flat(),
    ),
    closed: true,
  };
  return {
    areas: [
      { tone: "face", contour: cover },
      { tone: "webbing", contour: circleContour(cx, cy, radius) },
    ],
    seams: [segmentContour(cx + radius, cy, end, cy)],
    rawEdges: [[end, cy - ply.thickness, end, cy + ply.thickness]],
    stitches: [[cx + outside + 0.3, cy - ply.thickness, cy + ply.thickness]],
    width: end,
    height: 2 * outside,
    layers: [
      { tone: "face", word: "outer", thickness: ply.thickness },
      { tone: "webbing", word: "cord", thickness: cordDiameter },
    ],
    setback: null,
  };
}
