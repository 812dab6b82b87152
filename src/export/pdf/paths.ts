import type { Contour } from "../../core/geometry/contour.ts";
import { contourEdges, edgeCircle } from "../../core/geometry/contourArcs.ts";

/** A number of a content stream: at most `digits` decimals, no exponent, no −0. */
export function pdfNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) throw new RangeError(`pdf: finite number expected, got ${value}`);
  const scale = 10 ** digits;
  const rounded = Math.round(value * scale) / scale;
  const text = String(rounded);
  return text.includes("e") ? rounded.toFixed(digits) : text;
}

/** Arcs are cut into pieces of at most 45°, whose cubic curve is within 4 millionths of the radius. */
const STEP = Math.PI / 4;

/** Path operators of a contour (`m l c h`), coordinates in mm of the current space. */
export function pathOperators(contour: Contour): string {
  const { vertices, closed } = contour;
  if (vertices.length === 0) return "";
  let out = `${pdfNumber(vertices[0]!)} ${pdfNumber(vertices[1]!)} m\n`;
  const edges = contourEdges(contour);
  edges.forEach((edge, i) => {
    if (edge.bulge !== 0) {
      out += arcOperators(edgeCircle(edge), edge.x1, edge.y1);
    } else if (!(closed && i === edges.length - 1)) {
      out += `${pdfNumber(edge.x1)} ${pdfNumber(edge.y1)} l\n`;
    }
  });
  return closed ? `${out}h\n` : out;
}

/** Cubic curves along an arc. Source: control points at 4/3 · tan(a / 4) radii along the end tangents. */
function arcOperators(circle: ReturnType<typeof edgeCircle>, endX: number, endY: number): string {
  const { x, y, radius, start, sweep } = circle;
  const parts = Math.ceil(Math.abs(sweep) / STEP);
  const part = sweep / parts;
  const reach = (4 / 3) * Math.tan(part / 4) * radius;
  let out = "";
  for (let i = 0; i < parts; i++) {
    const a = start + part * i;
    const b = a + part;
    const x3 = i === parts - 1 ? endX : x + radius * Math.cos(b);
    const y3 = i === parts - 1 ? endY : y + radius * Math.sin(b);
    const numbers = [
      x + radius * Math.cos(a) - reach * Math.sin(a),
      y + radius * Math.sin(a) + reach * Math.cos(a),
      x + radius * Math.cos(b) + reach * Math.sin(b),
      y + radius * Math.sin(b) - reach * Math.cos(b),
      x3,
      y3,
    ];
    out += `${numbers.map((number) => pdfNumber(number)).join(" ")} c\n`;
  }
  return out;
}
