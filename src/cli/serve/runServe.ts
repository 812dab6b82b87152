import { isIP } from "node:net";
import { threadsHere } from "../../worker/nodePool.ts";
import { crewOf } from "../batch/crew.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, programVersion } from "../command.ts";
import { readInput } from "../inOut/readInput.ts";
import { InputProblem } from "../inOut/toldProblem.ts";
import { numberOption } from "../options/optionValues.ts";
import { searchSettings } from "../options/searchSettings.ts";
import { SERVE_TEXTS, type ServeTexts } from "../words/serveTexts.ts";
import type { DoorWish } from "./door.ts";
import { Jobs } from "./jobs.ts";

const LEAST_TOKEN = 16;
const MOST_KEPT = 200;

/** Answers until it is asked to end. */
export async function runServe(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const texts = SERVE_TEXTS[io.language];
  const host = args.values.get("host") ?? "127.0.0.1";
  const tokenFile = args.values.get("token-file");
  const token = tokenFile === undefined ? null : readInput(tokenFile).trim();
  if (token !== null && token.length < LEAST_TOKEN)
    throw problem("token", tokenFile!, (say) => say.shortToken(LEAST_TOKEN));
  if (token === null && !isLoopback(host)) throw problem("token", "--host", (say) => say.needsToken(host));
  const { threads } = searchSettings(args, 0, threadsHere());
  const wish: DoorWish = {
    host,
    port: numberOption(args, "port", { least: 0, most: 65_535, whole: true }, 4180),
    token,
    version: programVersion(),
    mostEffort: numberOption(args, "most-effort", { least: 0.001, most: 1e6 }, 20),
    mostBytes: 1_000_000 * numberOption(args, "most-megabytes", { least: 0.001, most: 64 }, 8),
    language: io.language,
  };
  const limits = {
    mostMs: 1000 * numberOption(args, "most-seconds", { least: 0.01, most: 86_400 }, 300),
    mostWaiting: numberOption(args, "most-waiting", { least: 0, most: 1e6, whole: true }, 100),
    mostKept: MOST_KEPT,
  };
  const { openDoor } = await doorHere();
  // On threads of their own: the service answers while they work, and a job can be ended.
  const jobs = new Jobs(await crewOf(threads, undefined, 1), limits, (error) => io.err(`${error}\n`));
  try {
    const door = await openDoor(wish, jobs).catch((error: NodeJS.ErrnoException) => {
      throw problem("port", `${host}:${wish.port}`, (say) =>
        say.notOpen(`${host}:${wish.port}`, error.code ?? error.message),
      );
    });
    const name = isIP(host) === 6 ? `[${host}]` : host;
    io.out(`${texts.open(`http://${name}:${door.port}`)}\n`);
    await new Promise<void>((resolve) => {
      for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
    });
    await door.close();
  } finally {
    await jobs.close();
  }
  return EXIT.done;
}

async function doorHere(): Promise<typeof import("./door.ts")> {
  try {
    return await import("./door.ts");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ERR_MODULE_NOT_FOUND") throw error;
    throw problem("serve-not-installed", "", (say) => say.notInstalled);
  }
}

function isLoopback(host: string): boolean {
  return host === "localhost" || host === "::1" || (isIP(host) === 4 && host.startsWith("127."));
}

function problem(code: string, path: string, say: (texts: ServeTexts) => string): InputProblem {
  return new InputProblem((language) => [{ code, path, message: say(SERVE_TEXTS[language]) }]);
}
