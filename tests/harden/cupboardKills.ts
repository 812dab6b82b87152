import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { changeCupboard, today } from "../../src/cli/cupboard/cupboardDisk.ts";
import { putIn } from "../../src/core/cupboard/change.ts";
import type { Cupboard } from "../../src/core/cupboard/cupboard.ts";
import { readCupboard } from "../../src/core/cupboard/cupboardFile.ts";
import type { MaterialStock } from "../../src/core/materials/stock.ts";
import { ok } from "../../src/core/problems/problem.ts";
import type { Draw, Kind } from "./kind.ts";

/** Where a writer's modules are: what is built, or the sources. */
export interface Modules {
  readonly root: string;
  readonly ending: string;
  readonly flags: readonly string[];
}

const root = new URL("../../", import.meta.url);
export const BUILT_MODULES: Modules = { root: new URL("dist/", root).href, ending: ".js", flags: [] };
export const SOURCE_MODULES: Modules = {
  root: new URL("src/", root).href,
  ending: ".ts",
  flags: ["--import", "tsx"],
};

const STOCK: MaterialStock = {
  kind: "remnant",
  id: "",
  shape: { kind: "rectangle", along: 300, across: 200 },
  flaws: [],
  count: 1,
};
const PIECES = 8;
/** Each writer changes as fast as it can until it is killed, at the latest after so many ms. */
const MOST_MS = 900;

/** What a writer says before a change, and after it. */
interface Said {
  readonly act: "take" | "back" | "put";
  readonly code: string;
  readonly isDone: boolean;
}

/** A writer that takes, gives back and puts in without end, and tells each step before and after. */
function writerScript({ root: base, ending }: Modules, file: string, name: string, seed: number): string {
  return `
    import { writeSync } from "node:fs";
    const { changeCupboard, today } = await import("${base}cli/cupboard/cupboardDisk${ending}");
    const { takeOut, giveBack, putIn } = await import("${base}core/cupboard/change${ending}");
    const { seededRng } = await import("${base}core/lay/search/rng${ending}");
    const rng = seededRng(${seed});
    const say = (...words) => writeSync(1, words.join(" ") + "\\n");
    const stock = ${JSON.stringify(STOCK)};
    say("ready");
    for (;;) {
      let act, code;
      await changeCupboard(${JSON.stringify(file)}, (cupboard) => {
        const own = cupboard.pieces.filter(({ taken }) => taken?.project === "${name}");
        const free = cupboard.pieces.filter(({ taken }) => taken === null);
        const kind = rng.below(5);
        if (kind === 0) {
          const put = putIn(cupboard, "Canvas", stock, {}, today());
          [act, code] = ["put", put.pieces[0].code];
          say("begin", act, code);
          return { ok: true, value: put };
        }
        const isTake = free.length > 0 && (own.length === 0 || kind < 3);
        const from = isTake ? free : own;
        if (from.length === 0) { act = null; return { ok: true, value: { cupboard, pieces: [] } }; }
        [act, code] = [isTake ? "take" : "back", from[rng.below(from.length)].code];
        say("begin", act, code);
        return isTake ? takeOut(cupboard, [code], "${name}", today()) : giveBack(cupboard, [code], today());
      });
      if (act) say("done", act, code);
    }`;
}

interface Writer {
  readonly name: string;
  readonly child: ChildProcess;
  readonly said: Said[];
  readonly ready: Promise<void>;
}

function writer(modules: Modules, file: string, name: string, seed: number): Writer {
  const script = writerScript(modules, file, name, seed);
  const words = [...modules.flags, "--input-type=module", "--eval", script];
  const child = spawn(process.execPath, words, { cwd: fileURLToPath(root), stdio: ["ignore", "pipe", "pipe"] });
  const said: Said[] = [];
  let rest = "";
  let faults = "";
  child.stderr!.on("data", (data) => {
    faults += String(data);
  });
  const ready = new Promise<void>((resolve, reject) => {
    child.stdout!.on("data", (data) => {
      const lines = (rest + String(data)).split("\n");
      rest = lines.pop()!;
      for (const line of lines) {
        const [when, act, code] = line.split(" ") as [string, Said["act"], string];
        if (when === "ready") resolve();
        else said.push({ act, code, isDone: when === "done" });
      }
    });
    child.on("close", (code) => {
      if (code !== null) reject(new Error(`a writer ended by itself: ${faults}`));
    });
  });
  return { name, child, said, ready };
}

