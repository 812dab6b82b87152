import { bagCommand } from "./bag/bag.ts";
import { benchCommand } from "./bench/bench.ts";
import { checkCommand } from "./check/check.ts";
import type { Command } from "./command.ts";
import { layCommand } from "./lay/lay.ts";
import { patternCommand } from "./pattern/pattern.ts";
import { strapCommand } from "./strap/strap.ts";
import { yieldCommand } from "./yield/yield.ts";

/** Every command, in the order of the help page. */
export const COMMANDS: readonly Command[] = [
  bagCommand,
  layCommand,
  yieldCommand,
  strapCommand,
  patternCommand,
  checkCommand,
  benchCommand,
];
