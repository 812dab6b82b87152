// A search thread that runs the sources as they are.
import { register } from "tsx/esm/api";

register();
await import("../../src/worker/nodeWorkerEntry.ts");
