import type { z } from "zod";
import { seamLengths } from "../../panels/seams.ts";
import { sizePanels } from "../../panels/sizePanels.ts";
import type { FileProblem } from "../../problems/fileProblems.ts";
import { ok, type Problem, type Result } from "../../problems/problem.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import type { Project } from "../project.ts";
import { pathText, problemsOfIssues, shortJson } from "./issues.ts";
import { scanJson } from "./jsonText.ts";
import { FILE_VERSION, projectSchema, UNITS } from "./projectSchema.ts";
import { referenceProblems } from "./references.ts";

/** Characters a project file may have. */
export const MOST_CHARACTERS = 8_000_000;
const MOST_DEPTH = 32;
/** Problems told at once; a file with more is a different file. */
const MOST_PROBLEMS = 200;

/**
 * Reads a project file of this version or an older one. Every problem of the file is told at once, each with its
 * place, the offending value and what to do. Never throws, whatever the text.
 */
export function readProject(text: string): Result<Project> {
  const plain = text.replace(/^\ufeff/u, "");
  if (plain.length > MOST_CHARACTERS)
    return refused({ code: "file-too-large", path: "", characters: plain.length, limit: MOST_CHARACTERS });
  if (plain.trim() === "") return refused({ code: "file-empty", path: "" });
  const scan = scanJson(plain, MOST_DEPTH);
  if (scan.fault !== null) return refused(jsonProblem(plain, scan.fault));
  const data: unknown = JSON.parse(plain);
  const version = versionProblem(data);
  if (version !== null) return refused(version);
  const repeated = scan.repeatedKeys.map(
    ({ path, key }): Problem => ({ code: "key-repeated", path: pathText(path), key }),
  );
  return readData(data, repeated);
}

function readData(data: unknown, before: readonly Problem[]): Result<Project> {
  const parsed = schemaFor(data).safeParse(data);
  const issues = parsed.success ? [] : problemsOfIssues(parsed.error.issues, data);
  const problems = [...before, ...issues, ...referenceProblems(data)];
  if (parsed.success && problems.length === 0) {
    // Sizes that follow others need the whole project; each by itself was checked on the way.
    const sized = sizePanels(parsed.data.panels, parsed.data.measures);
    const seams = sized.ok ? seamLengths(sized.value, parsed.data.seams ?? []) : sized;
    if (seams.ok) return ok(parsed.data);
    problems.push(...seams.problems);
  }
  if (problems.length <= MOST_PROBLEMS) return { ok: false, problems };
  const more: FileProblem = { code: "more-problems", path: "", count: problems.length - MOST_PROBLEMS };
  return { ok: false, problems: [...problems.slice(0, MOST_PROBLEMS), more] };
}

function refused(problem: Problem): Result<Project> {
  return { ok: false, problems: [problem] };
}

const schemas = new Map<LengthUnit, z.ZodType<Project>>();

/** The schema for the unit the file states; millimetres when it states none that is known. */
function schemaFor(data: unknown): z.ZodType<Project> {
  const stated = (data as { unit?: unknown }).unit;
  const unit = UNITS.find((known) => known === stated) ?? "mm";
  const schema = schemas.get(unit) ?? projectSchema(unit);
  schemas.set(unit, schema);
  return schema;
}

function versionProblem(data: unknown): FileProblem | null {
  if (typeof data !== "object" || data === null || Array.isArray(data))
    return { code: "wrong-type", path: "", expected: "group", value: shortJson(data) };
  const version = (data as { laywright?: unknown }).laywright;
  if (version === FILE_VERSION) return null;
  if (typeof version === "number" && version > FILE_VERSION)
    return { code: "file-newer", path: "laywright", version, known: FILE_VERSION };
  const value = version === undefined ? null : shortJson(version);
  return { code: "file-version-unknown", path: "laywright", value, known: FILE_VERSION };
}

function jsonProblem(text: string, fault: NonNullable<ReturnType<typeof scanJson>["fault"]>): FileProblem {
  if (fault.reason === "too-deep") return { code: "file-too-deep", path: "", limit: MOST_DEPTH };
  const before = text.slice(0, fault.offset);
  const line = before.split("\n").length;
  const column = fault.offset - before.lastIndexOf("\n");
  return { code: "file-not-json", path: "", line, column, reason: fault.reason };
}
