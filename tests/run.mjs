// `npm test`: every vitest project. What measures comes with `npm ci`; a browser is required, and installed where that
// is allowed. The few other programs of the system that some checks need are named when they are missing; in CI they
// are required as well.
import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { tsImport } from "tsx/esm/api";

const { browserPath, isInstalled, SYSTEM_PROGRAMS } = await tsImport("./tools/systemPrograms.ts", import.meta.url);
const { verdictOf } = await tsImport("./tools/verdict.ts", import.meta.url);

const isCi = Boolean(process.env.CI);
const missing = () => Object.keys(SYSTEM_PROGRAMS).filter((program) => !isInstalled(program));
/** What no run goes without: the page's tests are half of it, and no queue is tested without a store. In CI every check runs. */
const ALWAYS = ["chromium", "redis-server"];
const needed = () => missing().filter((program) => isCi || ALWAYS.includes(program));

/** What is needed and missing is installed, or the run ends here. */
function requirePrograms() {
  if (needed().length === 0) return;
  const packages = [...new Set(needed().map((program) => SYSTEM_PROGRAMS[program].debian))];
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  if (isInstalled("apt-get") && process.getuid?.() === 0) {
    console.log(`Installing ${packages.join(", ")} …`);
    execFileSync("apt-get", ["update", "-qq"], { stdio: "inherit", env });
    const install = ["install", "-y", "-qq", "--no-install-recommends", ...packages];
    execFileSync("apt-get", install, { stdio: ["ignore", "ignore", "inherit"], env });
  }
  if (needed().length > 0) {
    console.error(
      `Missing: ${needed().join(", ")}. Install it and run the tests again. The Debian packages are ${packages.join(", ")}; a browser elsewhere is named by CHROMIUM=its path.`,
    );
    process.exit(1);
  }
}

function tellMissing() {
  for (const program of missing()) {
    const { checks, debian } = SYSTEM_PROGRAMS[program];
    console.log(`Not checked here, for want of ${program} (Debian: ${debian}): ${checks}.`);
  }
}

/** Nearly twice what a slow machine takes. */
const LONGEST_MS = 75 * 60_000;

requirePrograms();
tellMissing();
const report = join(mkdtempSync(join(tmpdir(), "laywright-tests-")), "report.json");
const browser = browserPath();
const args = [
  fileURLToPath(new URL("../node_modules/vitest/vitest.mjs", import.meta.url)),
  "run",
  "--config",
  ".vitest.config.ts",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
];
// A loop without end inside a test blocks its process, where no time limit of the runner reaches it, and outlives the
// runner. So all are a group of their own, which ends as one; its signals are passed on, since a terminal knows no group.
const hasGroups = process.platform !== "win32";
const run = spawn(process.execPath, [...args, ...process.argv.slice(2)], {
  stdio: ["ignore", "inherit", "inherit"],
  detached: hasGroups,
  env: { ...process.env, CHROMIUM: browser },
});
const end = (signal) => (hasGroups ? process.kill(-run.pid, signal) : run.kill(signal));
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, end);
const limit = setTimeout(() => {
  console.error(
    `The tests were stopped after ${LONGEST_MS / 60_000} minutes: the file that was not told above did not end.`,
  );
  end("SIGKILL");
}, LONGEST_MS);
const [code] = await once(run, "exit");
clearTimeout(limit);
const text = existsSync(report) ? readFileSync(report, "utf8") : null;
const { lines, status } = verdictOf(code, text === null ? null : JSON.parse(text), process.argv.slice(2));
for (const line of lines) console.log(line);
process.exit(status);
