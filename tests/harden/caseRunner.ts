// Started by `main.ts` in a process of its own: runs the cases of one kind from the place that is kept in a file.
import { KINDS } from "./kinds.ts";
import { runRange } from "./runRange.ts";

const [name, file] = process.argv.slice(2);
const load = KINDS[name ?? ""];
if (load === undefined || file === undefined) throw new Error(`no kind ${name}`);
await runRange(await load(), file);
// What a case left waiting must not keep the process.
process.exit(0);
