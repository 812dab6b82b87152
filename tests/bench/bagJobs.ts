import { bagJob, type RectangleInstance } from "./rectangleJobs.ts";

/** Twelve bag jobs with quarter turns, and the same twelve without. */
const jobs: readonly RectangleInstance[] = [true, false].flatMap((turns) =>
  Array.from({ length: 12 }, (_, i) => bagJob(i + 1, turns)),
);
export default jobs;
