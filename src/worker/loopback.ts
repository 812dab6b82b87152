import type { FromWorker, ToWorker, WorkerLine } from "./protocol.ts";
import { serveSearches } from "./serveSearches.ts";

/**
 * A worker that lives in the host's own thread and takes its turns between the host's other tasks: for one thread,
 * or where there are no workers. `later` must let timers and events come between two turns.
 */
export function loopback(later: (next: () => void) => void): WorkerLine {
  let toWorker: (message: ToWorker) => void = () => {};
  let toHost: (message: FromWorker) => void = () => {};
  serveSearches(
    {
      send: (message) => toHost(message),
      listen: (hear) => {
        toWorker = hear;
      },
    },
    later,
  );
  return {
    send: (message) => {
      // A stop must not wait: the line may be closed before its turn comes.
      if (message.kind === "stop") toWorker(message);
      else later(() => toWorker(message));
    },
    listen: (hear) => {
      toHost = hear;
    },
    close: () => {
      toWorker = () => {};
    },
  };
}
