// How tests are run for `npm run mutate`: each test once as the sources are, which tells what places it reaches, and
// then once more with each change switched on whose place it reached and that no test before it noticed. Changes of
// what modules name while they load are tried with every test: their values are worked out again first.
import fc from "fast-check";
import { TestRunner } from "vitest";
import type { MutantNews } from "./mutantTurns.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Changes nobody has noticed so far. */
    mutantsLeft: number[];
    /** The one that is on from the moment that modules load, or −1. */
    mutantAtLoad: number;
    /** Whether tests are run that were passed over for what they cost. */
    mutantsAgain: boolean;
  }
}

/** Processor time, µs, that a test may take for all the changes it reaches together, at first and when run again. */
const COSTLY = [10e6, 40e6] as const;
/** Rounds of loops by which a changed run may exceed the plain one. */
const ROUNDS = { times: 20, more: 200_000 };

let on = -1;
let rounds = 0;
let mostRounds = Number.POSITIVE_INFINITY;
const marks = new Uint8Array(1 << 16);
/** Works out again what modules name while they load, in the order in which they were loaded. */
const again: (() => void)[] = [];
const reload = (): void => {
  for (const one of again) one();
};
const channel = new BroadcastChannel("laywright-mutants");
(channel as unknown as { unref(): void }).unref();
const tell = (news: MutantNews): void => channel.postMessage(news);

Object.assign(globalThis, {
  __change: (n: number) => {
    marks[n] = 1;
    return n === on;
  },
  __round: () => {
    if (++rounds > mostRounds) throw new Error("goes on and on");
  },
  __kept: <T>(make: () => T, put: (value: T) => void): T => {
    again.push(() => put(make()));
    return make();
  },
});
// The first counterexample is enough.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });

/** Runs each test with one change after the other. */
export default class MutantRunner extends TestRunner {
  private readonly left = new Set(this.injectValue("mutantsLeft") as number[]);
  private readonly isAgain = this.injectValue("mutantsAgain") as boolean;
  private readonly atLoad = this.injectValue("mutantAtLoad") as number;
  /** Changes of what modules name while they load. */
  private readonly loaded = new Set<number>();
  private hasFailed = false;

  override onCollectStart(file: Parameters<TestRunner["onCollectStart"]>[0]): void {
    super.onCollectStart(file);
    on = this.atLoad;
    rounds = 0;
    mostRounds = this.atLoad < 0 ? Number.POSITIVE_INFINITY : 50_000_000;
  }

  async runTask(test: Parameters<TestRunner["onBeforeTryTask"]>[0]): Promise<void> {
    const run = TestRunner.getTestFn(test as never);
    if (this.atLoad >= 0) {
      // One test that fails is enough.
      if (this.hasFailed) return;
      this.hasFailed = true;
      await run();
      this.hasFailed = false;
      return;
    }
    const atLoad = this.reached();
    for (const n of atLoad) this.loaded.add(n);
    const before = process.cpuUsage();
    rounds = 0;
    await run();
    const spent = process.cpuUsage(before);
    const plainRounds = rounds;
    const here = this.reached();
    if (atLoad.length > 0) await this.workOutAgain(test, run);
    const loaded = [...this.loaded].filter((n) => this.left.has(n));
    if (here.length + loaded.length === 0) return;
    tell({ kind: "reached", mutants: here });
    if ((spent.user + spent.system) * (here.length + loaded.length) > COSTLY[this.isAgain ? 1 : 0])
      return tell({ kind: "costly", test: test.name });
    if (!(await this.passes(test, run))) return tell({ kind: "once", test: test.name });
    for (const n of new Set([...here, ...loaded])) {
      tell({ kind: "tries", mutant: n });
      rounds = 0;
      mostRounds = plainRounds * ROUNDS.times + ROUNDS.more;
      const isGood = await this.passesWith(n, test, run);
      mostRounds = Number.POSITIVE_INFINITY;
      if (isGood) continue;
      // What a change leaves behind in a module must not pass for another change that is noticed.
      if (!(await this.passes(test, run))) {
        tell({ kind: "muddied", mutant: n });
        throw new Error("a change has left something behind");
      }
      this.left.delete(n);
      tell({ kind: "noticed", mutant: n });
    }
    tell({ kind: "tries", mutant: null });
    marks.fill(0);
  }

  /**
   * Keeps of the changes reached while modules load those that working their values out again comes to; the others,
   * and all of them where the test fails after that, have to be tried in runs of their own.
   */
  private async workOutAgain(
    test: Parameters<TestRunner["onBeforeTryTask"]>[0],
    run: () => unknown,
  ): Promise<void> {
    reload();
    const come = new Set(this.reached());
    const isGood = await this.passes(test, run);
    marks.fill(0);
    const rest = [...this.loaded].filter((n) => !isGood || !come.has(n));
    for (const n of rest) this.loaded.delete(n);
    if (rest.length > 0) tell({ kind: "loaded", mutants: rest });
    if (this.loaded.size > 0) tell({ kind: "reached", mutants: [...this.loaded] });
  }

  private async passesWith(
    n: number,
    test: Parameters<TestRunner["onBeforeTryTask"]>[0],
    run: () => unknown,
  ): Promise<boolean> {
    const isLoaded = this.loaded.has(n);
    on = n;
    try {
      if (isLoaded) reload();
      return await this.passes(test, run);
    } catch {
      return false;
    } finally {
      on = -1;
      if (isLoaded) reload();
    }
  }

  /** Changes not yet noticed whose places were reached since it was last asked. */
  private reached(): number[] {
    const here = [...this.left].filter((n) => marks[n] === 1);
    marks.fill(0);
    return here;
  }

  private async passes(test: Parameters<TestRunner["onBeforeTryTask"]>[0], run: () => unknown): Promise<boolean> {
    try {
      this.onBeforeTryTask(test);
      await run();
      this.onAfterTryTask(test as never);
      return true;
    } catch {
      return false;
    }
  }
}
