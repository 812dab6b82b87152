import { expect, test } from "vitest";
import { describeProblem } from "../problems/describeProblem.ts";
import { formatLength } from "../units/formatLength.ts";
import { en } from "./en/en.ts";
import { fr } from "./fr/fr.ts";
import { type Translation, withEnglish } from "./oneLanguage.ts";
import { LANGUAGE_NAMES, LANGUAGES, READ_LANGUAGES, SHEET_TEXTS } from "./words.ts";

/** Places of all words, as in `cutSheet.title`. */
function places(words: object, path = ""): string[] {
  return Object.entries(words).flatMap(([key, word]: [string, unknown]): string[] => {
    const at = path === "" ? key : `${path}.${key}`;
    return typeof word === "object" && word !== null && !Array.isArray(word) ? places(word, at) : [at];
  });
}

/** Words that no translator has found yet; a new English word may stand here until one has. */
const NOT_YET_FRENCH: readonly string[] = [];

test("French has every word of the core, or says which it lacks", () => {
  const own = new Set(places(fr));
  const lacking = places(en).filter((at) => !own.has(at));
  expect(lacking).toEqual(NOT_YET_FRENCH);
  const known = new Set(places(en));
  expect([...own].filter((at) => !known.has(at))).toEqual([]);
});

test("a draft says that it is one and is not spoken without being asked for", () => {
  expect(LANGUAGE_NAMES).toEqual({ en: "English", de: "Deutsch", fr: "Français (brouillon)" });
  expect(READ_LANGUAGES).toEqual(["en", "de"]);
  expect(LANGUAGES).toContain("fr");
});

test("what a draft lacks is English, word by word", () => {
  const draft: Translation = {
    called: "Esperanto",
    draft: "malneto",
    cutSheet: { title: "Tondofolio", grains: { crosswise: "laŭlarĝe" } },
    problems: { "text-empty": () => ({ what: "La teksto estas malplena.", remedy: "Skribu nomon." }) },
  };
  const words = withEnglish(draft, en);
  expect(words.cutSheet.title).toBe("Tondofolio");
  expect(words.cutSheet.grains).toEqual({ ...SHEET_TEXTS.en.grains, crosswise: "laŭlarĝe" });
  expect(words.cutSheet.table.heads).toBe(en.cutSheet.table.heads);
  expect(places(words).sort()).toEqual(places(en).sort());
  const path = "name";
  const say = (mm: number): string => formatLength(mm, "mm", "eo");
  expect(describeProblem({ code: "text-empty", path }, words.problems, say).what).toBe("La teksto estas malplena.");
  const lengthy = { code: "length-unreadable", path, text: "el" } as const;
  expect(describeProblem(lengthy, words.problems, say)).toEqual(describeProblem(lengthy, en.problems));
});
