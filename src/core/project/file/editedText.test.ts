import fc from "fast-check";
import { expect, test } from "vitest";
import { editedText } from "./editedText.ts";

const FILE = `\ufeff{\r
	"$schema": "./project.schema.json",\r
	"unit":   "cm",\r
	"materials": [\r
		{ "id": "sail", "thickness": "0,95 mm", "stock": [] },\r
		{\r
			"id": "net",\r
			"fold": { "neutral": 0.4 }\r
		}\r
	],\r
	"length": "62 cm"\r
}\r
`;

test("an edit of a project file keeps every byte it does not concern", () => {
  const edited = editedText(FILE, [{ path: ["materials", 1, "fold", "neutral"], value: 0.36 }]);
  expect(edited).toBe(FILE.replace('"neutral": 0.4', '"neutral": 0.36'));
  // The same value said in another way stays as the maker wrote it.
  expect(editedText(FILE, [{ path: ["unit"], value: "cm" }])).toBe(FILE);
});

test("what is put in looks like what stands beside it", () => {
  const one = editedText(FILE, [{ path: ["materials", 0, "fold", "neutral"], value: 0.36 }]);
  expect(one).toBe(FILE.replace('"stock": [] }', '"stock": [], "fold": { "neutral": 0.36 } }'));
  const rows = editedText(FILE, [{ path: ["materials", 1, "grain"], value: "either" }]);
  expect(rows).toBe(FILE.replace("0.4 }\r\n", '0.4 },\r\n\t\t\t"grain": "either"\r\n'));
  const listed = editedText(FILE, [{ path: ["materials", 2], value: { id: "x" } }]);
  expect(listed).toBe(FILE.replace("\t\t}\r\n\t],", '\t\t},\r\n\t\t{ "id": "x" }\r\n\t],'));
});

test("an edited text reads as the document with that value set, whatever the document", () => {
  const key = fc.string({ minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(
      fc.dictionary(key, fc.jsonValue()),
      key,
      fc.jsonValue(),
      fc.constantFrom(0, 2, "\t"),
      (file, at, value, space) => {
        const document = JSON.parse(JSON.stringify(file)) as Record<string, unknown>;
        const text = JSON.stringify(document, null, space);
        const edited = JSON.parse(editedText(text, [{ path: [at], value: value as never }])) as unknown;
        expect(edited).toEqual(JSON.parse(JSON.stringify({ ...document, ...Object.fromEntries([[at, value]]) })));
      },
    ),
  );
});

test("a path through a plain value is our own mistake", () => {
  expect(() => editedText('{"a": 1}', [{ path: ["a", "b"], value: 2 }])).toThrow(RangeError);
});
