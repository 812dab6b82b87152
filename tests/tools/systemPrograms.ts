// The programs that a few checks measure with besides the readers that come with `npm ci`: looked for in one place.
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "playwright-core";

/** What a program is for, and the Debian package that has it. */
interface SystemProgram {
  readonly debian: string;
  /** The checks that need it, in a few words. */
  readonly checks: string;
}

/** Command → what it is for. Every other outside reader is a package of ours. */
export const SYSTEM_PROGRAMS: Readonly<Record<string, SystemProgram>> = {
  chromium: { debian: "chromium", checks: "the page in a browser, and true-scale SVG in it" },
  pdftoppm: { debian: "poppler-utils", checks: "true scale of the pages by poppler, a second reader" },
  pdftocairo: { debian: "poppler-utils", checks: "a drawing that poppler wrote comes in true" },
  "rsvg-convert": { debian: "librsvg2-bin", checks: "true scale of the SVG by librsvg, a second reader" },
  inkscape: { debian: "inkscape", checks: "true scale of the SVG by a drawing program, and its files read back" },
  "redis-server": { debian: "redis-server", checks: "batches on many machines, over a real store" },
  openssl: { debian: "openssl", checks: "an encrypted line to the store, with a certificate of our own" },
  convert: { debian: "imagemagick", checks: "a pattern photographed aslant comes back true" },
};

const BROWSERS = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge"];
const ENDINGS = process.platform === "win32" ? [".exe", ".cmd", ""] : [""];

/** Where a command is, or null when the search path does not have it. */
export function commandPath(command: string): string | null {
  for (const folder of (process.env["PATH"] ?? "").split(delimiter))
    for (const ending of ENDINGS) {
      const path = join(folder, command + ending);
      try {
        accessSync(path, constants.X_OK);
        return path;
      } catch {
        // Not here.
      }
    }
  return null;
}

/** The browser to test the page in: `CHROMIUM`, one on the search path, or the one that playwright keeps; else null. */
export function browserPath(): string | null {
  const named = process.env["CHROMIUM"];
  if (named !== undefined && existsSync(named)) return named;
  const onPath = BROWSERS.map(commandPath).find((path) => path !== null);
  if (onPath !== undefined) return onPath;
  const kept = chromium.executablePath();
  return existsSync(kept) ? kept : null;
}

export const isInstalled = (program: string): boolean =>
  program === "chromium" ? browserPath() !== null : commandPath(program) !== null;

/**
 * The program in a list of its own, or nothing: `for (const rsvg of ifInstalled("rsvg-convert")) test(…)` makes a check
 * that is there wherever the program is. Throws in CI, where every program has to be.
 */
export function ifInstalled(program: keyof typeof SYSTEM_PROGRAMS): readonly string[] {
  if (!(program in SYSTEM_PROGRAMS)) throw new Error(`${program} is not in the list of system programs`);
  if (isInstalled(program)) return [program];
  if (process.env["CI"]) throw new Error(`${program} is missing, and in CI every check runs`);
  return [];
}
