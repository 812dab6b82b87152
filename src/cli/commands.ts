import type { ListedCommand } from "./command.ts";

/** Every command, in the order of the help page; what one is made of is read when it is asked for. */
export const COMMANDS: readonly ListedCommand[] = [
  {
    name: "bag",
    summary: "a bag from its outside measures: a project of panels, lining, pockets and straps to start from",
    load: async () => (await import("./bag/bag.ts")).bagCommand,
  },
  {
    name: "lay",
    summary: "lay out a project: cut list, plans, check, and every file for the cutting table",
    load: async () => (await import("./lay/lay.ts")).layCommand,
  },
  {
    name: "batch",
    summary: "lay many orders: one template and a table of what each order has of its own, or a folder of projects",
    load: async () => (await import("./batch/batch.ts")).batchCommand,
  },
  {
    name: "worker",
    summary: "help with the batches of others: take lays out of a queue, search them, send the plans back",
    load: async () => (await import("./queue/worker.ts")).workerCommand,
  },
  {
    name: "serve",
    summary: "lay projects for other programs, over HTTP on this machine",
    load: async () => (await import("./serve/serve.ts")).serveCommand,
  },
  {
    name: "yield",
    summary: "how many straps a length of cloth gives, or the length a number of straps needs",
    load: async () => (await import("./yield/yield.ts")).yieldCommand,
  },
  {
    name: "strap",
    summary: "one strap: true cut size from the fold, pieces, consumables, order of work, pictures",
    load: async () => (await import("./strap/strap.ts")).strapCommand,
  },
  {
    name: "binding",
    summary: "strips for binding or piping, on the bias or straight, and the cloth they take",
    load: async () => (await import("./binding/binding.ts")).bindingCommand,
  },
  {
    name: "buy",
    summary: "what to buy: width, length and money for each way to make the straps, the best with its reason",
    load: async () => (await import("./buy/buy.ts")).buyCommand,
  },
  {
    name: "shopping",
    summary:
      "a shopping list for one project or several: cloth, hardware, thread and tape, the same things added up",
    load: async () => (await import("./shopping/shopping.ts")).shoppingCommand,
  },
  {
    name: "cupboard",
    summary: "leftovers: kept after a plan, found again, offered to the next project; labels to print",
    load: async () => (await import("./cupboard/cupboard.ts")).cupboardCommand,
  },
  {
    name: "pattern",
    summary:
      "read a pattern of your own (SVG, DXF, PDF, photograph): its lines, their sizes, what is wrong with them",
    load: async () => (await import("./pattern/pattern.ts")).patternCommand,
  },
  {
    name: "check",
    summary: "check a project file, or verify a plan on its own",
    load: async () => (await import("./check/check.ts")).checkCommand,
  },
  {
    name: "bench",
    summary: "lay out open data sets, every placement verified",
    load: async () => (await import("./bench/bench.ts")).benchCommand,
  },
];
