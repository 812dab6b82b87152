// Random tests draw the same cases in every run, so that a run says something about the change and not about luck.
// The long suite (`npm run test:long`) draws new ones each time: that is where new faults are looked for.
import fc from "fast-check";
import { seedOf } from "./seeded.ts";

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: seedOf(20_077) });
