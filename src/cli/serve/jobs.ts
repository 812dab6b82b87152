import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { majorOf } from "../../core/buying/money.ts";
import { describeProblem } from "../../core/problems/describeProblem.ts";
import { SENTENCES } from "../../core/words/words.ts";
import type { Crew } from "../batch/crew.ts";
import type { LaidTask, LayTask, SearchTold } from "../batch/layTask.ts";
import { bugText } from "../batch/runTasks.ts";
import { SERVE_TEXTS } from "../words/serveTexts.ts";
import type { JobData, JobState } from "./contract.ts";

/** What the service allows. */
export interface JobLimits {
  /** Of one job, ms. */
  readonly mostMs: number;
  readonly mostWaiting: number;
  /** Jobs that are done and kept until somebody has fetched them; the oldest go first. */
  readonly mostKept: number;
}

interface Job {
  readonly id: string;
  readonly task: LayTask;
  readonly ends: AbortController;
  readonly listeners: Set<() => void>;
  state: JobState;
  progress: SearchTold | null;
  problems: readonly string[];
  laid: LaidTask | null;
}

/** Jobs of a service: worked on in the order they came, so many at a time; files lie in a folder that goes with it. */
export class Jobs {
  readonly #crew: Crew;
  readonly #limits: JobLimits;
  readonly #told: (error: string) => void;
  readonly #folder = mkdtempSync(join(tmpdir(), "laywright-serve-"));
  readonly #jobs = new Map<string, Job>();
  #laying = 0;

  /** `told` hears of bugs of ours. */
  constructor(crew: Crew, limits: JobLimits, told: (error: string) => void) {
    this.#crew = crew;
    this.#limits = limits;
    this.#told = told;
  }

  /** Takes a job; null where too many wait. */
  add(task: LayTask): JobData | null {
    if (this.waiting >= this.#limits.mostWaiting) return null;
    const job: Job = {
      id: randomUUID(),
      task,
      ends: new AbortController(),
      listeners: new Set(),
      state: "waiting",
      progress: null,
      problems: [],
      laid: null,
    };
    this.#jobs.set(job.id, job);
    this.#next();
    return this.#dataOf(job);
  }

  get waiting(): number {
    return this.#inState("waiting").length;
  }

  get laying(): number {
    return this.#laying;
  }

  get(id: string): JobData | null {
    const job = this.#jobs.get(id);
    return job === undefined ? null : this.#dataOf(job);
  }

  /** Calls `hear` at every change of a job until the returned function is called. */
  listen(id: string, hear: () => void): () => void {
    const listeners = this.#jobs.get(id)?.listeners;
    listeners?.add(hear);
    return () => listeners?.delete(hear);
  }

  /** Where a file of a job lies; null where it has no such file. */
  fileOf(id: string, name: string): string | null {
    const job = this.#jobs.get(id);
    const file = job?.laid?.files.find((one) => one.name === `${FOLDER}/${name}`);
    return job === undefined || file === undefined ? null : join(this.#folder, job.id, file.name);
  }

  /** Ends a job and takes its files away; false where there is none. */
  cancel(id: string): boolean {
    const job = this.#jobs.get(id);
    if (job === undefined) return false;
    this.#change(job, "cancelled");
    job.ends.abort();
    this.#forget(job);
    this.#next();
    return true;
  }

  async close(): Promise<void> {
    for (const job of this.#jobs.values()) job.ends.abort();
    await this.#crew.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  #next(): void {
    const [job] = this.#inState("waiting");
    if (job === undefined || this.#laying >= this.#crew.threads) return;
    this.#laying++;
    this.#change(job, "laying");
    void this.#lay(job).finally(() => {
      this.#laying--;
      this.#trim();
      this.#next();
    });
    this.#next();
  }

  async #lay(job: Job): Promise<void> {
    const { task, ends } = job;
    const texts = SERVE_TEXTS[task.language];
    const { mostMs } = this.#limits;
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      ends.abort();
    }, mostMs);
    const told = (news: SearchTold): void => {
      job.progress = news;
      this.#change(job, "laying");
    };
    try {
      const out = join(this.#folder, job.id);
      const laid = await this.#crew.run({ kind: "lay", task, out }, { signal: ends.signal, told });
      if (job.state === "cancelled") rmSync(out, { recursive: true, force: true });
      if (job.state === "cancelled") return;
      const sentences = laid.leftOut.map(({ problem }) => {
        const { what, remedy } = describeProblem(problem, SENTENCES[task.language]);
        return `${what} ${remedy}`;
      });
      job.problems = laid.faults.length > 0 ? laid.faults : [...sentences, ...laid.notes];
      job.laid = laid.faults.length > 0 ? null : laid;
      this.#change(job, laid.faults.length > 0 ? "failed" : laid.leftOut.length > 0 ? "left-out" : "laid");
    } catch (error) {
      if (ends.signal.aborted && !isLate) return;
      if (!isLate) this.#told(bugText(error));
      job.problems = [isLate ? texts.tooLong(Math.round(mostMs / 1000)) : texts.ourFault];
      this.#change(job, "failed");
    } finally {
      clearTimeout(timer);
    }
  }

  #change(job: Job, state: JobState): void {
    job.state = state;
    for (const hear of job.listeners) hear();
  }

  #forget(job: Job): void {
    this.#jobs.delete(job.id);
    rmSync(join(this.#folder, job.id), { recursive: true, force: true });
  }

  #trim(): void {
    const done = [...this.#jobs.values()].filter(({ state }) => state !== "waiting" && state !== "laying");
    for (const job of done.slice(0, Math.max(0, done.length - this.#limits.mostKept))) this.#forget(job);
  }

  #inState(state: JobState): Job[] {
    return [...this.#jobs.values()].filter((job) => job.state === state);
  }

  #dataOf(job: Job): JobData {
    const self = `/jobs/${job.id}`;
    const { laid } = job;
    const files = (laid?.files ?? []).map(({ name, sha256 }) => ({ name: name.slice(FOLDER.length + 1), sha256 }));
    return {
      id: job.id,
      state: job.state,
      ahead: job.state === "waiting" ? this.#inState("waiting").indexOf(job) : 0,
      progress: job.progress,
      problems: [...job.problems],
      figures: laid === null ? null : figuresOf(laid),
      files: files.map((file) => ({ ...file, href: `${self}/files/${encodeURIComponent(file.name)}` })),
      links: { self, events: `${self}/events`, plan: laid === null ? null : `${self}/plan` },
    };
  }
}

function figuresOf({ length, use, gap, toPay, currency }: LaidTask): JobData["figures"] {
  return { lengthMm: length, use, gap, toPay: toPay === null ? null : majorOf(toPay, currency), currency };
}

/** The folder of a job's files below its own. */
export const FOLDER = "job";
