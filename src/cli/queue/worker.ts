import { threadsHere } from "../../worker/nodePool.ts";
import { crewOf } from "../batch/crew.ts";
import { type Command, EXIT, type ExitCode, type Io, type ParsedArgs, programVersion } from "../command.ts";
import { numberOption, requiredOption } from "../options/optionValues.ts";
import { searchSettings } from "../options/searchSettings.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";
import { connectQueue } from "./connect.ts";
import { announce, strangers } from "./presence.ts";
import { tellConnection } from "./runOnQueue.ts";
import { takeLays } from "./takeLays.ts";

/** `worker`: a machine that helps with the batches of others. */
export const workerCommand: Command = {
  name: "worker",
  synopsis: "--queue URL [options]",
  about:
    "Takes lays of batches that run with the same --queue, searches them and sends the plans back; the batch checks every plan and draws it. Writes no file, opens no port. Runs until Ctrl-C, which finishes the lays under way. A worker that is killed loses nothing: its lay goes to another.\nOnly lays of the same version are taken. Keep the store to yourself: a Redis with a password, encrypted (rediss://) where the line leaves the house.",
  options: [
    { name: "queue", value: "URL", help: "the Redis store: redis://host:6379, or rediss:// for an encrypted line" },
    {
      name: "threads",
      value: "N",
      help: "lays searched at a time (default: the machine's cores, all but one where there are more than two)",
    },
    {
      name: "silent",
      value: "N",
      help: "a lay goes to another worker when this one has been silent for N seconds (default 30)",
    },
  ],
  operands: [0, 0],
  run: runWorker,
};

async function runWorker(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const url = requiredOption(args, "queue");
  const { threads } = searchSettings(args, 0, threadsHere());
  const silentMs = 1000 * numberOption(args, "silent", { least: 1, most: 3600 }, 30);
  const texts = QUEUE_TEXTS[io.language];
  const store = await connectQueue(url, programVersion());
  const crew = await crewOf(threads);
  let lays = 0;
  const taking = takeLays(store, {
    threads: crew.threads,
    silentMs,
    search: (task) => crew.run({ kind: "search", task }),
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
