import type { BatchProblem } from "../problems/batchProblems.ts";
import { nearestWord } from "../problems/nearestWord.ts";
import { pathText } from "../project/file/issues.ts";
import { readProject } from "../project/file/readProject.ts";

/** A place in a project file. */
export type Place = readonly (string | number)[];

/** What a column says of its orders: a word of the order itself, or a value of the template. */
export type Column =
  | { readonly head: string; readonly of: "order" | "due" | "shade" }
  | { readonly head: string; readonly of: "place"; readonly place: Place };

/** A project file as data. */
export type Template = Readonly<Record<string, unknown>>;

interface Part {
  readonly id: string;
  readonly name: string;
  readonly place: Place;
}

const LISTS = ["straps", "panels", "materials", "measures"] as const;
const OWN = ["order", "due", "shade"] as const;

/**
 * What each head of a table names: `order`, `due`, `shade`; a key of the template (`bags`, `straps[0].width`); the id or
 * name of a part and a field of it (`handle.width`); or a measure of the bag by itself (`height`). Null with a problem.
 */
export function columnsOf(template: Template, heads: readonly string[]): (Column | BatchProblem)[] {
  const parts = partsOf(template);
  const seen = new Map<string, string>();
  return heads.map((raw) => {
    const head = raw.trim();
    const column = columnOf(template, parts, head);
    if ("code" in column) return column;
    const key = column.of === "place" ? pathText(column.place) : ` ${column.of}`;
    const first = seen.get(key);
    if (first !== undefined) return { code: "order-column-twice", path: head, first };
    seen.set(key, head);
    return column;
  });
}

function columnOf(template: Template, parts: readonly Part[], head: string): Column | BatchProblem {
  const own = OWN.find((word) => word === head.toLowerCase());
  if (own !== undefined) return { head, of: own };
  const places = placesOf(template, parts, head);
  if (places.length > 1) {
    const ids = places.map(
      (place) => parts.find((part) => place.slice(0, 2).every((s, i) => s === part.place[i]))!.id,
    );
    return { code: "order-column-ambiguous", path: head, parts: ids };
  }
  const [place] = places;
  if (place === undefined)
    return { code: "order-column-unknown", path: head, nearest: nearestHead(template, parts, head) };
  const unknown = unknownKey(template, place);
  if (unknown === null) return { head, of: "place", place };
  const nearest = unknown.nearest === null ? null : head.slice(0, head.lastIndexOf(".") + 1) + unknown.nearest;
  return { code: "order-column-unknown", path: head, nearest };
}

/** Places that a head can mean: one, or several where parts have the same name; ids come before names. */
function placesOf(template: Template, parts: readonly Part[], head: string): Place[] {
  const steps = stepsOf(head);
  if (steps === null) return [];
  const [first] = steps;
  const measure = parts.filter(
    ({ id, name, place }) => place[0] === "measures" && (same(id, head) || same(name, head)),
  );
  if (measure.length > 0) return measure.map(({ place }) => [...place, "length"]);
  if (first === "bags" || (typeof first === "string" && Object.hasOwn(template, first))) return [steps];
  for (const key of ["id", "name"] as const) {
    const found = parts.filter(
      (part) => head.length > part[key].length && same(`${part[key]}.`, head.slice(0, part[key].length + 1)),
    );
    const longest = Math.max(...found.map((part) => part[key].length));
    const meant = found.filter((part) => part[key].length === longest);
    const rest = meant.length === 0 ? null : stepsOf(head.slice(longest + 1));
    if (rest !== null) return meant.map(({ place }) => [...place, ...rest]);
  }
  return [];
}

function same(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

/** `straps[0].length.worn` in steps; null when it is not written so. */
function stepsOf(text: string): Place | null {
  const steps: (string | number)[] = [];
  for (const word of text.split(".")) {
    const [, name = "", indices = ""] = /^([^[\]]+)((?:\[\d+\])*)$/u.exec(word) ?? [];
    if (name === "") return null;
    steps.push(name.trim(), ...[...indices.matchAll(/\d+/gu)].map(([digits]) => Number(digits)));
  }
  return steps;
}

/** The reader itself says whether a field is known: it is asked for each head once. */
function unknownKey(template: Template, place: Place): { readonly nearest: string | null } | null {
  if (valueAt(template, place) !== undefined) return null;
  const read = readProject(JSON.stringify(withValue(template, place, null)));
  if (read.ok) return null;
  for (const problem of read.problems) {
    if (problem.code !== "unknown-key") continue;
    const at = place.findIndex((_, i) => pathText(place.slice(0, i)) === problem.path && place[i] === problem.key);
    if (at >= 0) return problem;
  }
  return null;
}

function nearestHead(template: Template, parts: readonly Part[], head: string): string | null {
  const dot = head.lastIndexOf(".");
  const [start, field] = dot < 0 ? [head, ""] : [head.slice(0, dot), head.slice(dot)];
  const names = parts.flatMap(({ id, name }) => [id, name]);
  const nearest = nearestWord(start, dot < 0 ? [...OWN, ...Object.keys(template)] : names);
  return nearest === null ? null : nearest + field;
}

function partsOf(template: Template): Part[] {
  return LISTS.flatMap((list) => {
    const entries = template[list];
    if (!Array.isArray(entries)) return [];
    return entries.flatMap((entry: { id?: unknown; name?: unknown }, i): Part[] => {
      const id = typeof entry?.id === "string" ? entry.id : "";
      return id === "" ? [] : [{ id, name: typeof entry.name === "string" ? entry.name : id, place: [list, i] }];
    });
  });
}

/** What stands at a place of data; undefined where nothing does. */
export function valueAt(data: unknown, place: Place): unknown {
  let value = data;
  for (const step of place) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}

/** Data with another value at a place; groups on the way are made. What is not on the way is shared. */
export function withValue(data: unknown, place: Place, value: unknown): unknown {
  const [step, ...rest] = place;
  if (step === undefined) return value;
  if (Array.isArray(data)) return data.map((entry, i) => (i === step ? withValue(entry, rest, value) : entry));
  const group = typeof data === "object" && data !== null ? (data as Record<PropertyKey, unknown>) : {};
  return { ...group, [step]: withValue(group[step], rest, value) };
}
