import { threadsHere } from "../../worker/nodePool.ts";
import { crewOf } from "../batch/crew.ts";
import { PlanFolder } from "../batch/planFolder.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, programVersion } from "../command.ts";
import { numberOption, requiredOption } from "../options/optionValues.ts";
import { searchSettings } from "../options/searchSettings.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";
import { connectQueue } from "./connect.ts";
import { announce, strangers } from "./presence.ts";
import { tellConnection } from "./runOnQueue.ts";
import { takeLays } from "./takeLays.ts";

/** Takes lays until it is asked to end. */
export async function runWorker(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const url = requiredOption(args, "queue");
  const { threads } = searchSettings(args, 0, threadsHere());
  const silentMs = 1000 * numberOption(args, "silent", { least: 1, most: 3600 }, 30);
  const plans = args.values.get("plans") ?? null;
  if (plans !== null) new PlanFolder(plans, programVersion()).prepare();
  const texts = QUEUE_TEXTS[io.language];
  const store = await connectQueue(url, programVersion());
  const crew = await crewOf(threads);
  let lays = 0;
  const taking = takeLays(store, {
    threads: crew.threads,
    silentMs,
    byFolder: plans !== null,
    search: (task) => crew.run({ kind: "search", task, plans: task.island === undefined ? plans : null }),
    told: (folder, reason) => {
      if (reason === null) lays++;
      io.err(`${reason === null ? texts.laid(folder) : texts.failed(folder, reason)}\n`);
    },
  });
  const forget = announce(store, "workers", taking.name, crew.threads);
  const silence = tellConnection(store, io);
  io.err(`${texts.ready(store.place, crew.threads)}\n`);
  const others = await strangers(store, "batches");
  if (others.length > 0) io.err(`${texts.otherBatches(others.join(", "), store.version)}\n`);
  await askedToEnd();
  io.err(`${texts.ending}\n`);
  process.once("SIGINT", () => process.exit(130));
  await taking.close();
  silence();
  forget();
  await crew.close();
  store.close();
  io.out(`${texts.ended(lays)}\n`);
  return EXIT.done;
}

function askedToEnd(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
  });
}
