import { readFileSync } from "node:fs";
import { describeProblem } from "../../src/core/problems/describeProblem.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import type { Draw, Kind } from "./kind.ts";
import { type Json, type Schema, schemaValue } from "./schemaValues.ts";

const at = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
/** The demo's file whole, and with one thing of each list: a small file is read in a tenth of the time. */
const DEMO = at("fixtures/harbour-bags.json");
const SMALL = JSON.stringify(
  Object.fromEntries(
    Object.entries(JSON.parse(DEMO) as Record<string, Json>).map(([key, value]) => [
      key,
      Array.isArray(value) && key !== "materials" ? value.slice(0, 1) : value,
    ]),
  ),
);
const SCHEMA: Schema = JSON.parse(at("shared/project.schema.json"));

const JUNK: readonly Json[] = [
  ...[0, -0, -1, 1e9, 1e308, 5e-324, 0.1 + 0.2, 2 ** 53, ""],
  ...[
    "1e9 mm",
    "-3 mm",
    "NaN",
    "∞",
    "1/0 in",
    "__proto__",
    "constructor",
    "4 in",
    "12 cm",
    "\u0000",
    "\u202e",
    "\ud800",
  ],
  ...["a".repeat(5000), null, true, [], {}, [[0, 0]], [[[]]], { kind: "roll" }, { kind: "outline", points: [] }],
];

/** A place inside a value, drawn on the way down. */
function place(draw: Draw, value: Json): { parent: Json; key: string | number } | null {
  let found: { parent: Json; key: string | number } | null = null;
  for (let at = value; typeof at === "object" && at !== null; ) {
    const keys = Array.isArray(at) ? at.map((_, i) => i) : Object.keys(at);
    if (keys.length === 0 || (found !== null && draw.below(4) === 0)) break;
    const key = draw.one<string | number>(keys);
    found = { parent: at, key };
    at = (at as Record<string | number, Json>)[key]!;
  }
  return found;
}

/** Cloned, so that a later change of a case does not reach the cases behind it. */
const junk = (draw: Draw): Json => structuredClone(draw.one(JUNK));

/** An entry of its own also for `__proto__`, as a file has it; assigned, it would change what the value is. */
function put(parent: object, key: string, value: Json): void {
  Object.defineProperty(parent, key, { value, enumerable: true, writable: true, configurable: true });
}

/** One thing in a project changed, taken away, doubled or swapped. */
function spoil(draw: Draw, project: Json): void {
  const [a, b] = [place(draw, project), place(draw, project)];
  if (a === null || b === null) return;
  const parent = a.parent as Record<string | number, Json>;
  const how = draw.below(6);
  if (how === 0) delete parent[a.key];
  else if (how === 1) parent[a.key] = structuredClone((b.parent as Record<string | number, Json>)[b.key]!);
  else if (how === 2 && Array.isArray(a.parent)) a.parent.push(structuredClone(parent[a.key]!));
  else if (how === 3) put(parent, draw.one(["extra", "__proto__", "toString", "shape"]), junk(draw));
  else if (how === 4 && typeof parent[a.key] === "number")
    parent[a.key] = (parent[a.key] as number) * 10 ** (draw.below(13) - 6);
  else parent[a.key] = junk(draw);
}

/** A number somewhere in a project made larger, smaller, negative or broken; what it was may still be good. */
function turnNumber(draw: Draw, project: Json): void {
  for (let tries = 0; tries < 20; tries++) {
    const found = place(draw, project);
    const number = found && (found.parent as Record<string | number, Json>)[found.key];
    if (typeof number !== "number") continue;
    const by = draw.one([0.5, 0.9, 1.1, 2, 3, 10, 0.1, 100, 0.01, 1000, 1e5, -1, 0]);
    const whole = Number.isInteger(number) && draw.below(3) > 0;
    (found!.parent as Record<string | number, Json>)[found!.key] = whole ? Math.round(number * by) : number * by;
    return;
  }
}

/** A good project, or one that is near to it: many can still be laid. Changes the project given. */
export function nearlyGood(draw: Draw, project: Json): string {
  for (let change = draw.below(4); change > 0; change--)
    if (draw.below(6) === 0) spoil(draw, project);
    else turnNumber(draw, project);
  return JSON.stringify(project);
}

/** A project file of one thing of each list. */
export const smallDemo = (): Json => JSON.parse(SMALL);

/**
 * The demo's file, or one drawn from the published schema, with a few things in it changed, taken away, doubled or
 * swapped; or its text damaged.
 */
export function hostileFile(draw: Draw): string {
  const from = draw.below(16);
  const project: Json = from < 8 ? schemaValue(SCHEMA, SCHEMA, draw) : JSON.parse(from === 8 ? DEMO : SMALL);
  for (let change = from < 8 ? draw.below(3) : 1 + draw.below(4); change > 0; change--) spoil(draw, project);
  const text = JSON.stringify(project);
  if (draw.below(8) > 0) return text;
  const [cut, on] = [draw.below(text.length), draw.below(text.length)];
  return draw.one([text.slice(0, cut), text.slice(0, cut) + text.slice(on), `${text}${text}`, `\ufeff${text}`]);
}

/** Hostile project files through a reader: a project, or problems that can be told; nothing thrown. */
export function hostileFilesOf(read: typeof readProject): Kind {
  return {
    name: "files",
    about: "hostile project files through reader and schema",
    limitMs: 30_000,
    run: (draw) => {
      const result = read(hostileFile(draw));
      if (result.ok) return "read";
      if (result.problems.length === 0) throw new Error("refused without a problem");
      for (const problem of result.problems) {
        const { what, remedy } = describeProblem(problem);
        // What somebody wrote may be told back to her, in quotes.
        if (/undefined|\[object|NaN/u.test((what + remedy).replaceAll('"NaN', "")))
          throw new Error(`told badly: ${what} ${remedy}`);
      }
      return "told";
    },
  };
}

export const hostileFiles: Kind = hostileFilesOf(readProject);
