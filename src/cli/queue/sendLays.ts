import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import type { LayTask, Refused } from "../batch/layTask.ts";
import { bugText, type RunningTasks } from "../batch/runTasks.ts";
import { QUEUE_TEXTS, type QueueTexts } from "../words/queueTexts.ts";
import type { QueueStore } from "./connect.ts";
import { readFoundPlans, type SentLay } from "./wire.ts";

/** How a batch gives its lays out. */
export interface SendWish<R> {
  /** The same for the same lay, and for no other. */
  keyOf(task: LayTask): string;
  /** Who goes first: the smaller number, from 1. */
  priorityOf(task: LayTask): number;
  /** Checks plans that a worker sent back and draws them, or says why it does not. */
  draw(task: LayTask, plans: readonly LayPlan[]): Promise<R | Refused>;
  /** Reads what a worker kept in the shared folder; absent where there is none. */
  readonly kept?: ((task: LayTask) => readonly LayPlan[] | null) | undefined;
  /** So many are drawn at a time. */
  readonly atOnce: number;
  readonly texts?: QueueTexts;
  /** Before a lay that failed is given out again: so long, then twice that, ms. */
  readonly restMs?: number;
  /** How long what nobody fetched stays in the store, s: a week unless told, for a batch that goes on later. */
  readonly keptSeconds?: number;
  /** Lays in the queue at a time; 512 unless told. */
  mostOut?(): number;
}

/** What came of a lay that was given out. */
export type SentResult<R> =
  | { readonly laid: R }
  | { readonly bug: string }
  | { readonly givenUp: readonly string[] };

/** How often a lay is tried before it is given up. */
const MOST_TRIES = 3;
/** Lays in the queue at a time, so that a batch of a million needs no more room than one of a thousand. */
const MOST_OUT = 512;
const LOOK_MS = 50;
const REST_MS = 1000;
/** Looks between two searches for lays that the store has lost. */
const LOST_EACH = 40;
const MOST_PRIORITY = 2_097_151;

/** A lay that has been given out. */
interface Out {
  readonly task: LayTask;
  /** Why each try before failed. */
  readonly tries: string[];
  state: "out" | "drawn" | "resting";
  /** When it is given out again, by the clock of this process that nobody sets. */
  restsUntil: number;
}

/**
 * Gives lays out to the workers of a queue and draws the plans that come back, after the checker here has passed them.
 * What has become of a lay is asked of the store again and again, never only heard, so nothing is lost with a
 * connection. Each task ends once: laid, or given up with the reason of every try. A task taken back by `stop` ends not
 * at all.
 */
export function sendLays<R extends object>(
  tasks: Iterable<LayTask>,
  store: QueueStore,
  wish: SendWish<R>,
  onEnd: (task: LayTask, result: SentResult<R>) => void,
): RunningTasks {
  const sending = new Sending(tasks, store, wish, onEnd);
  return { ended: sending.run(), stop: () => sending.stop() };
}

