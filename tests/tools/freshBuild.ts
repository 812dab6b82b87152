// Before any test: what threads and built programs run is what is in the sources. Compiles when a source is newer than
// the last time this was done; nothing is done when none is.
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Whether a source under a folder, tests left out, is newer than the stamp, or there is no stamp. */
export function isStale(sources: string, stamp: string): boolean {
  if (!existsSync(stamp)) return true;
  const since = statSync(stamp).mtimeMs;
  return readdirSync(sources, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/u.test(name) && !name.includes(".test."))
    .some((name) => statSync(join(sources, name)).mtimeMs > since);
}

export default function setup(): void {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  const stamp = join(root, ".tsc/tests-began-from");
  const hasBuilt = existsSync(join(root, "dist/cli/main.js"));
  if (hasBuilt && !isStale(join(root, "src"), stamp)) return;
  mkdirSync(dirname(stamp), { recursive: true });
  // Stamped with the time before it began: a source that changes meanwhile counts as newer.
  const began = new Date();
  try {
    const words = ["tsc", "-b", "src/cli", "src/reading", "src/worker"];
    execFileSync("npx", words, { cwd: root, stdio: "inherit", shell: process.platform === "win32" });
  } catch {
    // What can be compiled is written all the same; types are the build's to judge.
    console.warn("The sources do not compile without errors.");
  }
  writeFileSync(stamp, "");
  utimesSync(stamp, began, began);
}
