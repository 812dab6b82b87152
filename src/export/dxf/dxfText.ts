import type { Drawing, DrawnText } from "../../core/drawing/list/drawing.ts";
import { plainLine } from "../../core/drawing/list/textWidth.ts";
import type { Contour } from "../../core/geometry/contour.ts";
import { DRAWING_ROLES, type DrawingRole, type LineWishes } from "../../core/project/outputSettings.ts";

/** Layer of a role: its name and the colour number of the classic palette (1 red … 7 black or white). */
interface DxfLayer {
  readonly name: string;
  readonly color: number;
}

type DxfLayers = Readonly<Record<DrawingRole, DxfLayer>>;

/** Layers named like the roles; every role has a colour of its own so that machines can tell them apart. */
const DXF_LAYERS: DxfLayers = {
  cut: { name: "CUT", color: 7 },
  fold: { name: "FOLD", color: 30 },
  stitch: { name: "STITCH", color: 4 },
  tape: { name: "TAPE", color: 2 },
  mark: { name: "MARK", color: 6 },
  grain: { name: "GRAIN", color: 3 },
  flaw: { name: "FLAW", color: 1 },
  cloth: { name: "CLOTH", color: 8 },
  label: { name: "LABEL", color: 5 },
  sheet: { name: "SHEET", color: 9 },
};

/** What is written. */
export interface DxfOptions {
  /** Layer name and colour (`#rrggbb`) of a role, where they are not our own. */
  readonly lines?: LineWishes;
  /** Only these roles; all when left out. */
  readonly roles?: readonly DrawingRole[];
  /** Rings of a text's letters, x and y in turn, in drawing coordinates; null to write it as text. */
  readonly outlineText?: (text: DrawnText) => readonly (readonly number[])[] | null;
}

/** The classic palette's first colours, which every reader agrees on. 7 is black on white paper. */
const PALETTE: readonly (readonly [number, string])[] = [
  [1, "#ff0000"],
  [2, "#ffff00"],
  [3, "#00ff00"],
  [4, "#00ffff"],
  [5, "#0000ff"],
  [6, "#ff00ff"],
  [7, "#000000"],
  [7, "#ffffff"],
  [8, "#808080"],
  [9, "#c0c0c0"],
];

/** Number of the palette colour nearest to `#rrggbb`; release 12 has no other colours. */
function paletteColor(color: string): number {
  const parts = (text: string): number[] => [1, 3, 5].map((at) => Number.parseInt(text.slice(at, at + 2), 16));
  const wanted = parts(color);
  const away = (text: string): number => parts(text).reduce((sum, part, i) => sum + (part - wanted[i]!) ** 2, 0);
  return PALETTE.reduce((best, entry) => (away(entry[1]) < away(best[1]) ? entry : best))[0];
}

function layersFor(lines: LineWishes): DxfLayers {
  const entries = DRAWING_ROLES.map((role) => {
    const { layer, color } = lines[role] ?? {};
    const own = DXF_LAYERS[role];
    return [
      role,
      { name: layer ?? own.name, color: color === undefined ? own.color : paletteColor(color) },
    ] as const;
  });
  return Object.fromEntries(entries) as Record<DrawingRole, DxfLayer>;
}

/**
 * A drawing as DXF at true size in millimetres: the entities of release 12 (POLYLINE with bulges, TEXT), which every
 * reader knows, one layer a role, `$INSUNITS` 4 (mm). Filled areas are left out. Lower-left of the box at the origin.
 * Source: DXF reference, release 12; `$INSUNITS` is a later header variable that older readers skip.
 */
export function dxfText(drawing: Drawing, options: DxfOptions = {}): string {
  const { lines = {}, roles = DRAWING_ROLES } = options;
  const layers = layersFor(lines);
  const { minX, minY, maxX, maxY } = drawing.box;
  const written = longText();
  const put = (code: number, value: string | number): void =>
    written.add(`${code}\r\n${typeof value === "number" ? decimal(value) : value}\r\n`);
  const section = (name: string, body: () => void): void => {
    put(0, "SECTION");
    put(2, name);
    body();
    put(0, "ENDSEC");
  };
  section("HEADER", () => {
    put(9, "$ACADVER");
    put(1, "AC1009");
    put(9, "$INSUNITS");
    put(70, "4");
    put(9, "$MEASUREMENT");
    put(70, "1");
    put(9, "$EXTMIN");
    point(put, 0, 0);
    put(9, "$EXTMAX");
    point(put, maxX - minX, maxY - minY);
  });
  section("TABLES", () => tables(put, layers, roles));
  section("ENTITIES", () => {
    for (const item of drawing.items) {
      if (item.kind === "area" || !roles.includes(item.role)) continue;
      const layer = layerName(layers[item.role].name);
      if (item.kind === "line") polyline(put, item.contour, layer, minX, minY);
      else textOrLetters(put, item, layer, minX, minY, options.outlineText);
    }
  });
  put(0, "EOF");
  return written.all();
}

