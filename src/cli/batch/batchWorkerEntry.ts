// What a worker thread of a batch runs: one lay after the other, each with the folder to write it to.
import { doLayTask, type LaidTask, type LayTask } from "./layTask.ts";

export default ({ task, out }: { readonly task: LayTask; readonly out: string }): Promise<LaidTask> =>
  doLayTask(task, out);
