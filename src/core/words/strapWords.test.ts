import { expect, test } from "vitest";
import { constructionTitle } from "./strapWords.ts";
import { STRAP_WORDS } from "./words.ts";

const facts = (text: string): string[] => [...new Set(text.match(/\{\w+\}/gu) ?? [])].sort();

test("a phrase names the same facts in every language, and is translated", () => {
  const { en, de } = STRAP_WORDS;
  for (const code of Object.keys(en.phrases) as (keyof typeof en.phrases)[]) {
    expect(facts(de.phrases[code]), code).toEqual(facts(en.phrases[code]));
    expect(de.phrases[code], code).not.toBe(en.phrases[code]);
    // Parts that follow another begin alike, so that they join up.
    expect(/^[,; ]/u.test(de.phrases[code]), code).toBe(/^[,; ]/u.test(en.phrases[code]));
  }
});

test("titles of folds in three and in four carry their layer count in every language", () => {
  for (const { constructions } of Object.values(STRAP_WORDS))
    for (const one of Object.values(constructions)) {
      expect(constructionTitle(one)).toMatch(/\d.*(layer|Lage)/u);
    }
});
