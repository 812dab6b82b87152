import type { Command } from "../command.ts";

/** `worker`: a machine that helps with the batches of others. */
export const workerCommand: Command = {
  name: "worker",
  synopsis: "--queue URL [options]",
  about:
    "Takes lays of batches that run with the same --queue, searches them and sends the plans back; the batch checks every plan and draws it. Writes no file but plans (--plans), opens no port. Runs until Ctrl-C, which finishes the lays under way. A worker that is killed loses nothing: its lay goes to another.\nOnly lays of the same version are taken. Keep the store to yourself: a Redis with a password, encrypted (rediss://) where the line leaves the house.",
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
    {
      name: "plans",
      value: "DIR",
      help: "keep plans in this folder, shared with the batches: they go through it, and none is searched twice",
    },
  ],
  operands: [0, 0],
  run: async (args, io) => {
    const { runWorker } = await import("./runWorker.ts");
    return runWorker(args, io);
  },
};
