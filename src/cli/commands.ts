import { benchCommand } from "./bench.ts";
import type { Command } from "./command.ts";
import { strapCommand } from "./strap.ts";
import { yieldCommand } from "./yield.ts";

/** Every command, in the order of the help page. */
export const COMMANDS: readonly Command[] = [yieldCommand, strapCommand, benchCommand];
