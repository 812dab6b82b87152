// A name that a maker gave, or a file that someone sent her, never becomes markup or code: the page writes text nodes
// and attributes, and nothing in it makes elements or programs out of text.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";

const WORDS = new Set([
  "innerHTML",
  "outerHTML",
  "insertAdjacentHTML",
  "dangerouslySetInnerHTML",
  "createContextualFragment",
  "setHTMLUnsafe",
  "srcdoc",
  "eval",
  "Function",
]);

/** Names of the kind in a source, as they are used in code; texts and comments may have the words. */
function found(name: string, code: string): string[] {
  const source = ts.createSourceFile(name, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const places: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return;
    if (ts.isIdentifier(node) && WORDS.has(node.text)) places.push(`${name}: ${node.text}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return places;
}

test("what would make markup or code of text is seen where it is used, not where it is spoken of", () => {
  expect(found("a.tsx", "div.innerHTML = name;")).toEqual(["a.tsx: innerHTML"]);
  expect(found("a.tsx", "const a = <p dangerouslySetInnerHTML={{ __html: name }} />;")).toHaveLength(1);
  expect(found("a.tsx", "const run = new Function(name);")).toHaveLength(1);
  expect(found("a.tsx", "// eval\nconst text = 'innerHTML'; type F = Function;")).toEqual([]);
});

test("nothing on the page and in what is written makes markup or code of text", () => {
  const root = fileURLToPath(new URL("../../src/", import.meta.url));
  const files = ["web", "export", "core", "reading", "worker"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => /(?<!\.test)\.tsx?$/u.test(name))
      .map((name) => join(folder, name)),
  );
  expect(files.length).toBeGreaterThan(300);
  expect(files.flatMap((name) => found(name, readFileSync(join(root, name), "utf8")))).toEqual([]);
});