/** Holds the file against what both writers said: nothing twice, nothing lost, of each at most its last step open. */
function judge({ pieces }: Cupboard, first: readonly string[], writers: readonly Writer[]): void {
  const there = new Map(pieces.map((piece) => [piece.code, piece]));
  if (there.size !== pieces.length) throw new Error("a code stands twice");
  const put = new Set(first);
  const maybe = new Set<string>();
  const owners = new Map<string, string>();
  const open = new Map<string, { act: Said["act"]; name: string }>();
  for (const { name, said } of writers) {
    const done = said.filter(({ isDone }) => isDone);
    const own = new Set<string>();
    for (const { act, code } of done) {
      if (act === "put") put.add(code);
      else if (act === "take") {
        if (own.has(code)) throw new Error(`${code} was taken, and then stood as free again`);
        own.add(code);
      } else if (!own.delete(code)) throw new Error(`${code} was given back by one who did not have it`);
    }
    const last = said.at(-1);
    if (last && !last.isDone) {
      open.set(`${name} ${last.code}`, { act: last.act, name });
      if (last.act === "put") maybe.add(last.code);
    }
    for (const code of own) {
      // The other may have taken it when this one's giving back was done but not told.
      const isOpen = open.get(`${name} ${code}`)?.act === "back";
      if (owners.has(code) && !isOpen) throw new Error(`${code} was taken twice`);
      if (!isOpen) owners.set(code, name);
    }
  }
  for (const code of put) if (!there.has(code)) throw new Error(`${code} is lost`);
  for (const { code, taken } of pieces) {
    if (!put.has(code) && !maybe.has(code)) throw new Error(`${code} came from nowhere`);
    const owner = owners.get(code) ?? null;
    const isOut = taken?.project ?? null;
    const mayBe = [
      owner,
      ...writers.map(({ name }) => name).filter((name) => open.get(`${name} ${code}`)?.act === "take"),
    ];
    const isBack = writers.some(({ name }) => open.get(`${name} ${code}`)?.act === "back");
    if (isBack) mayBe.push(null, ...writers.map(({ name }) => name));
    if (!mayBe.includes(isOut)) throw new Error(`${code} is out for ${isOut}, and should be for ${owner}`);
  }
}

/** Two writers on one cupboard file at once, both killed at random moments, then a change that goes through. */
export function cupboardKillsOf(modules: Modules): Kind {
  return {
    name: "cupboardKills",
    about:
      "two writers on one cupboard file, both killed at random moments; then the file is held against what they did",
    limitMs: 300_000,
    run: async (draw: Draw) => {
      const folder = mkdtempSync(join(tmpdir(), "laywright-cupboard-"));
      const file = join(folder, "cupboard.json");
      const put = () => changeCupboard(file, (cupboard) => ok(putIn(cupboard, "Canvas", STOCK, {}, today())), true);
      try {
        const first: string[] = [];
        for (let i = 0; i < PIECES; i++) first.push((await put()).pieces[0]!.code);
        const writers = ["one", "two"].map((name) => writer(modules, file, name, draw.below(2 ** 30)));
        await Promise.all(writers.map(({ ready }) => ready));
        const ends = writers.map(async ({ child }) => {
          const closed = once(child, "close");
          setTimeout(() => child.kill("SIGKILL"), draw.below(MOST_MS));
          await closed;
        });
        await Promise.all(ends);
        const read = readCupboard(readFileSync(file, "utf8"));
        if (!read.ok) throw new Error(`the file is not whole: ${JSON.stringify(read.problems)}`);
        judge(read.value, first, writers);
        const left = readdirSync(folder).length - 1;
        const { cupboard } = await put();
        if (cupboard.pieces.length !== read.value.pieces.length + 1)
          throw new Error("a change after the kills is lost");
        if (readdirSync(folder).length !== 1) throw new Error("what the killed runs left was not swept away");
        const done = writers.reduce((sum, { said }) => sum + said.filter(({ isDone }) => isDone).length, 0);
        const when = left > 0 ? "in the middle of a change" : "between changes";
        return done === 0 ? `2 kills before any change was done` : `2 kills, ${when}`;
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}
