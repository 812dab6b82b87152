// What a worker thread of a batch runs, one task after the other; what it finds on the way goes through the port.
import type { MessagePort } from "node:worker_threads";
import { doThreadTask, type ThreadTask } from "./threadTask.ts";

export default ({ task, port }: { readonly task: ThreadTask; readonly port?: MessagePort }): Promise<unknown> =>
  doThreadTask(task, port === undefined ? undefined : (news) => port.postMessage(news));
