// Started by the test of `watchRun`: cases of which one throws, one has no end and one ends the process.
import type { Kind } from "./kind.ts";
import { runRange } from "./runRange.ts";

const odd: Kind = {
  name: "odd",
  about: "",
  limitMs: 1000,
  run: (draw) => {
    const drawn = draw.below(1000);
    if (drawn === Number(process.argv[3])) throw new Error(`drew ${drawn}`);
    while (drawn === Number(process.argv[4]));
    if (drawn === Number(process.argv[5])) process.abort();
    return drawn % 2 === 0 ? "even" : "odd";
  },
};
await runRange(odd, process.argv[2]!);
process.exit(0);