class Sending<R extends object> {
  readonly #waiting: Iterator<LayTask>;
  readonly #store: QueueStore;
  readonly #wish: SendWish<R>;
  readonly #onEnd: (task: LayTask, result: SentResult<R>) => void;
  readonly #out = new Map<string, Out>();
  readonly #drawing = new Set<Promise<void>>();
  /** More was back at the last look than there were places for. */
  #isLeft = false;
  /** The store refused something: nothing can go on. */
  #fault: unknown = null;
  #isStopped = false;
  #tellStop: () => void = () => {};
  readonly #stopped = new Promise<void>((resolve) => {
    this.#tellStop = resolve;
  });

  constructor(
    tasks: Iterable<LayTask>,
    store: QueueStore,
    wish: SendWish<R>,
    onEnd: (task: LayTask, result: SentResult<R>) => void,
  ) {
    this.#waiting = tasks[Symbol.iterator]();
    this.#store = store;
    this.#wish = wish;
    this.#onEnd = onEnd;
  }

  stop(): void {
    this.#isStopped = true;
    this.#tellStop();
  }

  async run(): Promise<void> {
    for (let look = 1; ; look++) {
      // A store that does not answer must not keep Ctrl-C waiting.
      const isOver = await Promise.race([this.#look(look), this.#stopped.then(() => true)]);
      if (isOver || this.#isStopped || this.#fault !== null) break;
      if (!this.#isLeft) await Promise.race([pause(LOOK_MS), this.#stopped]);
      // What is back and waits is fetched the moment there is a place for it, not at the next look.
      else if (this.#drawing.size >= this.#wish.atOnce)
        await Promise.race([pause(LOOK_MS), this.#stopped, ...this.#drawing]);
    }
    await Promise.all(this.#drawing);
    if (this.#fault !== null) throw this.#fault;
    if (this.#isStopped) await Promise.race([this.#takeBack(), pause(2000)]);
  }

  /** Gives out what there is room for, and takes what has come back; true when nothing is left. */
  async #look(look: number): Promise<boolean> {
    const fresh = this.#fresh();
    if (fresh.length > 0) await this.#prepare(fresh);
    const rested = [...this.#out].filter(
      ([, lay]) => lay.state === "resting" && performance.now() >= lay.restsUntil,
    );
    await this.#put([...fresh, ...rested.map(([id]) => id)]);
    const ids = [...this.#out].filter(([, { state }]) => state === "out").map(([id]) => id);
    this.#isLeft = false;
    if (ids.length === 0) return this.#out.size === 0;
    const { redis, queue } = this.#store;
    const [done, failed] = await Promise.all([
      redis.zmscore(queue.toKey("completed"), ids),
      redis.zmscore(queue.toKey("failed"), ids),
    ]);
    for (const [i, id] of ids.entries()) {
      if (this.#isStopped) return true;
      if (done[i] !== null && this.#drawing.size < this.#wish.atOnce) await this.#take(id);
      else if (done[i] !== null) this.#isLeft = true;
      if (failed[i] !== null) await this.#failed(id);
    }
    if (look % LOST_EACH === 0) await this.#findLost(ids);
    return false;
  }

  #fresh(): string[] {
    const fresh: string[] = [];
    const most = this.#wish.mostOut?.() ?? MOST_OUT;
    // The next ones may have to be read first: not all before the first goes out.
    const until = performance.now() + LOOK_MS;
    while (this.#out.size < most && performance.now() < until) {
      const next = this.#waiting.next();
      if (next.done) break;
      const id = `lay-${this.#wish.keyOf(next.value)}`;
      this.#out.set(id, { task: next.value, tries: [], state: "out", restsUntil: 0 });
      fresh.push(id);
    }
    return fresh;
  }

  /** What failed for an earlier batch is tried anew; what it finished is as good as new. */
  async #prepare(ids: readonly string[]): Promise<void> {
    const { redis, queue } = this.#store;
    const failed = await redis.zmscore(queue.toKey("failed"), ...ids);
    await Promise.all(ids.filter((_, i) => failed[i] !== null).map((id) => queue.remove(id)));
  }

  async #put(ids: readonly string[]): Promise<void> {
    if (ids.length === 0) return;
    const jobs = ids.map((id) => {
      const lay = this.#out.get(id)!;
      lay.state = "out";
      const byFolder = this.#wish.kept !== undefined;
      const data: SentLay = { version: this.#store.version, task: lay.task, byFolder };
      const priority = Math.min(Math.max(1, this.#wish.priorityOf(lay.task)), MOST_PRIORITY);
      const kept = { age: this.#wish.keptSeconds ?? 7 * 86_400 };
      return { name: "lay", data, opts: { jobId: id, priority, removeOnComplete: kept, removeOnFail: kept } };
    });
    await this.#store.queue.addBulk(jobs);
  }

  async #take(id: string): Promise<void> {
    const lay = this.#out.get(id)!;
    const text = await this.#store.redis.hget(this.#store.queue.toKey(id), "returnvalue");
    lay.state = "drawn";
    const drawing: Promise<void> = this.#draw(id, lay, parsed(text))
      .catch((error: unknown) => {
        this.#fault ??= error;
      })
      .finally(() => this.#drawing.delete(drawing));
    this.#drawing.add(drawing);
  }

  async #draw(id: string, lay: Out, data: unknown): Promise<void> {
    const texts = this.#wish.texts ?? QUEUE_TEXTS.en;
    const found = readFoundPlans(data);
    if (found === null || found.version !== this.#store.version) {
      await this.#again(id, lay, texts.notPlans(nameIn(data)));
      return;
    }
    const kept = found.plans ?? this.#wish.kept?.(lay.task) ?? null;
    if (kept === null) {
      await this.#again(id, lay, texts.notInFolder(found.worker));
      return;
    }
    const plans = kept.map((plan) => ({ ...plan, seed: lay.task.effort.seed }));
    let drawn: R | Refused;
    try {
      drawn = await this.#wish.draw(lay.task, plans);
    } catch (error) {
      this.#end(id, { bug: bugText(error) });
      return;
    }
    if ("refused" in drawn)
      await this.#again(id, lay, texts.wrongPlan(found.worker, drawn.refused.slice(0, 3).join(" ")));
    else this.#end(id, { laid: drawn });
  }

  async #failed(id: string): Promise<void> {
    const reason = await this.#store.redis.hget(this.#store.queue.toKey(id), "failedReason");
    const texts = this.#wish.texts ?? QUEUE_TEXTS.en;
    const isSilent = reason?.startsWith("job stalled") ?? false;
    await this.#again(id, this.#out.get(id)!, isSilent ? texts.silent : (reason ?? "?").split("\n")[0]!);
  }

  /** Gives a lay out once more after a rest, or gives it up. */
  async #again(id: string, lay: Out, reason: string): Promise<void> {
    lay.tries.push(reason);
    if (lay.tries.length >= MOST_TRIES) {
      // It stays in the store among those that failed or are done wrong; the reasons go to the maker.
      this.#end(id, { givenUp: lay.tries });
      return;
    }
    lay.restsUntil = performance.now() + (this.#wish.restMs ?? REST_MS) * 2 ** (lay.tries.length - 1);
    lay.state = "resting";
    await this.#store.queue.remove(id);
  }

  #end(id: string, result: SentResult<R>): void {
    const { task } = this.#out.get(id)!;
    this.#onEnd(task, result);
    this.#out.delete(id);
    // Whatever becomes of this: what stands there too long is taken away by the store.
    this.#store.queue.remove(id).catch(() => {});
  }

  /** A store that was emptied or lost its last seconds knows some of the lays no more: they are given out again. */
  async #findLost(ids: readonly string[]): Promise<void> {
    const { redis, queue } = this.#store;
    const there = await Promise.all(ids.map((id) => redis.exists(queue.toKey(id))));
    await this.#put(ids.filter((id, i) => there[i] === 0 && this.#out.get(id)?.state === "out"));
  }

  /** Nobody is to work for a batch that has been stopped. What is under way stays, and the next run finds it done. */
  async #takeBack(): Promise<void> {
    const ids = [...this.#out].filter(([, { state }]) => state === "out").map(([id]) => id);
    await Promise.allSettled(ids.map((id) => this.#store.queue.remove(id)));
  }
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? "null");
  } catch {
    return null;
  }
}

function nameIn(data: unknown): string {
  const { worker } = (data ?? {}) as { worker?: unknown };
  return typeof worker === "string" ? worker.slice(0, 80) : "?";
}
