import { COMMANDS } from "../../src/cli/commands.ts";
import { run } from "../../src/cli/run.ts";

/** What a run of the program said, and its exit code. */
export interface CliRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the program in this process. */
export async function runCli(...words: readonly string[]): Promise<CliRun> {
  let out = "";
  let err = "";
  const code = await run(words, COMMANDS, {
    language: "en",
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    progress: () => {},
  });
  return { code, out, err };
}
