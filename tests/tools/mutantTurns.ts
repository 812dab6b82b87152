// The tests of `npm run mutate` in processes of their own, one test file after the other.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { basename, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { createVitest } from "vitest/node";
import { type Mutant, withSwitches } from "./mutants.ts";

/** What a run of the tests tells, as it goes. */
export type MutantNews =
  | { readonly kind: "reached" | "loaded"; readonly mutants: readonly number[] }
  | { readonly kind: "tries"; readonly mutant: number | null }
  | { readonly kind: "noticed" | "muddied"; readonly mutant: number }
  | { readonly kind: "costly" | "once" | "fails"; readonly test: string }
  | { readonly kind: "done"; readonly test: string }
  | { readonly kind: "spent"; readonly seconds: number };

/** A test file, the sources whose changes it is tried on, and those of them that it uses itself. */
export interface TestFile {
  readonly test: string;
  readonly files: readonly string[];
  readonly own: readonly string[];
}

/** A test file to run, with all changes in turn or with one that is on from the moment that modules load, else −1. */
interface Turn extends TestFile {
  readonly atLoad: number;
}

/** What a process of its own is to try. */
export interface Order {
  readonly mutants: readonly (readonly [number, Mutant])[];
  readonly left: readonly number[];
  readonly turns: readonly Turn[];
  readonly isAgain: boolean;
}

/** Test files in which a change of what modules do while they load is tried. */
const MOST_LOADS = 2;
/** Processor time without news, s, after which a change is taken to go on for ever. */
const LONGEST = 60;

/** Carries an order out in this process and tells how it goes. */
export async function carryOut(
  { mutants, left, turns, isAgain }: Order,
  tell: (news: MutantNews) => void,
): Promise<void> {
  const alive = new Set(left);
  const channel = new BroadcastChannel("laywright-mutants");
  channel.onmessage = (event) => {
    const news = (event as MessageEvent<MutantNews>).data;
    if (news.kind === "noticed" || news.kind === "muddied") alive.delete(news.mutant);
    tell(news);
  };
  const clock = setInterval(() => {
    const { user, system } = process.cpuUsage();
    tell({ kind: "spent", seconds: (user + system) / 1e6 });
  }, 1000);
  const sources = resolve("src");
  const vitest = await createVitest(
    "test",
    {
      // The house's file of settings has projects, which would not hear of the plugin below.
      config: false,
      include: [...new Set(turns.map(({ test }) => test))],
      setupFiles: ["tests/tools/fuzzSeed.ts"],
      runner: "tests/tools/mutantRunner.ts",
      // Threads end with their process, also when a change made a loop that has no end.
      pool: "threads",
      maxWorkers: 1,
      watch: false,
      reporters: [{}],
      // Rounds and processor time are counted instead.
      testTimeout: 0,
    },
    {
      plugins: [
        {
          name: "mutants",
          enforce: "pre",
          load: (id) => {
            const file = id.split("?")[0]!;
            const here = mutants.filter(([, mutant]) => resolve(mutant.file) === file);
            const isSource = file.startsWith(sources) && file.endsWith(".ts") && !file.endsWith(".test.ts");
            if (here.length === 0 && !isSource) return null;
            return withSwitches(readFileSync(file, "utf8"), new Map(here));
          },
        },
      ],
    },
  );
  const project = vitest.getRootProject();
  for (const { test, files, atLoad } of turns) {
    const here = mutants.filter(([n, { file }]) => alive.has(n) && files.includes(file)).map(([n]) => n);
    if (atLoad < 0 ? here.length > 0 : alive.has(atLoad)) {
      project.provide("mutantsLeft", here);
      project.provide("mutantAtLoad", atLoad);
      project.provide("mutantsAgain", isAgain);
      vitest.state.clearErrors();
      const specification = project.createSpecification(resolve(test));
      const { testModules, unhandledErrors } = await vitest.runTestSpecifications([specification], true);
      // A run that does not load has noticed.
      const isGood =
        testModules.length > 0 && testModules.every((module) => module.ok()) && unhandledErrors.length === 0;
      if (!isGood) tell({ kind: "fails", test });
      if (!isGood && atLoad >= 0) alive.delete(atLoad);
    }
    tell({ kind: "done", test });
  }
  clearInterval(clock);
  channel.close();
}

/** Gives an order to a process; ended when a change goes on for ever. True when it came to its end. */
async function inProcess(order: Order, hear: (news: MutantNews) => void): Promise<boolean> {
  const child = spawn(
    process.execPath,
    ["--import", "tsx", fileURLToPath(new URL("mutate.ts", import.meta.url)), "--ordered"],
    {
      stdio: ["ignore", "ignore", process.env.MUTATE_LOUD ? "inherit" : "ignore", "ipc"],
    },
  );
  child.send(order);
  process.once("SIGINT", () => child.kill("SIGKILL"));
  let spent = 0;
  let spentAtNews = 0;
  let isWhole = false;
  // Nothing comes any more from a process that waits for what never happens, and it spends no time either.
  let silence = setTimeout(() => undefined, 0);
  child.on("message", (news: MutantNews | "end") => {
    clearTimeout(silence);
    if (news === "end") isWhole = true;
    else if (news.kind !== "spent") {
      spentAtNews = spent;
      hear(news);
    } else {
      if (spent === 0) spentAtNews = news.seconds;
      const before = spent;
      spent = news.seconds;
      if (spent - spentAtNews > LONGEST) child.kill("SIGKILL");
      if (spent - before > 0.05) return;
    }
    silence = setTimeout(() => child.kill("SIGKILL"), 120_000);
  });
  await once(child, "exit");
  clearTimeout(silence);
  return isWhole;
}

