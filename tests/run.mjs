// `npm test`: finds or installs the outside programs that the tests measure with, then runs every vitest project.
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** command → Debian package; what the outside checks measure with. */
const PROGRAMS = {
  chromium: "chromium",
  pdfinfo: "poppler-utils",
  pdftoppm: "poppler-utils",
  qpdf: "qpdf",
  "rsvg-convert": "librsvg2-bin",
  xmllint: "libxml2-utils",
  inkscape: "inkscape",
};

const onPath = (command) => spawnSync("which", [command]).status === 0;
const CHROMIUMS = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const found = (command) =>
  command === "chromium"
    ? (process.env.CHROMIUM && existsSync(process.env.CHROMIUM)) || CHROMIUMS.some(onPath)
    : onPath(command);

function provide() {
  const missing = Object.keys(PROGRAMS).filter((command) => !found(command));
  if (missing.length === 0) return;
  const packages = [...new Set(missing.map((command) => PROGRAMS[command]))];
  const byHand = `Install ${missing.join(", ")} and run the tests again. On Debian: sudo apt-get install ${packages.join(" ")}`;
  if (!onPath("apt-get") || process.getuid?.() !== 0) {
    console.error(`These programs are missing: ${missing.join(", ")}.\n${byHand}`);
    process.exit(1);
  }
  console.log(`Installing ${packages.join(", ")} …`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  try {
    execFileSync("apt-get", ["update", "-qq"], { stdio: "inherit", env });
    execFileSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...packages], {
      stdio: ["ignore", "ignore", "inherit"],
      env,
    });
  } catch {
    console.error(`The install did not work.\n${byHand}`);
    process.exit(1);
  }
}

/** Several times what a slow machine takes. */
const LONGEST_MS = 45 * 60_000;

provide();
const report = join(mkdtempSync(join(tmpdir(), "laywright-tests-")), "report.json");
const args = [
  "vitest",
  "run",
  "--config",
  ".vitest.config.ts",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
];
// A loop without end inside a test blocks its process, where no time limit of the runner reaches it, and outlives the
// runner. So all are a group of their own, which ends as one; its signals are passed on, since a terminal knows no group.
const run = spawn("npx", [...args, ...process.argv.slice(2)], {
  stdio: ["ignore", "inherit", "inherit"],
  detached: true,
});
const end = (signal) => process.kill(-run.pid, signal);
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, end);
const limit = setTimeout(() => {
  console.error(
    `The tests were stopped after ${LONGEST_MS / 60_000} minutes: the file that was not told above did not end.`,
  );
  end("SIGKILL");
}, LONGEST_MS);
const [code] = await once(run, "exit");
clearTimeout(limit);
let passed = 0;
let failed = 0;
if (existsSync(report)) {
  const result = JSON.parse(readFileSync(report, "utf8"));
  passed = result.numPassedTests;
  failed =
    result.numFailedTests +
    result.testResults.filter((file) => file.status === "failed" && file.assertionResults.length === 0).length;
}
const status = code ?? 1;
if (status === 0 && passed === 0) console.error("No test ran: the run itself is broken.");
console.log(`${passed} passed, ${failed} failed`);
process.exit(status !== 0 ? status : passed === 0 ? 1 : 0);
