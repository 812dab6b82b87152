import { expect, test } from "vitest";
import { readProject } from "../project/file/readProject.ts";
import { jobOf, type ProjectJob } from "./projectJob.ts";

const panel = (id: string, along: number) => ({
  ...{ id, name: id, material: "c", count: 1, seamAllowance: 10 },
  shape: { kind: "rectangle", along, across: 100 },
});
const edge = (id: string, at: string | number) => ({ panel: id, edge: at });

function jobWith(more: object): ProjectJob {
  const cloth = { id: "c", kind: "woven", thickness: 0.5, grain: "lengthwise", repeat: { along: 60 } };
  const stock = [{ kind: "roll", id: "r", width: 900 }];
  const panels = [panel("front", 200), panel("gusset", 200)];
  const read = readProject(JSON.stringify({ laywright: 1, name: "p", panels, materials: [{ ...cloth, stock }] }));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  // A file with such a seam is not opened; on the page a panel may lose an edge that a seam names.
  return jobOf({ ...read.value, ...more });
}

test.each([
  [
    "seams",
    [
      { first: [edge("front", "left")], second: [edge("gusset", "nowhere")] },
      { first: [edge("front", "right")], second: [edge("gusset", "left")] },
    ],
  ],
  [
    "matches",
    [
      { first: edge("front", "nowhere"), second: edge("gusset", "left") },
      { first: edge("front", "right"), second: edge("gusset", "left") },
    ],
  ],
])("a wrong name in %s is told, and every piece is there all the same", (key, list) => {
  const job = jobWith({ [key]: list });
  expect(job.troubles).toHaveLength(1);
  expect(job.troubles[0]!.path).toMatch(new RegExp(`^${key}\\[0\\]`, "u"));
  expect(job.pieces.map(({ id }) => id)).toEqual(["front", "gusset"]);
  expect(job.lays).toHaveLength(1);
  // What is right among the rest is kept: its marks are on the pieces.
  for (const piece of job.pieces) expect(piece.lines.some(({ text }) => text !== undefined)).toBe(true);
});
