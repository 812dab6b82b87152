// A worker thread of a batch that runs the sources as they are.
import { register } from "tsx/esm/api";

register();
const entry = await import("../../src/cli/batch/batchWorkerEntry.ts");
export default entry.default;
