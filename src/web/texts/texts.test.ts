import { expect, test } from "vitest";
import { page as de } from "./de/page.ts";
import { page as en } from "./en/page.ts";
import { page as fr } from "./fr/page.ts";
import { CATALOGUES } from "./texts.ts";

/** Texts of a catalogue by their place; functions as they are written. */
function leaves(catalogue: object, path = ""): [string, string][] {
  return Object.entries(catalogue).flatMap(([key, value]: [string, unknown]): [string, string][] => {
    const at = path === "" ? key : `${path}.${key}`;
    if (typeof value === "object" && value !== null) return leaves(value, at);
    return [[at, typeof value === "string" ? `"${value}"` : String(value)]];
  });
}

/** The words between quotes of a text, what is put in left out. */
function literals(source: string): string {
  const quoted = source.match(/"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`/gu) ?? [];
  return quoted.map((text) => text.slice(1, -1).replace(/\$\{[^}]*\}/gu, "")).join(" ");
}

/** Words that are spelled alike in both languages. */
const ALIKE = {
  de: /^(Laywright|Name|PVC|PU|Nylon|EVA|Material|Polyester|Laser|Radius|Canvas|Plan|minus|Position|px)$/iu,
  fr: /^(Laywright|Machine|Table|PVC|PU|EVA|polyester|Plan|Orientation|utilisation|portrait|rectangle|Page|first|px)$/iu,
} as const;

/** Texts that no translator has found words for yet; a new English text may stand here until one has. */
const NOT_YET = { de: [] as readonly string[], fr: [] as readonly string[] };

test.each([
  ["de", de],
  ["fr", fr],
] as const)("%s says everything that English says, and none of it in English", (language, page) => {
  const english = new Map(leaves(en));
  const own = leaves(page);
  expect([...own.map(([at]) => at), ...NOT_YET[language]].sort()).toEqual([...english.keys()].sort());
  const borrowed = own.filter(([at, text]) => {
    const spoken = (literals(text).match(/\p{L}{3,}/gu) ?? []).filter((word) => !ALIKE[language].test(word));
    return text === english.get(at) && spoken.length > 0;
  });
  expect(borrowed).toEqual([]);
});

test("what the page calls a construction is the core's word in each language", () => {
  expect(Object.values(CATALOGUES).map(({ constructions }) => constructions.fourfold.name)).toEqual([
    "folded in four",
    "vierfach gefaltet",
    "pliée en quatre",
  ]);
});
