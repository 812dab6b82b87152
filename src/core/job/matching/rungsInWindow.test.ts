import { expect, test } from "vitest";
import { chooseEngines } from "../../lay/engines/chooseEngines.ts";
import { arrange } from "../../lay/search/arrange/arrange.ts";
import { readJob } from "../projectJob.ts";

// The strap may first begin where its stripe lies right, half a repeat from the cut end: the roll cannot end before that
// and its length, and no search may push it over the cut end for the sake of a shorter roll.
test("a matched strap nearly as long as all that is used stays on the roll, and everything is laid", () => {
  const panel = (id: string, shape: object, count: number, mirrored: number, seamAllowance: number) => {
    return { id, name: id, material: "cloth", shape, count, mirrored, grain: "either", seamAllowance };
  };
  const flaw = (x: number, y: number, along: number, across: number) => ({
    at: [x, y],
    shape: { kind: "rectangle", along, across },
  });
  const project = {
    laywright: 1,
    name: "Straps on the stripe",
    unit: "mm",
    bags: 1,
    gap: 0,
    margin: 3,
    materials: [
      {
        id: "cloth",
        name: "Printed leather",
        kind: "leather",
        thickness: 1.4,
        repeat: { along: 80, across: 40, firstAlong: 19, firstAcross: 1, symmetric: true },
        tilt: 3,
        stock: [
          {
            kind: "roll",
            id: "roll",
            width: 513,
            selvedge: 10,
            flaws: [
              flaw(606, 211, 108, 41),
              flaw(1378, 483, 75, 31),
              flaw(2089, 292, 31, 51),
              flaw(441, 351, 98, 47),
              flaw(1542, 39, 17, 72),
              flaw(2474, 922, 12, 76),
            ],
          },
        ],
      },
    ],
    panels: [
      panel("front", { kind: "rounded", along: 267, across: 119, radius: 29 }, 2, 0, 2),
      panel("flap", { kind: "rectangle", along: 257, across: 55 }, 1, 0, 1),
      panel("side", { kind: "rectangle", along: 51, across: 222 }, 1, 1, 2),
    ],
    straps: [
      {
        id: "strap",
        name: "Strap",
        construction: "bonded",
        width: 28,
        length: 1099,
        count: 2,
        materials: { outer: "cloth" },
      },
    ],
    centred: [
      { part: "side", on: "line" },
      { part: "strap", on: "between" },
    ],
  };
  const read = readJob(JSON.stringify(project), "en");
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const search = arrange(
      read.value.lays[0]!.problem,
      (job) => chooseEngines(job, "free"),
      { evaluations: 20_000 },
      seed,
    );
    let turn = search.next();
    while (!turn.done) turn = search.next();
    expect(turn.value.unplaced, `seed ${seed}`).toEqual([]);
  }
});
