import { benchCommand } from "./bench.ts";
import { checkCommand } from "./check.ts";
import type { Command } from "./command.ts";
import { layCommand } from "./lay.ts";
import { strapCommand } from "./strap.ts";
import { yieldCommand } from "./yield.ts";

/** Every command, in the order of the help page. */
export const COMMANDS: readonly Command[] = [layCommand, yieldCommand, strapCommand, checkCommand, benchCommand];
