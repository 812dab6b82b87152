import { failed, ok, type Problem, type Result } from "../../problems/problem.ts";
import { pathText } from "./issues.ts";
import { scanJson } from "./jsonText.ts";

const MOST_DEPTH = 32;

/** A group of keys as it stands in a file. */
export type Group = Readonly<Record<string, unknown>>;

/** A text that should be one group of keys; what breaks it is told with its place. Never throws. */
export function readGroup(source: string): Result<Group> {
  const plain = source.replace(/^\ufeff/u, "");
  const { fault, repeatedKeys } = scanJson(plain, MOST_DEPTH);
  if (fault !== null) {
    if (fault.reason === "too-deep") return failed({ code: "file-too-deep", path: "", limit: MOST_DEPTH });
    const before = plain.slice(0, fault.offset);
    const [line, column] = [before.split("\n").length, fault.offset - before.lastIndexOf("\n")];
    return failed({ code: "file-not-json", path: "", line, column, reason: fault.reason });
  }
  if (repeatedKeys.length > 0)
    return failed(
      ...repeatedKeys.map(({ path, key }): Problem => ({ code: "key-repeated", path: pathText(path), key })),
    );
  const data: unknown = JSON.parse(plain);
  if (typeof data === "object" && data !== null && !Array.isArray(data)) return ok(data as Group);
  return failed({ code: "wrong-type", path: "", expected: "group", value: JSON.stringify(data).slice(0, 40) });
}
