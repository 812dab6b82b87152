/** Whether new cases are drawn in each run (`npm run test:long`), not the same ones. */
export const isLong = process.env["LONG_TESTS"] === "1";

/** Drawn once a run, and printed, so that what it finds can be found again: `LONG_SEED=… npm run test:long`. */
const longSeed = Number(process.env["LONG_SEED"] ?? Math.floor(Math.random() * 2 ** 31));
if (isLong) console.log(`LONG_SEED=${longSeed}`);

/** The seed of a random test: always the same, but for the long suite, which looks for new faults. */
export const seedOf = (usual: number): number => (isLong ? (longSeed + usual) % 2 ** 31 : usual);
