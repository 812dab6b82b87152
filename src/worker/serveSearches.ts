import { chooseEngines } from "../core/lay/engines/chooseEngines.ts";
import type { LayPlan } from "../core/lay/problem/layProblem.ts";
import { arrange } from "../core/lay/search/arrange/arrange.ts";
import type { Arrangement } from "../core/lay/search/arrange/layingDesk.ts";
import { BREATH } from "../core/lay/search/breath.ts";
import type { FromWorker, Line, SearchOrder, ToWorker } from "./protocol.ts";

/** Turns of a search between two meetings of the workers: some tenths of a second. */
const EPOCH_TURNS = 32;
/**
 * A worker goes so many epochs ahead of the slowest: at the end of an epoch it hears what all had found this many
 * before. Turns last unequally long; one that had to wait at each meeting would stand idle an eighth of the time.
 */
const EPOCHS_AHEAD = 2;

/**
 * The worker's side: runs one search at a time, a turn at a time, so that a message is heard within one turn
 * or at the next breath in it (20 ms). A new order ends the one before. `later` calls back after messages that wait have been heard.
 */
export function serveSearches(line: Line<FromWorker, ToWorker>, later: (next: () => void) => void): void {
  let current: Running | null = null;

  const turn = (running: Running): void => {
    if (running !== current) return;
    try {
      if (takeTurn(running, line)) current = null;
      else if (!running.waits) later(() => turn(running));
    } catch (error) {
      current = null;
      line.send({
        kind: "failed",
        order: running.order,
        reason: error instanceof Error ? `${error.stack}` : `${error}`,
      });
    }
  };

  line.listen((message) => {
    if (message.kind === "start") {
      current = startedSearch(message.order, message.search);
      turn(current);
    } else if (current?.order === message.order) {
      if (message.kind === "stop") current = null;
      else {
        current.heard.push(message.plan);
        if (!current.waits) return;
        current.waits = !hearsOthers(current);
        turn(current);
      }
    }
  });
}

interface Running {
  readonly order: number;
  readonly meets: boolean;
  readonly search: Arrangement;
  turns: number;
  /** Epochs at whose end the others were heard, or need not be. */
  epochs: number;
  /** What the others had at meetings that this worker has not come to yet, the earliest first. */
  readonly heard: (LayPlan | null)[];
  /** Waiting for `go`. */
  waits: boolean;
  /** A plan of the others; heard at the next turn, since a breath hears nothing. */
  news: LayPlan | undefined;
  isAtBreath: boolean;
}

function startedSearch(order: number, { problem, mode, seed, evaluations, meets, from }: SearchOrder): Running {
  const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations }, seed);
  return {
    order,
    meets,
    search,
    turns: 0,
    epochs: 0,
    heard: [],
    waits: false,
    news: from,
    isAtBreath: true,
  };
}

/** At the end of an epoch: whether it can go on, having heard what the others had at a meeting before. */
function hearsOthers(running: Running): boolean {
  if (running.epochs >= EPOCHS_AHEAD) {
    const told = running.heard.shift();
    if (told === undefined) return false;
    running.news = told ?? undefined;
  }
  running.epochs++;
  return true;
}

/** One turn; true when the search is over. */
function takeTurn(running: Running, line: Line<FromWorker, ToWorker>): boolean {
  const { order, search, news, isAtBreath } = running;
  if (!isAtBreath) running.news = undefined;
  const { done, value } = isAtBreath || news === undefined ? search.next() : search.next(news);
  running.isAtBreath = !done && value === BREATH;
  if (done) {
    line.send({ kind: "done", order, plan: value, evaluations: value.evaluations });
    return true;
  }
  if (value === BREATH) return false;
  const { plan, evaluations } = value;
  if (plan) line.send({ kind: "plan", order, plan, evaluations });
  running.turns++;
  if (running.turns % EPOCH_TURNS !== 0) return false;
  if (!running.meets) line.send({ kind: "spent", order, evaluations });
  else {
    line.send({ kind: "met", order, evaluations });
    running.waits = !hearsOthers(running);
  }
  return false;
}
