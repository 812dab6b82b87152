import type { Drawing, DrawnArea, DrawnLine, DrawnText } from "../../core/drawing/list/drawing.ts";
import { ROLE_STYLES, type RoleStyles, TONE_COLORS } from "../../core/drawing/list/roleStyles.ts";
import { plainLine } from "../../core/drawing/list/textWidth.ts";
import type { Contour } from "../../core/geometry/contour.ts";
import { contourEdges, edgeCircle } from "../../core/geometry/contourArcs.ts";
import { DRAWING_ROLES, type DrawingRole } from "../../core/project/outputSettings.ts";
import type { LetterStroke } from "../fonts/textOutlines.ts";

/** What is written and how it looks. */
export interface SvgOptions {
  readonly title?: string;
  readonly styles?: RoleStyles;
  /** Only these roles; all when left out. */
  readonly roles?: readonly DrawingRole[];
  /** Whether filled areas are written; a cutting machine wants lines only. */
  readonly areas?: boolean;
  /** Name of a role's group; roles of the same name share one. The role's own name when left out. */
  readonly layers?: Readonly<Partial<Record<DrawingRole, string>>>;
  /** The strokes of a text's letters in drawing coordinates; null to write it as text. */
  readonly outlineText?: (text: DrawnText) => readonly LetterStroke[] | null;
}

/**
 * A drawing as SVG at true size: `width` and `height` in mm and a `viewBox` of the same numbers, so one user unit is
 * one millimetre; coordinates are final (no `transform`), arcs stay arcs, one group a role, text only outside the
 * cut group. Source: SVG 2, CSS Values (1 in = 25.4 mm = 96 px).
 */
export function svgText(drawing: Drawing, options: SvgOptions = {}): string {
  const { box } = drawing;
  const { styles = ROLE_STYLES, roles = DRAWING_ROLES, areas = true } = options;
  const point = (x: number, y: number): string => `${number(x - box.minX)} ${number(box.maxY - y)}`;
  const width = number(box.maxX - box.minX);
  const height = number(box.maxY - box.minY);
  const out = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
  ];
  if (options.title !== undefined) out.push(`<title>${escapeXml(options.title)}</title>`);
  if (areas) out.push(...areaGroup(drawing, point));
  for (const [layer, members] of layersOf(roles, options.layers ?? {})) {
    const groups = members.flatMap((role) => roleGroup(drawing, role, options, styles, point));
    if (groups.length === 1) out.push(`<g id="${layer}"${groups[0]!.slice(2)}`);
    else if (groups.length > 1) out.push(`<g id="${layer}">`, ...groups, "</g>");
  }
  out.push("</svg>", "");
  return out.join("\n");
}

type PointWriter = (x: number, y: number) => string;

/** Roles by the name of their layer, in drawing order; a shared layer stands where its last role does. */
function layersOf(
  roles: readonly DrawingRole[],
  names: NonNullable<SvgOptions["layers"]>,
): Map<string, DrawingRole[]> {
  const layers = new Map<string, DrawingRole[]>();
  for (const role of DRAWING_ROLES.filter((one) => roles.includes(one))) {
    const name = names[role] ?? role;
    const members = layers.get(name) ?? [];
    layers.delete(name);
    layers.set(name, [...members, role]);
  }
  return layers;
}

/** The group of a role as one text, or nothing when the drawing has nothing of it. */
function roleGroup(
  drawing: Drawing,
  role: DrawingRole,
  { outlineText }: SvgOptions,
  styles: RoleStyles,
  point: PointWriter,
): string[] {
  const items = drawing.items.filter((item) => item.kind !== "area" && item.role === role);
  if (items.length === 0) return [];
  const { color, width, dash } = styles[role];
  const dashes = dash.length === 0 ? "" : ` stroke-dasharray="${dash.map(number).join(" ")}"`;
  const out = [
    `<g fill="none" stroke="${color}" stroke-width="${number(width)}"${dashes} stroke-linejoin="round">`,
  ];
  for (const item of items) {
    if (item.kind === "line") out.push(path(item, point));
    else if (item.kind === "text") out.push(textElement(item, point, color, outlineText));
  }
  return [[...out, "</g>"].join("\n")];
}

