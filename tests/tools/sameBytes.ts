// `npm run same-bytes`: lays a project on other versions of Node, in other time zones and languages of the system, and
// compares every file to the byte. The versions are the npm packages `node-<system>-<processor>@22` and `@24`, which are
// fetched for it; without network the time zones and languages alone are tried (they are in `npm test` as well).
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Far from each other: the date is another one, commas and dots change places, letters have other capitals. */
export const PLACES: readonly Readonly<Record<string, string>>[] = [
  { TZ: "UTC", LC_ALL: "C" },
  { TZ: "Pacific/Kiritimati", LC_ALL: "tr_TR.UTF-8" },
  { TZ: "America/St_Johns", LC_ALL: "de_DE.UTF-8" },
  { TZ: "Asia/Kathmandu", LC_ALL: "ar_EG.UTF-8" },
];

/** SHA-256 of every file that a run of `lay --out` writes, by name. */
export function bytesOf(
  words: readonly string[],
  place: Readonly<Record<string, string>>,
  node = process.execPath,
): Record<string, string> {
  const folder = mkdtempSync(join(tmpdir(), "laywright-bytes-"));
  // Effort, not seconds: what is found must not depend on how fast the machine is.
  const effort = ["--effort", "0.02", "--threads", "1", "--seed", "1"];
  const { status, stderr } = spawnSync(node, [...words, ...effort, "--out", folder], {
    cwd: root,
    encoding: "utf8",
    env: { ...process.env, LANG: "", LANGUAGE: "", ...place },
  });
  if (status !== 0) throw new Error(`lay ended with ${status}: ${stderr}`);
  const hashes = Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [
        name,
        createHash("sha256")
          .update(readFileSync(join(folder, name)))
          .digest("hex"),
      ]),
  );
  rmSync(folder, { recursive: true });
  return hashes;
}

/** A version of Node out of npm, installed into a folder; its program. */
function nodeVersion(version: string, folder: string): string {
  const name = `node-${process.platform}-${process.arch}`;
  const words = [
    "install",
    "--silent",
    "--no-audit",
    "--no-fund",
    "--no-save",
    "--prefix",
    folder,
    `${name}@${version}`,
  ];
  const { status, stderr } = spawnSync("npm", words, { encoding: "utf8" });
  if (status !== 0) throw new Error(`${name}@${version}: ${stderr}`);
  return join(folder, "node_modules", name, "bin/node");
}

function compareAll(): void {
  const words = ["dist/cli/main.js", "lay", "fixtures/harbour-bags.json"];
  const expected = bytesOf(words, PLACES[0]!);
  const told = (what: string, found: Record<string, string>): void => {
    const names = [...new Set([...Object.keys(expected), ...Object.keys(found)])];
    const unlike = names.filter((name) => expected[name] !== found[name]);
    console.log(
      `${what}: ${unlike.length === 0 ? `${names.length} files, the same bytes` : `unlike: ${unlike.join(", ")}`}`,
    );
    if (unlike.length > 0) process.exitCode = 1;
  };
  for (const place of PLACES.slice(1))
    told(`Node ${process.version}, ${place["TZ"]}, ${place["LC_ALL"]}`, bytesOf(words, place));
  for (const version of ["20", "22", "24"]) {
    const folder = mkdtempSync(join(tmpdir(), "laywright-node-"));
    const node = nodeVersion(version, folder);
    const { stdout } = spawnSync(node, ["--version"], { encoding: "utf8" });
    told(`Node ${stdout.trim()}`, bytesOf(words, PLACES[0]!, node));
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) compareAll();
