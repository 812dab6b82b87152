import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runCli } from "../tools/runCli.ts";
import { hostileFile, nearlyGood, smallDemo } from "./hostileFiles.ts";
import type { Draw, Kind } from "./kind.ts";
import { smallProject } from "./smallProjects.ts";

/** How a project is laid, besides `--out`; all files are written by a few, for they take longer than the rest. */
const WAYS: readonly (readonly string[])[] = [
  ...Array.from({ length: 6 }, () => ["--write", "cut-list"]),
  ...["svg", "dxf", "sheets", "cut-sheet", "labels,ruler-list", "mat-svg,mat-dxf"].map((kinds) => [
    "--write",
    kinds,
  ]),
  ["--cut", "ruler", "--write", "ruler-list"],
  ["--cut", "few-stages", "--write", "ruler-list"],
  ["--choose", "easiest", "--write", "cut-list"],
  ["--json", "--write", "cut-list"],
  [],
];

let folder: string | null = null;

/** One folder for all cases, emptied before each. */
function emptied(): string {
  if (folder === null) {
    const own = mkdtempSync(join(tmpdir(), "laywright-lays-"));
    process.once("exit", () => rmSync(own, { recursive: true, force: true }));
    folder = own;
  }
  rmSync(join(folder, "out"), { recursive: true, force: true });
  return folder;
}

/** The plan in the folder stands beside exactly the files it names. */
function isWhole(out: string): boolean {
  if (!existsSync(join(out, "plan.json"))) return false;
  const { files } = JSON.parse(readFileSync(join(out, "plan.json"), "utf8")) as {
    files: { name: string; sha256: string }[];
  };
  const named = ["plan.json", ...files.map(({ name }) => name)].sort().join();
  if (readdirSync(out).sort().join() !== named) throw new Error(`other files than named: ${readdirSync(out)}`);
  for (const { name, sha256 } of files)
    if (
      createHash("sha256")
        .update(readFileSync(join(out, name)))
        .digest("hex") !== sha256
    )
      throw new Error(`${name} has other bytes than plan.json says`);
  return true;
}

function fileOf(draw: Draw): string {
  const from = draw.below(8);
  if (from === 0) return hostileFile(draw);
  return nearlyGood(draw, from === 1 ? smallDemo() : smallProject(draw));
}

/** Hostile project files laid by the program itself in no time: an exit code of the contract, whole files, no stack. */
export const hostileLays: Kind = {
  name: "lay",
  about: "hostile project files, most of them near to good ones, through lay --out",
  limitMs: 60_000,
  run: async (draw) => {
    const text = fileOf(draw);
    const own = emptied();
    const [file, out] = [join(own, "project.json"), join(own, "out")];
    writeFileSync(file, text);
    const way = draw.one(WAYS);
    const words = ["lay", file, "--seconds", "0", "--threads", "1", "--out", out, ...way];
    const told = await runCli(...words);
    const fail = (what: string): never => {
      throw new Error(`${what}: ${way.join(" ")}: ${told.err.slice(0, 1500)}: ${text.slice(0, 6000)}`);
    };
    if (told.code !== 0 && told.code !== 1) fail(`exit ${told.code}`);
    if (/^\s+at .*:\d+/mu.test(told.err)) fail("a stack");
    if (/undefined|\[object |NaN/u.test(told.err.replaceAll('"NaN', ""))) fail("told badly");
    if (told.code === 1 && told.err.trim() === "" && !way.includes("--json")) fail("refused without a word");
    const isLaid = isWhole(out);
    if (told.code === 0 && !isLaid) fail("done, and no plan");
    if (!isLaid && existsSync(out)) fail(`no plan, and files: ${readdirSync(out)}`);
    return !isLaid ? "refused" : told.code === 0 ? "laid" : "laid, pieces left out";
  },
};
