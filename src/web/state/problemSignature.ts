import type { LayProblem } from "../../core/lay/problem/layProblem.ts";

/**
 * A short text that is the same for the same problem, and for the same of what else the plan depends on. Cost O(points).
 */
export function problemSignature(problem: LayProblem, besides: unknown = null): string {
  const text = JSON.stringify(problem, (_key, value: unknown) =>
    value instanceof Float64Array ? value.join(" ") : value,
  );
  return textHash(besides === null ? text : text + JSON.stringify(besides));
}

/** Short name of a text: alike texts have alike names, and two texts of a project hardly ever the same one (106 bits). */
function textHash(text: string): string {
  return mixed(text, 0xdeadbeef, 0x41c6ce57) + mixed(text, 0x9e3779b9, 0x85ebca6b);
}

/** Two 32-bit sums mixed by multiplication: after cyrb53, public domain, from memory. */
function mixed(text: string, first: number, second: number): string {
  let [a, b] = [first, second];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (2097151 & b) + (a >>> 0)).toString(36);
}
