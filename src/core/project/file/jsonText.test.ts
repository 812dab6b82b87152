import fc from "fast-check";
import { expect, test } from "vitest";
import { scanJson } from "./jsonText.ts";

const fault = (text: string) => {
  const found = scanJson(text, 8).fault;
  return found && `${found.reason} ${found.offset}`;
};

test.each([
  ["", "ended-early 0"],
  ['{"a":1', "ended-early 6"],
  ['{"a":1,}', "comma-too-many 7"],
  ["[1,,2]", "value-expected 3"],
  ["[1 2]", "comma-expected 3"],
  ["{a:1}", "key-expected 1"],
  ['{"a" 1}', "colon-expected 5"],
  ["[NaN]", "value-expected 1"],
  ["[01]", "bad-number 2"],
  ["[+1]", "bad-number 1"],
  ["[1e]", "bad-number 2"],
  ['["a\nb"]', "bad-text 1"],
  ['["a]', "bad-text 1"],
  ["1 2", "more-after-end 2"],
  ['["a\\qb"]', "bad-text 1"],
  ['["a\\u12g4"]', "bad-text 1"],
  ['["a\\n\\u00e9 b", ""]', null],
  ["[[[[[[[[[1]]]]]]]]]", "too-deep 8"],
  ["[[[[[[[[1]]]]]]]]", null],
])("%s: %s", (text, expected) => {
  expect(fault(text)).toBe(expected);
});

test("keys given twice are named with the place of their object", () => {
  expect(scanJson('{"a":[0,{"b":1,"\\u0062":2}],"a":1}', 8).repeatedKeys).toEqual([
    { path: ["a", 1], key: "b" },
    { path: [], key: "a" },
  ]);
});

test("a text without its end is told at once, however long", () => {
  for (const length of [100, 1_000_000]) {
    expect(fault(`["${"a".repeat(length)}`)).toBe("bad-text 1");
    expect(fault(`["${"a\\n".repeat(length)}\n"]`)).toBe("bad-text 1");
  }
});

test("a hundred thousand brackets neither overflow nor take long", () => {
  expect(scanJson("[".repeat(100_000), 1e9).fault?.reason).toBe("ended-early");
});

// The language's own reader (RFC 8259) is the reference.
test("finds a fault exactly where the built-in reader refuses", () => {
  const token = fc.constantFrom(
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    '"a"',
    "1",
    "-1.5e3",
    "true",
    "nul",
    " ",
    "0",
    '"\\',
    ".",
  );
  const text = fc.oneof(
    fc.array(token, { maxLength: 8 }).map((tokens) => tokens.join("")),
    fc.json({ maxDepth: 4 }),
  );
  fc.assert(
    fc.property(text, (json) => {
      let accepted = true;
      try {
        JSON.parse(json);
      } catch {
        accepted = false;
      }
      expect(scanJson(json, 100).fault === null).toBe(accepted);
    }),
    { numRuns: 3000 },
  );
});