/** A file's name up to its first point. */
const stemOf = (path: string): string => basename(path).split(".")[0]!;

/** What came of each change. */
export interface Tally {
  readonly noticed: ReadonlySet<number>;
  readonly reached: ReadonlySet<number>;
  /** Noticed because its run had no end. */
  readonly endless: ReadonlySet<number>;
  /** Tests that were not run again for each change, and why. */
  readonly unused: readonly string[];
}

/** Runs the tests with each change on; changes that a test reaches while it loads are tried anew from there. */
export async function tryOut(chosen: ReadonlyMap<number, Mutant>, tests: readonly TestFile[]): Promise<Tally> {
  const noticed = new Set<number>();
  const reached = new Set<number>();
  const endless = new Set<number>();
  const unused: string[] = [];
  const loaded: Turn[] = [];
  let untried = 0;
  let isStopped = false;
  process.once("SIGINT", () => {
    isStopped = true;
  });
  // How many changes each test file was the first to notice.
  const bites = new Map<string, number>();
  // Tests that cost too much for all changes are run once more for those that are left.
  const again = new Set<string>();
  const takeTurns = async (turns: readonly Turn[], isAgain: boolean): Promise<void> => {
    for (let at = 0; at < turns.length && !isStopped; ) {
      let trying: number | null = null;
      const hear = (news: MutantNews): void => {
        const { test, files, own, atLoad } = turns[at]!;
        if (news.kind === "tries") trying = news.mutant;
        if (news.kind === "reached" || news.kind === "loaded") for (const n of news.mutants) reached.add(n);
        if (news.kind === "loaded") loaded.push(...news.mutants.map((n) => ({ test, files, own, atLoad: n })));
        if (news.kind === "noticed") bites.set(test, (bites.get(test) ?? 0) + 1);
        if (news.kind === "noticed") noticed.add(news.mutant);
        if (news.kind === "muddied") loaded.push({ test, files, own, atLoad: news.mutant });
        if (news.kind === "fails" && atLoad >= 0) noticed.add(atLoad);
        if (news.kind === "costly" && !isAgain) again.add(test);
        else if (news.kind === "costly" || news.kind === "once") unused.push(`${news.kind}: ${test}, ${news.test}`);
        if (news.kind === "fails" && atLoad < 0) unused.push(`fails: ${test}`);
        if (news.kind !== "done") return;
        at++;
        untried--;
        trying = null;
        console.log(`${test}: ${noticed.size} of ${chosen.size} noticed, ${at} of ${turns.length} turns`);
      };
      const left = [...chosen.keys()].filter((n) => !noticed.has(n));
      untried = turns.slice(at).filter(({ atLoad }) => atLoad < 0 || !noticed.has(atLoad)).length;
      if (await inProcess({ mutants: [...chosen], left, turns: turns.slice(at), isAgain }, hear)) {
        untried = 0;
        return;
      }
      if (isStopped) return;
      const { test, atLoad } = turns[at]!;
      const culprit = atLoad < 0 ? trying : atLoad;
      if (culprit === null) unused.push(`has no end by itself: ${test}`);
      else endless.add(culprit);
      if (culprit !== null) noticed.add(culprit);
      if (culprit === null || atLoad >= 0) at++;
    }
  };
  await takeTurns(
    tests.map((one) => ({ ...one, atLoad: -1 })),
    false,
  );
  await takeTurns(
    tests.filter(({ test }) => again.has(test)).map((one) => ({ ...one, atLoad: -1 })),
    true,
  );
  // Those that modules do while they load: each takes a run of its own, in files named like the source before those that
  // use it themselves, these before others, and then in those that have noticed the most.
  const nearness = ({ test, own, atLoad }: Turn): number => {
    const { file } = chosen.get(atLoad)!;
    return own.includes(file) ? (stemOf(test) === stemOf(file) ? 2 : 1) : 0;
  };
  const each = new Map(loaded.map((turn) => [`${turn.atLoad} ${turn.test}`, turn]));
  const sharpest = [...each.values()].sort(
    (a, b) => nearness(b) - nearness(a) || (bites.get(b.test) ?? 0) - (bites.get(a.test) ?? 0),
  );
  const few = [...new Set(loaded.map(({ atLoad }) => atLoad))].sort((a, b) => a - b);
  await takeTurns(
    few.flatMap((n) => (noticed.has(n) ? [] : sharpest.filter(({ atLoad }) => atLoad === n).slice(0, MOST_LOADS))),
    true,
  );
  if (isStopped) unused.push(`stopped before its end, turns not taken: ${untried}`);
  return { noticed, reached, endless, unused };
}
