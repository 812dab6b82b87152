import type { Queue } from "bullmq";
import type { Redis } from "ioredis";
import { InputProblem } from "../inOut/toldProblem.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";

/** The libraries of the queue, which are installed and loaded only where it is asked for. */
export interface QueueLibraries {
  readonly bullmq: typeof import("bullmq");
  readonly ioredis: Pick<typeof import("ioredis"), "Redis">;
}

/** A connection to the store in which the queue lies. */
export interface QueueStore {
  readonly libraries: QueueLibraries;
  /** For ordinary commands; those given while the network is away wait until it is back. */
  readonly redis: Redis;
  /** Lays of this version of the program; other versions see others. */
  readonly queue: Queue;
  /** Of the program: who has another takes no part. */
  readonly version: string;
  /** Host and port, without name and password, for what is said. */
  readonly place: string;
  /** Ends the connection at once, whatever waits. */
  close(): void;
}

/** Before every key that is ours in the store. */
export const PREFIX = "laywright";

/** How long the first connection may take, ms. */
const LONGEST_CONNECT_MS = 10_000;

/**
 * Connects to the store by its URL: `redis://` or, encrypted, `rediss://`, with user and password in it. Opens no port
 * of its own. Throws `InputProblem` where the URL is none, the libraries are missing, or nobody answers in 10 s.
 */
export async function connectQueue(url: string, version: string): Promise<QueueStore> {
  const place = placeOf(url);
  const libraries = await loadLibraries();
  const { Redis } = libraries.ioredis;
  // Commands wait out a network that is away; the store is asked again after at most 2 s.
  const redis = new Redis(url, {
    maxRetriesPerRequest: null,
    lazyConnect: true,
    retryStrategy: (times) => Math.min(50 * 2 ** Math.min(times, 6), 2000),
  });
  let last: Error | null = null;
  redis.on("error", (error: Error) => {
    last = error;
  });
  // Its promise fails at the first refusal, while tries go on: what counts is the answer below.
  redis.connect().catch(() => {});
  const answered = await withinMs(redis.ping(), LONGEST_CONNECT_MS).catch((error: Error) => {
    last = error;
    return null;
  });
  if (answered === null) {
    redis.disconnect();
    throw queueProblem("queue-unreachable", (texts) => texts.unreachable(place, reasonOf(last)));
  }
  // What has become of a lay is asked for, so what the store tells of it need not be kept.
  const streams = { events: { maxLen: 16 } };
  const queue = new libraries.bullmq.Queue(queueName(version), { connection: redis, prefix: PREFIX, streams });
  // Told by whoever uses it; an event that nobody hears would end the process.
  queue.on("error", () => {});
  return {
    libraries,
    redis,
    queue,
    version,
    place,
    close: () => {
      queue.close().catch(() => {});
      redis.disconnect();
    },
  };
}

/** Lays of different versions never lie in the same queue. */
export function queueName(version: string): string {
  return `lays-${version}`;
}

/** The promise, or null when it takes longer. */
async function withinMs<T>(promise: Promise<T>, ms: number): Promise<T | null> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), ms);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

function placeOf(url: string): string {
  const parsed = URL.canParse(url) ? new URL(url) : null;
  if (parsed === null || !/^rediss?:$/u.test(parsed.protocol) || parsed.hostname === "")
    throw queueProblem("queue-url", (texts) => texts.noUrl);
  return `${parsed.hostname}:${parsed.port === "" ? 6379 : parsed.port}`;
}

async function loadLibraries(): Promise<QueueLibraries> {
  try {
    const [bullmq, ioredis] = await Promise.all([import("bullmq"), import("ioredis")]);
    return { bullmq, ioredis };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ERR_MODULE_NOT_FOUND") throw error;
    throw queueProblem("queue-not-installed", (texts) => texts.notInstalled);
  }
}

function reasonOf(error: Error | null): string {
  const { code, message } = (error ?? {}) as NodeJS.ErrnoException;
  return code ?? message ?? "";
}

function queueProblem(code: string, say: (texts: (typeof QUEUE_TEXTS)["en"]) => string): InputProblem {
  return new InputProblem((language) => [{ code, path: "--queue", message: say(QUEUE_TEXTS[language]) }]);
}
