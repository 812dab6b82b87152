import { type RectangleInstance, strapJob } from "./rectangleJobs.ts";

/** Sixty strap jobs, both straight grains. */
const jobs: readonly RectangleInstance[] = Array.from({ length: 60 }, (_, i) => strapJob(i + 1));
export default jobs;
