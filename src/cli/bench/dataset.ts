import type { ToldProblem } from "../inOut/toldProblem.ts";

/** One item of a data set: its outline in the set's own frame and units. */
export interface DatasetItem {
  /** As published, else the place in the list. */
  readonly item: string | number;
  readonly points: readonly (readonly [number, number])[];
  readonly count: number;
}

export const KINDS = ["rect-strip", "irregular-strip", "rect-sheet"] as const;

/** One instance: a strip that runs along x, or a closed sheet; `stripWidth` is its extent along y. */
export interface Instance {
  readonly name: string;
  readonly kind: (typeof KINDS)[number];
  readonly stripWidth: number;
  /** Extent of a sheet along x; null for a strip, which is open. */
  readonly sheetLength: number | null;
  readonly turns: readonly number[];
  readonly items: readonly DatasetItem[];
}

/** Instances of a parsed data set file (one or an array), or what is wrong with it. */
export function readDataset(data: unknown, path: string): { instances: Instance[]; problems: ToldProblem[] } {
  const instances: Instance[] = [];
  const problems: ToldProblem[] = [];
  const list = Array.isArray(data) ? data : [data];
  if (list.length === 0) problems.push(wrong(path, "holds no instance"));
  for (const [index, entry] of list.entries()) {
    const at = Array.isArray(data) ? `${path}[${index}]` : path;
    const fault = faultOf(entry);
    if (fault) problems.push(wrong(at, fault));
    else instances.push(instanceOf(entry as RawInstance));
  }
  return { instances, problems };
}

interface RawInstance {
  name: string;
  kind: Instance["kind"];
  stripWidth: number;
  width: number;
  height: number;
  rotate90?: boolean;
  rotations?: number[];
  items: { w: number; h: number; n: number; id?: string | number; polygon: [number, number][]; demand: number }[];
}

function wrong(path: string, fault: string): ToldProblem {
  return { code: "dataset-unreadable", path, message: `${path} ${fault}.` };
}

/** Largest instance taken on, in copies. */
const MOST_COPIES = 100_000;

function faultOf(entry: unknown): string | null {
  if (typeof entry !== "object" || entry === null) return "is no instance: an object was expected";
  const { name, kind, stripWidth, width, height, items, rotations } = entry as Record<string, unknown>;
  if (typeof name !== "string") return "has no name";
  if (!KINDS.includes(kind as Instance["kind"]))
    return `has an unknown kind: one of ${KINDS.map((known) => `"${known}"`).join(", ")} was expected`;
  if (kind === "rect-sheet" ? !isSize(width) || !isSize(height) : !isSize(stripWidth))
    return kind === "rect-sheet"
      ? "has no width and height: positive numbers were expected"
      : "has no stripWidth: a positive number was expected";
  if (!Array.isArray(items) || items.length === 0) return "has no items";
  if (
    kind === "irregular-strip" &&
    !(Array.isArray(rotations) && rotations.length > 0 && rotations.every(isNumber))
  )
    return "has no rotations: a list of degrees was expected";
  const fault = items.findIndex((item) => !(kind === "irregular-strip" ? isOutlineItem(item) : isRectItem(item)));
  if (fault >= 0) return `has an item that cannot be read: items[${fault}]`;
  const copies = items.reduce((sum, item) => sum + (kind === "irregular-strip" ? item.demand : item.n), 0);
  return copies > MOST_COPIES ? `asks for ${copies} pieces; at most ${MOST_COPIES} are taken on` : null;
}

const isNumber = (value: unknown): boolean => typeof value === "number" && Number.isFinite(value);
const isSize = (value: unknown): boolean => isNumber(value) && (value as number) > 0 && (value as number) < 1e9;
const isCount = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 0;

function isRectItem(item: unknown): boolean {
  if (typeof item !== "object" || item === null) return false;
  const { w, h, n } = item as Record<string, unknown>;
  return isSize(w) && isSize(h) && isCount(n);
}

function isOutlineItem(item: unknown): boolean {
  if (typeof item !== "object" || item === null) return false;
  const { polygon, demand } = item as Record<string, unknown>;
  if (!isCount(demand) || !Array.isArray(polygon) || polygon.length < 3) return false;
  return polygon.every((point) => Array.isArray(point) && point.length === 2 && point.every(isNumber));
}

function instanceOf(entry: RawInstance): Instance {
  const { name, kind } = entry;
  const turns = entry.rotate90 ? [0, 90] : [0];
  if (kind === "rect-strip") {
    // `w` lies across the strip (y), `h` along it (x).
    const items = entry.items.map(({ w, h, n, id }, i) => rectangleItem(id ?? i, h, w, n));
    return { name, kind, stripWidth: entry.stripWidth, sheetLength: null, turns, items };
  }
  if (kind === "rect-sheet") {
    // As on paper: `w` and the sheet's width along x, `h` and its height along y.
    const items = entry.items.map(({ w, h, n, id }, i) => rectangleItem(id ?? i, w, h, n));
    return { name, kind, stripWidth: entry.height, sheetLength: entry.width, turns, items };
  }
  const items = entry.items.map(({ id, polygon, demand }, index): DatasetItem => {
    return { item: id ?? index, points: polygon, count: demand };
  });
  return { name, kind, stripWidth: entry.stripWidth, sheetLength: null, turns: entry.rotations!, items };
}

/** The origin is the lower-left corner. */
function rectangleItem(item: string | number, along: number, across: number, count: number): DatasetItem {
  const points: [number, number][] = [
    [0, 0],
    [along, 0],
    [along, across],
    [0, across],
  ];
  return { item, points, count };
}