function areaGroup(drawing: Drawing, point: PointWriter): string[] {
  const areas = drawing.items.filter((item): item is DrawnArea => item.kind === "area");
  const group = (id: string, members: readonly DrawnArea[]): string[] => {
    if (members.length === 0) return [];
    const paths = members.map(
      ({ tone, contours }) =>
        `<path fill="${TONE_COLORS[tone]}" d="${contours.map((contour) => pathData(contour, point)).join("")}"/>`,
    );
    return [`<g id="${id}" stroke="none" fill-rule="evenodd">`, ...paths, "</g>"];
  };
  const isPattern = ({ tone }: DrawnArea): boolean => tone === "pattern";
  return [
    ...group(
      "areas",
      areas.filter((area) => !isPattern(area)),
    ),
    ...group("pattern", areas.filter(isPattern)),
  ];
}

function path(item: DrawnLine, point: PointWriter): string {
  return `<path d="${pathData(item.contour, point)}"/>`;
}

/** Path data of a contour; arcs as elliptical arc commands, y turned down by `point`. */
function pathData(contour: Contour, point: PointWriter): string {
  const { vertices } = contour;
  if (vertices.length === 0) return "";
  let data = `M${point(vertices[0]!, vertices[1]!)}`;
  const edges = contourEdges(contour);
  edges.forEach((edge, i) => {
    const closing = contour.closed && i === edges.length - 1;
    if (edge.bulge === 0) {
      if (!closing) data += `L${point(edge.x1, edge.y1)}`;
      return;
    }
    const { radius, sweep } = edgeCircle(edge);
    const r = number(radius);
    // Counter-clockwise with y up is the negative-angle direction with y down: sweep flag 0.
    data += `A${r} ${r} 0 ${Math.abs(sweep) > Math.PI ? 1 : 0} ${sweep > 0 ? 0 : 1} ${point(edge.x1, edge.y1)}`;
  });
  return contour.closed ? `${data}Z` : data;
}

function textElement(
  item: DrawnText,
  point: PointWriter,
  color: string,
  outlineText: SvgOptions["outlineText"],
): string {
  const text = { ...item, text: plainLine(item.text) };
  const fill = text.tone ? TONE_COLORS[text.tone] : color;
  const strokes = outlineText?.(text);
  if (strokes) return `<path fill="${fill}" stroke="none" d="${strokeData(strokes, point)}"/>`;
  const [x, y] = point(text.x, text.y).split(" ");
  const weight = text.bold ? ' font-weight="bold"' : "";
  const anchor = text.anchor === "start" ? "" : ` text-anchor="${text.anchor}"`;
  return `<text x="${x}" y="${y}" font-family="DejaVu Sans Condensed, DejaVu Sans, sans-serif" font-size="${number(text.size)}"${weight}${anchor} fill="${fill}" stroke="none">${escapeXml(text.text)}</text>`;
}

function strokeData(strokes: readonly LetterStroke[], point: PointWriter): string {
  return strokes
    .map(({ kind, points }) => {
      const pairs: string[] = [];
      for (let i = 0; i < points.length; i += 2) pairs.push(point(points[i]!, points[i + 1]!));
      return kind + pairs.join(" ");
    })
    .join("");
}

/** A number with at most four decimals (a tenth of a micrometre); `String` writes −0 as 0 and no power of ten above 1e-6. */
function number(value: number): string {
  const rounded = Math.round(value * 10_000) / 10_000;
  if (!Number.isFinite(rounded)) throw new RangeError(`svgText: finite coordinate expected, got ${value}`);
  return String(rounded);
}

function escapeXml(text: string): string {
  return plainLine(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replace(/[\ufffe\uffff]/gu, "\ufffd");
}
