#!/usr/bin/env node
import { programVersion } from "./command.ts";
import { COMMANDS } from "./commands.ts";
import { terminalIo } from "./inOut/terminal.ts";
import { run } from "./run.ts";

// A reader that stops early (`laywright … | head`) is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : 1));

const words = process.argv.slice(2);
if (words[0] === "--version") {
  process.stdout.write(`${programVersion()}\n`);
} else {
  process.exitCode = await run(words, COMMANDS, terminalIo());
}
