import type { Contour } from "../../core/geometry/contour.ts";
import { contourEdges, edgeCircle } from "../../core/geometry/contourArcs.ts";

/** A number of a content stream: at most `digits` decimals, no exponent, no −0. */
export function pdfNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) throw new RangeError(`pdf: finite number expected, got ${value}`);
  const scale = 10 ** digits;
  const units = Math.round(value * scale);
  if (Math.abs(units) >= MOST_UNITS) return (units / scale).toFixed(digits);
  // Whole numbers are written several times as fast as fractions.
  const size = Math.abs(units);
  const whole = Math.floor(size / scale);
  let part = size - whole * scale;
  const sign = units < 0 ? "-" : "";
  if (part === 0) return sign + whole;
  let places = digits;
  while (part % 10 === 0) {
    part /= 10;
    places--;
  }
  return `${sign}${whole}.${String(part).padStart(places, "0")}`;
}

/** Beyond this a double does not hold every whole number. */
const MOST_UNITS = 2 ** 53;

/** Arcs are cut into pieces of at most 45°, whose cubic curve is within 4 millionths of the radius. */
const STEP = Math.PI / 4;

/** Numbers of a contour of two points. */
const STROKE = 6;

const written = new WeakMap<Contour, string>();

/**
 * Path operators of a contour (`m l c h`), coordinates in mm of the current space. Kept, as a line that runs over
 * several sheets, or lies on every one, is asked for by each.
 */
export function pathOperators(contour: Contour): string {
  // A straight stroke is written as fast as it is looked up, and every sheet has dozens of its own.
  if (contour.vertices.length <= STROKE) return operatorsOf(contour);
  const known = written.get(contour);
  if (known !== undefined) return known;
  const operators = operatorsOf(contour);
  written.set(contour, operators);
  return operators;
}

function operatorsOf(contour: Contour): string {
  const { vertices, closed } = contour;
  if (vertices.length === 0) return "";
  // Put together at once: a text grown bit by bit is kept as all its bits, which the memory is then swept through for.
  const out = [`${pdfNumber(vertices[0]!)} ${pdfNumber(vertices[1]!)} m\n`];
  const edges = contourEdges(contour);
  edges.forEach((edge, i) => {
    if (edge.bulge !== 0) {
      out.push(arcOperators(edgeCircle(edge), edge.x1, edge.y1));
    } else if (!(closed && i === edges.length - 1)) {
      out.push(`${pdfNumber(edge.x1)} ${pdfNumber(edge.y1)} l\n`);
    }
  });
  if (closed) out.push("h\n");
  return out.join("");
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
