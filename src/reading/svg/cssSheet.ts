import { tooMuch } from "../readingEnds.ts";
import { readSelector, type Selector } from "./cssSelector.ts";

/** What a rule sets, and whether it insists. */
export interface Declaration {
  readonly name: string;
  readonly value: string;
  readonly isImportant: boolean;
}

/** One selector with what it sets, in the order of the sheet. */
export interface CssRule {
  readonly selector: Selector;
  readonly declarations: readonly Declaration[];
}

const MOST_RULES = 2000;

/**
 * The rules of a style sheet that a drawing can be told apart by. `@media` for screens or everything counts, other
 * at-rules do not; `@import` is never followed. More than 2,000 rules end the reading: what they mean could not be told.
 */
export function readSheet(text: string): { readonly rules: readonly CssRule[]; readonly imports: number } {
  const rules: CssRule[] = [];
  const plain = text.replace(/<!--|-->/gu, "").replace(/\/\*[\s\S]*?(?:\*\/|$)/gu, " ");
  const imports = plain.split("@import").length - 1;
  takeRules(plain.replace(/@(?:import|charset|namespace)[^;{}]*;?/gu, ""), rules, 0);
  return { rules, imports };
}

/** Media rules in media rules in media rules: more than this deep they are left out. */
const DEEPEST = 8;

function takeRules(text: string, rules: CssRule[], depth: number): void {
  let at = 0;
  while (at < text.length) {
    if (rules.length > MOST_RULES) tooMuch("style-rules", MOST_RULES);
    const open = text.indexOf("{", at);
    if (open < 0) return;
    const prelude = text.slice(at, open).trim();
    const close = closingBrace(text, open);
    const body = text.slice(open + 1, close);
    at = close + 1;
    if (prelude.startsWith("@")) {
      if (depth < DEEPEST && /^@media\b(?!.*\bprint\b)/u.test(prelude)) takeRules(body, rules, depth + 1);
      continue;
    }
    const declarations = readDeclarations(body);
    for (const one of prelude.split(",")) {
      const selector = readSelector(one);
      if (selector) rules.push({ selector, declarations });
    }
  }
}

function closingBrace(text: string, open: number): number {
  let depth = 0;
  for (let i = open; i < text.length; i++) {
    if (text[i] === "{") depth++;
    else if (text[i] === "}" && --depth === 0) return i;
  }
  return text.length;
}

/** `fill: none; stroke: red !important` → what it sets. */
export function readDeclarations(text: string): readonly Declaration[] {
  const declarations: Declaration[] = [];
  for (const one of text.split(";")) {
    const colon = one.indexOf(":");
    if (colon < 0) continue;
    const value = one.slice(colon + 1).trim();
    const mark = /!\s*important$/iu.exec(value);
    declarations.push({
      name: one.slice(0, colon).trim().toLowerCase(),
      value: mark ? value.slice(0, mark.index).trim() : value,
      isImportant: mark !== null,
    });
  }
  return declarations;
}
