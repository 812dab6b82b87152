import { expect, test } from "vitest";
import { quoted } from "../words/phrase.ts";
import { describeProblem, problemLine } from "./describeProblem.ts";

test("a problem becomes a place, a sentence and a remedy", () => {
  const problem = { code: "length-unit-unknown", path: "straps[1].width", text: "3 el", unit: "el" } as const;
  expect(describeProblem(problem)).toEqual({
    path: "straps[1].width",
    what: 'The unit "el" in "3 el" is not known.',
    remedy: "Use mm, cm, m, in, ft or yd.",
  });
  expect(problemLine(problem)).toMatch(/^straps\[1\]\.width: The unit/u);
  expect(problemLine({ code: "file-empty", path: "" })).toMatch(/^The file is empty\. /u);
});

test("another language is another table", () => {
  const table = new Proxy({}, { get: () => () => ({ what: "Nein.", remedy: "Doch." }) });
  expect(describeProblem({ code: "file-empty", path: "" }, table as never).what).toBe("Nein.");
});

test("hostile text is quoted on one line and cut", () => {
  expect(quoted("a\nb\u0000c\u202e")).toBe('"a�b�c�"');
  expect(quoted("x".repeat(1000)).length).toBeLessThan(70);
});
