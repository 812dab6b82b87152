import { PREFIX, type QueueStore } from "./connect.ts";

/** Who takes part: workers that lay, batches that give lays out. */
export type Part = "workers" | "batches";

/** Somebody who takes part. */
export interface Present {
  readonly version: string;
  readonly name: string;
  /** Lays that it works on at a time. */
  readonly threads: number;
}

/** Who has not been heard of for so long has gone, s. */
const GONE_AFTER_S = 30;
const BEAT_MS = 10_000;

// The store's own clock: those of the machines may be anywhere.
const BEAT = `redis.call('ZADD', KEYS[1], redis.call('TIME')[1], ARGV[1])
redis.call('ZREMRANGEBYSCORE', KEYS[1], '-inf', redis.call('TIME')[1] - 10 * tonumber(ARGV[2]))`;
const LIST = `return redis.call('ZRANGEBYSCORE', KEYS[1], redis.call('TIME')[1] - tonumber(ARGV[1]), '+inf')`;

/** Says that somebody is there, now and every 10 s until the returned function is called. */
export function announce(store: QueueStore, part: Part, name: string, threads: number): () => void {
  const member = JSON.stringify([store.version, name, threads]);
  const beat = (): void => {
    store.redis.eval(BEAT, 1, keyOf(part), member, GONE_AFTER_S).catch(() => {});
  };
  beat();
  const timer = setInterval(beat, BEAT_MS);
  return () => {
    clearInterval(timer);
    store.redis.zrem(keyOf(part), member).catch(() => {});
  };
}

/** Who was heard of in the last 30 s, of any version. */
export async function present(store: QueueStore, part: Part): Promise<Present[]> {
  const members = (await store.redis.eval(LIST, 1, keyOf(part), GONE_AFTER_S)) as string[];
  return members.flatMap((member): Present[] => {
    try {
      const [version, name, threads] = JSON.parse(member);
      return [{ version: String(version), name: String(name), threads: Math.max(1, Number(threads) || 1) }];
    } catch {
      return [];
    }
  });
}

/** Versions of others of a part where nobody there has ours; none where somebody has, or nobody is there. */
export async function strangers(store: QueueStore, part: Part): Promise<string[]> {
  const found = await present(store, part);
  if (found.some(({ version }) => version === store.version)) return [];
  return [...new Set(found.map(({ version }) => version))].sort();
}

function keyOf(part: Part): string {
  return `${PREFIX}:${part}`;
}
