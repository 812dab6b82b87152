/// <reference lib="webworker" />
// Works out pages and files away from the page's own thread, and carries the export code with it.
import type { Answered, Asked } from "../asking/askWorker.ts";
import { answer } from "./answer.ts";
import type { Ask } from "./protocol.ts";

const worker = globalThis as unknown as DedicatedWorkerGlobalScope;

worker.onmessage = async (event: MessageEvent<Asked<Ask>>) => {
  const { id, ask } = event.data;
  let answered: Answered;
  try {
    answered = { id, ok: true, value: await answer(ask) };
  } catch (error) {
    answered = { id, ok: false, reason: error instanceof Error ? `${error.stack}` : String(error) };
  }
  worker.postMessage(answered);
};
