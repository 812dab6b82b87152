import { NAMED_COLORS } from "./namedColors.ts";

/**
 * A CSS colour as `#rrggbb`, `null` when nothing is painted (`none`, `transparent`, alpha 0) and `""` when it is
 * painted in a way that has no one colour (a gradient, a pattern, a colour written in a newer way).
 */
export function colorOf(text: string, current: string): string | null {
  const word = text.trim().toLowerCase();
  if (word === "none" || word === "transparent") return null;
  if (word === "currentcolor")
    return current.trim().toLowerCase() === "currentcolor" ? "#000000" : colorOf(current, "black");
  if (word.startsWith("#")) return hexColor(word.slice(1));
  const named = NAMED_COLORS.get(word);
  if (named) return named;
  const call = /^rgba?\(([^)]*)\)/u.exec(word);
  return call ? rgbColor(call[1]!.split(/[\s,/]+/u).filter(Boolean)) : fallback(word);
}

/** `url(#gradient) none` paints `none` when there is no such gradient; with one it paints something. */
function fallback(word: string): string | null {
  return /^url\([^)]*\)\s+none$/u.test(word) ? null : "";
}

function hexColor(digits: string): string | null {
  if (!/^[\da-f]{3,8}$/u.test(digits)) return "";
  const pairs = digits.length <= 4 ? [...digits].map((digit) => digit + digit) : (digits.match(/../gu) ?? []);
  return pairs[3] === "00" ? null : `#${pairs.slice(0, 3).join("")}`;
}

function rgbColor(given: readonly string[]): string | null {
  const values = given.map((text, i) => {
    const value = Number.parseFloat(text);
    if (i === 3) return text.endsWith("%") ? value / 100 : value;
    return text.endsWith("%") ? value * 2.55 : value;
  });
  if (values.length < 3 || values.some(Number.isNaN)) return "";
  if (values[3] === 0) return null;
  const hex = (value: number): string =>
    Math.max(0, Math.min(255, Math.round(value)))
      .toString(16)
      .padStart(2, "0");
  return `#${values.slice(0, 3).map(hex).join("")}`;
}
