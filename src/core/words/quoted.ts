const LONGEST = 60;

/** What a person typed, in quotes on one line: control characters shown as "�", long text cut with "…". */
export function quoted(text: string): string {
  const signs = Array.from(text.slice(0, LONGEST * 4).replace(/\p{C}/gu, "�"));
  return `"${signs.slice(0, LONGEST).join("")}${signs.length > LONGEST ? "…" : ""}"`;
}
