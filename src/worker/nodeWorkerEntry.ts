// What a Node worker thread runs.
import { parentPort } from "node:worker_threads";
import { serveSearches } from "./serveSearches.ts";

const port = parentPort!;
serveSearches(
  { send: (message) => port.postMessage(message), listen: (hear) => port.on("message", hear) },
  setImmediate,
);
