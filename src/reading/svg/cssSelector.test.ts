import { expect, test } from "vitest";
import { readSelector, selects } from "./cssSelector.ts";
import { readDeclarations, readSheet } from "./cssSheet.ts";
import type { XmlElement } from "./xmlTree.ts";

/** Elements one in the other, the innermost last: `g`, `g.cut`, `path[id=edge]`. */
function nested(...names: readonly [name: string, attributes?: Readonly<Record<string, string>>][]): XmlElement {
  let parent: XmlElement | null = null;
  for (const [name, attributes = {}] of names) {
    const element = {
      name,
      attributes: new Map(Object.entries(attributes)),
      children: [],
      parent,
      text: "",
    } as XmlElement;
    (parent?.children as XmlElement[] | undefined)?.push(element);
    parent = element;
  }
  return parent!;
}

const path = nested(
  ["svg"],
  ["g", { class: "cut thick" }],
  ["g", { id: "left" }],
  ["path", { stroke: "red line" }],
);

// What each selector means: Selectors Level 3, 6 (simple selectors) and 8 (combinators).
test.each([
  ["path", true],
  ["*", true],
  ["g path", true],
  ["g > path", true],
  ["svg > path", false],
  ["svg path", true],
  ["svg>g>g>path", true],
  ["svg > g.cut.thick > #left path", true],
  [".cut > path", false],
  [".cut path", true],
  ["svg > g > path", false],
  ["[stroke]", true],
  ["[fill]", false],
  ["path[stroke='red'] ", false],
  ["g.cut path:first-child", true],
])("%s", (text, expected) => {
  expect(selects(readSelector(text)!, path)).toBe(expected);
});

test("an attribute's value stands in quotes of either kind, or in none", () => {
  const plain = nested(["path", { stroke: "red" }]);
  for (const text of ['[stroke="red"]', "[stroke='red']", "[stroke=red]"])
    expect(selects(readSelector(text)!, plain)).toBe(true);
  expect(selects(readSelector("[stroke=blue]")!, plain)).toBe(false);
});

test("many ancestors asked for among many: each is looked at once, not every choice of them", () => {
  // 20 of 60 ancestors can be chosen in more than 10¹⁵ ways.
  const deep = nested(...Array.from({ length: 60 }, () => ["g"] as [string]), ["path"]);
  expect(selects(readSelector(`svg ${"g ".repeat(20)}path`)!, deep)).toBe(false);
  expect(selects(readSelector(`${"g ".repeat(20)}path`)!, deep)).toBe(true);
  expect(selects(readSelector(`g > ${"g ".repeat(58)}> g path`)!, deep)).toBe(true);
});

test("a hundred thousand media rules one in the other are left out, not read for ever", () => {
  const sheet = `${"@media all{".repeat(100_000)}path{fill:red}${"}".repeat(100_000)}`;
  expect(readSheet(`${sheet}@media all{g{fill:red}}`).rules.length).toBe(1);
});

test("!important is no part of a value", () => {
  expect(readDeclarations("fill: red ! important; stroke: blue")).toEqual([
    { name: "fill", value: "red", isImportant: true },
    { name: "stroke", value: "blue", isImportant: false },
  ]);
});
