import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readProject } from "../../src/core/project/file/readProject.ts";
import type { Program } from "./batchKills.ts";
import type { Draw, Kind } from "./kind.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Two panels and a strap: every file that a plan has, and over in a moment. */
const PROJECT = {
  laywright: 1,
  name: "Small",
  materials: [
    {
      id: "cloth",
      kind: "woven",
      thickness: 0.5,
      stock: [{ kind: "roll", id: "roll", width: 1400, length: 3000 }],
    },
  ],
  panels: [{ id: "body", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 }, count: 2 }],
  straps: [{ id: "s", construction: "fourfold", width: 25, length: 700, materials: { outer: "cloth" } }],
};
/** As a maker writes it, with a line of her own that has to stay. */
const WRITTEN = `${JSON.stringify(PROJECT, null, 3)}\n`;
const PATTERN = `<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="160mm" viewBox="0 0 220 160">
  <path id="Front" d="M20 20H170V120H20Z" fill="none" stroke="#000"/></svg>`;

/** Starts the program in a folder. */
function start(program: Program, words: readonly string[]): ChildProcess {
  return spawn(process.execPath, [...program, ...words], { cwd: root, stdio: "ignore" });
}

async function ended(program: Program, words: readonly string[]): Promise<number | null> {
  const [code] = await once(start(program, words), "exit");
  return code;
}

/** Runs the program to its end; how long that took, so that the next kill comes before its end on a busy machine too. */
async function timed(program: Program, words: readonly string[]): Promise<{ code: number | null; ms: number }> {
  const began = performance.now();
  return { code: await ended(program, words), ms: performance.now() - began };
}

/** Runs the program and kills it at a moment before it would be done; whether it was killed. */
async function killed(program: Program, words: readonly string[], ms: number, draw: Draw): Promise<boolean> {
  const running = start(program, words);
  const exit = once(running, "exit");
  // The last part of a run is where files are written: half of the moments are drawn from there.
  const latest = Math.ceil(ms);
  const from = draw.below(2) === 0 ? 0 : Math.floor(latest * 0.5);
  const timer = setTimeout(() => running.kill("SIGKILL"), from + draw.below(latest - from));
  const [, signal] = await exit;
  clearTimeout(timer);
  return signal === "SIGKILL";
}

/** The folder's plan is absent, or stands beside exactly the bytes it names. */
function isTrue(out: string): boolean {
  const list = join(out, "plan.json");
  if (!existsSync(list)) return false;
  for (const { name, sha256 } of JSON.parse(readFileSync(list, "utf8")).files) {
    const found = createHash("sha256")
      .update(readFileSync(join(out, name)))
      .digest("hex");
    if (found !== sha256) throw new Error(`plan.json stands beside another ${name}`);
  }
  return true;
}

/** What is done once for all cases of a kind: a folder with its files, and how long the last undisturbed run took. */
interface Prepared {
  readonly folder: string;
  ms: number;
}

async function prepared(program: Program, words: (folder: string) => readonly string[]): Promise<Prepared> {
  const folder = mkdtempSync(join(tmpdir(), "laywright-kills-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(join(folder, "project.json"), WRITTEN);
  writeFileSync(join(folder, "front.svg"), PATTERN);
  const { code, ms } = await timed(program, words(folder));
  if (code !== 0) throw new Error(`an undisturbed run ended with ${code}`);
  return { folder, ms };
}

const layWords = (folder: string, seed: number): string[] => [
  ...["lay", join(folder, "project.json"), "--effort", "0.001", "--threads", "1"],
  ...["--seed", String(seed), "--out", join(folder, "out")],
];

/** `lay --out` over an earlier plan, killed at a random moment; then run again to its end. */
export function killsOf(program: Program): Kind {
  let first: Prepared | null = null;
  return {
    name: "kills",
    about: "lay --out over an earlier plan, killed at a random moment, then run again",
    limitMs: 300_000,
    run: async (draw) => {
      first ??= await prepared(program, (folder) => layWords(folder, 1));
      const folder = mkdtempSync(join(tmpdir(), "laywright-kill-"));
      try {
        cpSync(first.folder, folder, { recursive: true });
        const out = join(folder, "out");
        const wasKilled = await killed(program, layWords(folder, 2), first.ms, draw);
        const stood = isTrue(out);
        const { code, ms } = await timed(program, layWords(folder, 3));
        first.ms = ms;
        if (code !== 0 || !isTrue(out)) throw new Error("a killed run stands in the way of the next");
        if (readdirSync(folder).join() !== "front.svg,out,project.json")
          throw new Error(`left beside the plan: ${readdirSync(folder)}`);
        return !wasKilled ? "ended first" : stood ? "killed, a plan stands" : "killed, no plan stands";
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}

const intoWords = (folder: string): string[] => [
  ...["pattern", join(folder, "front.svg"), "--material", "cloth"],
  ...["--into", join(folder, "project.json")],
];

/** `pattern --into` on a maker's own file, killed at a random moment: the file before, or the file after. */
export function intoKillsOf(program: Program): Kind {
  let first: (Prepared & { readonly after: string }) | null = null;
  return {
    name: "intoKills",
    about: "pattern --into a project file, killed at a random moment, then run again",
    limitMs: 300_000,
    run: async (draw) => {
      if (first === null) {
        const made = await prepared(program, intoWords);
        first = { ...made, after: readFileSync(join(made.folder, "project.json"), "utf8") };
      }
      const folder = mkdtempSync(join(tmpdir(), "laywright-kill-"));
      const file = join(folder, "project.json");
      try {
        writeFileSync(file, WRITTEN);
        writeFileSync(join(folder, "front.svg"), PATTERN);
        const wasKilled = await killed(program, intoWords(folder), first.ms, draw);
        const text = readFileSync(file, "utf8");
        if (text !== WRITTEN && text !== first.after) throw new Error(`neither before nor after: ${text}`);
        const { code, ms } = await timed(program, intoWords(folder));
        first.ms = ms;
        const read = readProject(readFileSync(file, "utf8"));
        const panels = read.ok ? read.value.panels.length : 0;
        if (code !== 0 || panels !== (text === WRITTEN ? 2 : 3)) throw new Error(`then ${code}, ${panels} panels`);
        if (readdirSync(folder).join() !== "front.svg,project.json")
          throw new Error(`left beside it: ${readdirSync(folder)}`);
        return !wasKilled ? "ended first" : text === WRITTEN ? "killed, as before" : "killed, as after";
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}
