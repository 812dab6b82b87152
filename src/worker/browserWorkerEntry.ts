// What a browser worker runs.
import { serveSearches } from "./serveSearches.ts";

// A message to oneself comes after those that wait, and without the delay of nested timers.
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

serveSearches(
  {
    send: (message) => self.postMessage(message),
    listen: (hear) => {
      self.onmessage = (event) => hear(event.data);
    },
  },
  (next) => {
    waiting.push(next);
    channel.port2.postMessage(null);
  },
);