/** Lines that are joined before the next are kept apart: millions of short texts take ten times their length. */
const LINES = 10_000;

function longText(): { add: (line: string) => void; all: () => string } {
  const parts: string[] = [];
  let lines: string[] = [];
  const join = (): void => {
    parts.push(lines.join(""));
    lines = [];
  };
  const add = (line: string): void => {
    if (lines.push(line) === LINES) join();
  };
  const all = (): string => {
    join();
    return parts.join("");
  };
  return { add, all };
}

type Put = (code: number, value: string | number) => void;

function point(put: Put, x: number, y: number, first = 10): void {
  put(first, x);
  put(first + 10, y);
  put(first + 20, 0);
}

function tables(put: Put, layers: DxfLayers, roles: readonly DrawingRole[]): void {
  put(0, "TABLE");
  put(2, "LTYPE");
  put(70, "1");
  put(0, "LTYPE");
  put(2, "CONTINUOUS");
  put(70, "64");
  put(3, "Solid line");
  put(72, "65");
  put(73, "0");
  put(40, 0);
  put(0, "ENDTAB");
  put(0, "TABLE");
  put(2, "LAYER");
  // Roles may share a layer; its colour is that of the first.
  const table = new Map<string, number>();
  for (const role of roles) {
    const name = layerName(layers[role].name);
    if (!table.has(name)) table.set(name, layers[role].color);
  }
  put(70, String(table.size));
  for (const [name, color] of table) {
    put(0, "LAYER");
    put(2, name);
    put(70, "0");
    put(62, String(color));
    put(6, "CONTINUOUS");
  }
  put(0, "ENDTAB");
}

function polyline(put: Put, contour: Contour, layer: string, minX: number, minY: number): void {
  const { vertices, closed } = contour;
  put(0, "POLYLINE");
  put(8, layer);
  put(66, "1");
  point(put, 0, 0);
  put(70, closed ? "1" : "0");
  for (let i = 0; i < vertices.length; i += 3) {
    put(0, "VERTEX");
    put(8, layer);
    point(put, vertices[i]! - minX, vertices[i + 1]! - minY);
    if (vertices[i + 2] !== 0) put(42, vertices[i + 2]!);
  }
  put(0, "SEQEND");
  put(8, layer);
}

/** A text as one TEXT, or as a closed POLYLINE for every stroke of its letters. */
function textOrLetters(
  put: Put,
  item: DrawnText,
  layer: string,
  minX: number,
  minY: number,
  outlineText: DxfOptions["outlineText"],
): void {
  const rings = outlineText?.(item);
  if (!rings) {
    text(put, item, layer, minX, minY);
    return;
  }
  for (const ring of rings) {
    const vertices = Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!, 0]);
    polyline(put, { vertices: Float64Array.from(vertices.flat()), closed: true }, layer, minX, minY);
  }
}

const ANCHORS = { start: "0", middle: "1", end: "2" };
/** Text height is that of capitals, about 0.73 of the em in the fonts readers use. */
const CAPITALS = 0.73;

function text(put: Put, item: DrawnText, layer: string, minX: number, minY: number): void {
  put(0, "TEXT");
  put(8, layer);
  point(put, item.x - minX, item.y - minY);
  put(40, item.size * CAPITALS);
  put(1, dxfString(item.text));
  put(50, item.turnDeg);
  put(72, ANCHORS[item.anchor]);
  if (item.anchor !== "start") point(put, item.x - minX, item.y - minY, 11);
}

/** One line of ASCII; other characters as `\U+XXXX`, a caret so that it does not start a control character. */
function dxfString(value: string): string {
  let out = "";
  for (const unit of plainLine(value).split("")) {
    const code = unit.charCodeAt(0);
    if (unit === "^") out += "^ ";
    else if (code < 128) out += unit;
    else out += `\\U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
  }
  // A text of "%%" codes would be read as underlines and symbols.
  return out.replaceAll("%%", "% %");
}

/** Layer names of release 12: capitals, digits, `$ - _`, at most 31. */
function layerName(name: string): string {
  const safe = name
    .toUpperCase()
    .replace(/[^A-Z0-9$_-]+/gu, "_")
    .slice(0, 31);
  return safe === "" ? "0" : safe;
}

/** Nanometres are enough: readers keep 16 digits, no power of ten. */
function decimal(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`dxfText: finite number expected, got ${value}`);
  const rounded = Math.round(value * 1e9) / 1e9;
  const written = String(rounded === 0 ? 0 : rounded);
  return written.includes("e") ? rounded.toFixed(9) : written.includes(".") ? written : `${written}.0`;
}
