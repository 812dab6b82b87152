import type { OutputSettings } from "../core/project/outputSettings.ts";
import { paperOf } from "../core/project/papers.ts";

/**
 * A file name stem out of any name: letters and digits of any writing, hyphens between words, at most 60 characters.
 * Nothing that could leave the folder, hide the file or upset a shell is left; `fallback` when nothing remains.
 */
export function fileStem(name: string, fallback: string): string {
  const stem = name
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, "-")
    .replace(/^-|-$/gu, "");
  const short = [...stem].slice(0, 60).join("").replace(/-$/u, "");
  return short === "" || RESERVED.test(short) ? fallback : short;
}

/** Names that some file systems keep for devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/u;

/** Stems made different from each other by a running number where they would be the same. */
export function distinctStems(names: readonly string[], fallback: string): string[] {
  const seen = new Set<string>();
  return names.map((name) => {
    const stem = fileStem(name, fallback);
    let distinct = stem;
    for (let i = 2; seen.has(distinct); i++) distinct = `${stem}-${i}`;
    seen.add(distinct);
    return distinct;
  });
}

/** What a project's paper is called in file names. */
export const paperStem = ({ paper }: OutputSettings): string => fileStem(paperOf(paper).id, "paper");
