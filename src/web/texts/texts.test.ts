import { expect, test } from "vitest";
import { CATALOGUES, type PageLanguage } from "./texts.ts";

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
const ALIKE: Readonly<Record<Exclude<PageLanguage, "en">, RegExp>> = {
  de: /^(Laywright|Name|PVC|PU|Nylon|EVA|Material|Polyester|Laser|Radius|Canvas|Plan|minus|Position|px)$/iu,
  fr: /^(Laywright|Machine|Table|PVC|PU|EVA|polyester|Plan|Orientation|utilisation|portrait|rectangle|Page|first|px)$/iu,
};

test.each(["de", "fr"] as const)("%s says everything that English says, and none of it in English", (language) => {
  const english = new Map(leaves(CATALOGUES.en));
  const own = leaves(CATALOGUES[language]);
  expect(own.map(([at]) => at).sort()).toEqual([...english.keys()].sort());
  const borrowed = own.filter(([at, text]) => {
    const spoken = (literals(text).match(/\p{L}{3,}/gu) ?? []).filter((word) => !ALIKE[language].test(word));
    // Names of constructions come from the core, which has no French yet.
    if (language === "fr" && at.startsWith("constructions.")) return false;
    return text === english.get(at) && spoken.length > 0;
  });
  expect(borrowed).toEqual([]);
});
