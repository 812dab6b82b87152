import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import { type Io, type ParsedArgs, programVersion, UsageError } from "../command.ts";

/**
 * The workers of a queue as a pool, where they are asked for; null where not. Throws `UsageError` beside options that they
 * are no help with.
 */
export async function helpedPool(
  args: ParsedArgs,
  text: string,
  read: ProjectJob,
  { language }: Io,
): Promise<{ readonly pool: SearchPool; end(): void } | null> {
  const url = args.values.get("queue");
  if (url === undefined) return null;
  for (const other of ["effort", "threads", "choose", "choices", "cupboard"])
    if (args.values.has(other) || args.switches.has(other))
      throw new UsageError((say) => say.notWith("queue", other));
  const { connectQueue } = await import("../queue/connect.ts");
  const { islandPool } = await import("../queue/islandPool.ts");
  const store = await connectQueue(url, programVersion());
  const materialIds = read.lays.map(({ problem }) => problem.materialId);
  return { pool: islandPool(store, { text, materialIds, language }), end: store.close };
}
