import type { Command } from "../command.ts";

/** `serve`: for programs that want projects laid. */
export const serveCommand: Command = {
  name: "serve",
  synopsis: "[options]",
  about:
    "Lays projects for other programs, over HTTP: a job is posted to /jobs, tells how it stands by itself and as events, and has its plan and files below it. What there is to ask for stands in /openapi.json.\nAnswers on this machine only, unless --host says otherwise; then every request needs the token, and whatever lies between has to encrypt the line. Runs until Ctrl-C. Jobs and their files live as long as it does.",
  options: [
    { name: "port", value: "N", help: "port to listen on (default 4180; 0: any that is free)" },
    { name: "host", value: "HOST", help: "address to listen on (default 127.0.0.1, this machine only)" },
    {
      name: "token-file",
      value: "FILE",
      help: "file with the token of at least 16 characters that every request has to bring, as Authorization: Bearer TOKEN",
    },
    {
      name: "threads",
      value: "N",
      help: "jobs worked on at a time (default: the machine's cores, all but one where there are more than two)",
    },
    { name: "most-megabytes", value: "N", help: "largest request (default 8)" },
    { name: "most-effort", value: "N", help: "most million evaluations that a job may ask for (default 20)" },
    { name: "most-seconds", value: "N", help: "a job that takes longer is ended (default 300)" },
    { name: "most-waiting", value: "N", help: "jobs that may wait; more are refused (default 100)" },
  ],
  operands: [0, 0],
  run: async (args, io) => {
    const { runServe } = await import("./runServe.ts");
    return runServe(args, io);
  },
};
