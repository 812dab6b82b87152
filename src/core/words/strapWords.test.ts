import { expect, test } from "vitest";
import { constructionTitle } from "./strapWords.ts";
import { STRAP_WORDS } from "./words.ts";

const facts = (text: string): string[] => [...new Set(text.match(/\{\w+\}/gu) ?? [])].sort();

test.each(["de", "fr"] as const)(
  "a phrase names the same facts in English and %s, and is translated",
  (language) => {
    const { en, [language]: own } = STRAP_WORDS;
    for (const code of Object.keys(en.phrases) as (keyof typeof en.phrases)[]) {
      expect(facts(own.phrases[code]), code).toEqual(facts(en.phrases[code]));
      expect(own.phrases[code], code).not.toBe(en.phrases[code]);
      // Parts that follow another begin alike, so that they join up; French has a blank before a semicolon.
      const follows = (text: string): boolean => /^[,;\s]/u.test(text);
      expect(follows(own.phrases[code]), code).toBe(follows(en.phrases[code]));
    }
  },
);

test("titles of folds in three and in four carry their layer count in every language", () => {
  for (const { constructions } of Object.values(STRAP_WORDS))
    for (const one of Object.values(constructions)) {
      expect(constructionTitle(one)).toMatch(/\d.*(layer|Lage|couche)/u);
    }
});
