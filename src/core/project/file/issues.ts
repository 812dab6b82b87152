import type { z } from "zod";
import type { Expected, FileProblem } from "../../problems/fileProblems.ts";
import { nearestWord } from "../../problems/nearestWord.ts";
import type { Problem } from "../../problems/problem.ts";

type Path = readonly PropertyKey[];

/** A place in the file as people write it: `materials[1].stock[0].width`. */
export function pathText(path: Path): string {
  return path
    .map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
    .join("")
    .replace(/^\./u, "");
}

/** What zod found, as the house's problems. `data` is the file as parsed from JSON. */
export function problemsOfIssues(issues: readonly z.core.$ZodIssue[], data: unknown): Problem[] {
  return issues.flatMap((issue) => problemsOf(issue, data));
}

function problemsOf(issue: z.core.$ZodIssue, data: unknown): Problem[] {
  const path = pathText(issue.path);
  const value = valueAt(data, issue.path);
  switch (issue.code) {
    case "custom":
      // Fields put a whole problem here, its place left to the issue.
      return [{ ...(issue.params?.["problem"] as Problem), path }];
    case "unrecognized_keys":
      return issue.keys.map((key) => unknownKey(path, key, issue.message));
    case "invalid_value":
      return [isMissing(value) ? missing(issue.path) : notOneOf(path, value, issue.values.map(String))];
    case "invalid_union":
      if (isMissing(value)) return [missing(issue.path)];
      if ("options" in issue) return [notOneOf(path, value, (issue.options as unknown[]).map(String))];
      return innerProblems(issue, data) ?? [wrongType(path, issue.message, value)];
    case "too_small":
    case "too_big":
      return [outOfBounds(issue, path, value)];
    case "invalid_format":
      return [{ code: "text-unprintable", path, value: shortJson(value) }];
    default:
      return [isMissing(value) ? missing(issue.path) : wrongType(path, issue.message, value)];
  }
}

/**
 * A union whose branches differ by type: the branch that took the value's type says what is wrong in it. Null when
 * none did.
 */
function innerProblems(issue: z.core.$ZodIssueInvalidUnion, data: unknown): Problem[] | null {
  const branches = issue.errors.map((errors) => errors.map((e) => ({ ...e, path: [...issue.path, ...e.path] })));
  // A group can be no choice of words, so a branch of choices did not take it.
  const isGroup = typeof valueAt(data, issue.path) === "object";
  const isTaken = (e: z.core.$ZodIssue): boolean =>
    e.path.length > issue.path.length || !(e.code === "invalid_type" || (isGroup && e.code === "invalid_value"));
  const taken = branches.filter((errors) => errors.every(isTaken));
  const least = taken.sort((a, b) => keyFaults(a) - keyFaults(b))[0];
  if (least === undefined || (keyFaults(least) > 0 && taken.length > 1)) return null;
  return problemsOfIssues(least, data);
}

function keyFaults(errors: readonly z.core.$ZodIssue[]): number {
  return errors.filter((e) => e.code === "unrecognized_keys" || e.code === "invalid_union").length;
}

function unknownKey(path: string, key: string, known: string): FileProblem {
  return { code: "unknown-key", path, key, nearest: nearestWord(key, known.split(" ")) };
}

function notOneOf(path: string, value: unknown, choices: readonly string[]): FileProblem {
  if (value === "bias") return { code: "bias-refused", path };
  const nearest = typeof value === "string" ? nearestWord(value, choices) : null;
  return { code: "not-one-of", path, value: shortJson(value), choices, nearest };
}

function missing(path: Path): FileProblem {
  return { code: "key-missing", path: pathText(path.slice(0, -1)), key: String(path.at(-1) ?? "") };
}

function wrongType(path: string, message: string, value: unknown): FileProblem {
  return { code: "wrong-type", path, expected: message as Expected, value: shortJson(value) };
}

function outOfBounds(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  path: string,
  value: unknown,
): FileProblem {
  const min = issue.code === "too_small" ? Number(issue.minimum) : null;
  const max = issue.code === "too_big" ? Number(issue.maximum) : null;
  if (Array.isArray(value)) return { code: "list-length", path, count: value.length, least: min, most: max };
  if (typeof value !== "string") return { code: "number-out-of-range", path, value: shortJson(value), min, max };
  return max === null
    ? { code: "text-empty", path }
    : { code: "text-too-long", path, characters: value.length, limit: max };
}

function isMissing(value: unknown): boolean {
  return value === undefined;
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}

const LONGEST = 60;

/** A value as short JSON for a message: texts and lists are cut, never the whole file. */
export function shortJson(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? "[]" : "[ … ]";
  if (typeof value === "object" && value !== null) return "{ … }";
  const text = JSON.stringify(typeof value === "string" ? value.slice(0, 2 * LONGEST) : value) ?? "null";
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
