import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { analyse } from "scslre";
import ts from "typescript";
import { expect, test } from "vitest";

/** Expressions that only ever see short texts, with the reason. */
const SHORT_TEXTS: Readonly<Record<string, string>> = {
  "/0+$/u": "the digits of one number that was written by us or found to be a number of at most seven digits",
};

/** What makes an expression take the square of its text's length, or worse; by the scslre package, which is not ours. */
function faultsOf(literal: string): string[] {
  const [, source = "", flags = ""] = /^\/(.*)\/([a-z]*)$/su.exec(literal) ?? [];
  const { reports } = analyse(new RegExp(source, flags));
  return reports.map((report) => (report.exponential ? "2ⁿ" : "n²"));
}

function expressionsIn(path: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) found.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest, true));
  return found;
}

test("no expression in the sources can take longer than its text is long", () => {
  const files = readdirSync("src", { recursive: true, encoding: "utf8" }).filter(
    (path) => /\.tsx?$/u.test(path) && !path.endsWith(".test.ts"),
  );
  const all = files.flatMap((path) => expressionsIn(join("src", path)).map((literal) => ({ path, literal })));
  expect(all.length).toBeGreaterThan(150);
  const faults = all.flatMap(({ path, literal }) =>
    literal in SHORT_TEXTS ? [] : faultsOf(literal).map((cost) => `${cost}: ${literal} in ${path}`),
  );
  expect(faults).toEqual([]);
});

test("the reader of expressions finds what takes long", () => {
  expect(faultsOf('/"(?:[^"]+|x)*"/u')).toContain("2ⁿ");
  expect(faultsOf("/a+$/u")).toContain("n²");
  expect(faultsOf("/^a+$/u")).toEqual([]);
});
