// `npm run release`: what is given out, in out/release: the package, the page in one file, the notices and their
// checksums. Everything is made twice and must be the same to the byte; the package is installed into an empty folder
// and run there; its types and entries are judged by publint and attw; sizes stay within limits. Fails when one does not.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));
const MIB = 2 ** 20;

/** Largest size of what is given out, bytes. The page holds every font and reader, packed; the package has them from npm. */
export const SIZE_LIMITS: Readonly<Record<string, number>> = {
  "laywright.tgz": 2 * MIB,
  "laywright.html": 6_000_000,
  "THIRD-PARTY.txt": 0.5 * MIB,
};

/** Files over their limit, and files that have none, in words. */
export function sizeFaults(sizes: Readonly<Record<string, number>>): string[] {
  return Object.entries(sizes).flatMap(([name, size]) => {
    const limit = SIZE_LIMITS[name];
    if (limit === undefined) return [`${name}: no limit is set`];
    return size > limit ? [`${name}: ${size} bytes, at most ${limit}`] : [];
  });
}

/** Checksums as `sha256sum --check` reads them, in order of the names. */
export function checksums(files: Readonly<Record<string, Uint8Array>>): string {
  return Object.entries(files)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, bytes]) => `${createHash("sha256").update(bytes).digest("hex")}  ${name}\n`)
    .join("");
}

/** A program of Node's or of a package, run in a folder; its answer. */
function run(cwd: string, program: string, words: readonly string[], env: NodeJS.ProcessEnv = {}): string {
  return execFileSync(program, words, {
    cwd,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 64 * MIB,
  });
}

/** Everything that is given out, by name. */
function made(): Record<string, Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), "laywright-release-"));
  // From nothing: what a source no longer makes must not go out.
  for (const left of ["dist", ".tsc"]) rmSync(join(root, left), { recursive: true, force: true });
  run(root, "npm", ["run", "-s", "build"]);
  run(root, "npm", ["pack", "--silent", "--ignore-scripts", "--pack-destination", folder]);
  const [tarball] = readdirSync(folder);
  const files = { "laywright.tgz": new Uint8Array(readFileSync(join(folder, tarball!))) };
  run(root, "npx", ["vite", "build", "--config", "src/web/vite.config.ts", "--logLevel", "error"], {
    ONE_FILE: "1",
  });
  rmSync(folder, { recursive: true });
  const page = new Uint8Array(readFileSync(join(root, "dist/web/laywright.html")));
  const notices = new Uint8Array(readFileSync(join(root, "dist/THIRD-PARTY.txt")));
  return { ...files, "laywright.html": page, "THIRD-PARTY.txt": notices };
}

const PROJECT = {
  laywright: 1,
  name: "First",
  unit: "mm",
  bags: 1,
  materials: [{ id: "cloth", kind: "woven", thickness: 0.6, stock: [{ kind: "roll", id: "roll", width: 1400 }] }],
  panels: [{ id: "body", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 } }],
};

/** Installs a package into an empty folder and runs it there; throws when it does not do its work. */
function tryOut(tarball: string): void {
  const folder = mkdtempSync(join(tmpdir(), "laywright-installed-"));
  writeFileSync(join(folder, "package.json"), '{ "private": true }');
  writeFileSync(join(folder, "project.json"), JSON.stringify(PROJECT));
  run(folder, "npm", ["install", "--silent", "--no-audit", "--no-fund", "--prefer-offline", tarball]);
  const laywright = (...words: string[]): string =>
    run(folder, process.execPath, [join(folder, "node_modules/laywright/dist/cli/main.js"), ...words]);
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  if (laywright("--version") !== `${version}\n`) throw new Error("the installed package tells another version");
  laywright("lay", "project.json", "--seconds", "1", "--out", "files");
  const written = readdirSync(join(folder, "files"));
  for (const ending of [".json", ".pdf", ".svg", ".dxf", ".txt", ".csv"])
    if (!written.some((name) => name.endsWith(ending))) throw new Error(`the installed package wrote no ${ending}`);
  const listed = `import("laywright").then((own) => console.log(Object.keys(own).length))`;
  if (!(Number(run(folder, process.execPath, ["--eval", listed])) > 0)) throw new Error("nothing can be imported");
  rmSync(folder, { recursive: true });
}

function release(): void {
  const out = join(root, "out/release");
  const first = made();
  const second = made();
  const unlike = Object.keys(first).filter((name) => Buffer.compare(first[name]!, second[name]!) !== 0);
  if (unlike.length > 0) throw new Error(`made twice, and not the same: ${unlike.join(", ")}`);
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  for (const [name, bytes] of Object.entries(first)) writeFileSync(join(out, name), bytes);
  writeFileSync(join(out, "SHA256SUMS"), checksums(first));
  cpSync(join(root, "CHANGELOG.md"), join(out, "CHANGELOG.md"));
  const sizes = Object.fromEntries(Object.keys(first).map((name) => [name, statSync(join(out, name)).size]));
  const faults = sizeFaults(sizes);
  if (faults.length > 0) throw new Error(faults.join("\n"));
  const tarball = join(out, "laywright.tgz");
  run(root, "npx", ["publint", "--strict", tarball]);
  run(root, "npx", ["attw", tarball, "--profile", "esm-only"]);
  tryOut(tarball);
  for (const [name, size] of Object.entries(sizes))
    console.log(`${name.padEnd(18)} ${(size / MIB).toFixed(2)} MiB`);
  console.log("Made twice with the same bytes, installed into an empty folder and run.");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) release();
