// `npm run bench:skins -- [evaluations] [jobs]`: 40 panels offered to a skin with five flaws and to a roll of equal
// area, equal effort, one thread; the share of each that is used and the difference, every plan checked. Skin and roll
// are filled by choice, which helps straight edges more; so all 40 on an open roll of that width are told as well.
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { checkPlan } from "../../src/core/lay/checkPlan.ts";
import { outlineEngine } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { RegionJob, RegionPlan, Stock } from "../../src/core/lay/types.ts";
import { skinJobs } from "./skinJobs.ts";

const evaluations = Number(process.argv[2] ?? 20e6);
const jobs = Number(process.argv[3] ?? 3);

function laid(job: RegionJob): RegionPlan {
  const search = outlineEngine.search(job, { evaluations }, 1);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** Area of the pieces laid, once the checker has passed the plan. */
function laidArea(job: RegionJob, plan: RegionPlan): number {
  const { width, length, outline, flaws } = job.region;
  const stock: Stock =
    outline === null
      ? { kind: "roll", id: "stock", width, length, flaws }
      : { kind: "remnant", id: "stock", outline, flaws };
  const { pieces, gap, margin } = job;
  const unplaced = plan.left.flatMap((count, i) =>
    count > 0 ? [{ pieceId: pieces[i]!.id, count, reason: "stock-used-up" as const }] : [],
  );
  const faults = checkPlan(
    { materialId: "leather", pieces, stocks: [stock], gap, margin, pinned: [] },
    {
      materialId: "leather",
      placements: plan.placements.map((placement) => ({ ...placement, stockId: "stock" })),
      unplaced,
      uses: [{ stockId: "stock", usedLength: plan.length, bound: null }],
      evaluations,
      seed: 1,
    },
  );
  if (faults.length > 0) throw new Error(`wrong plan: ${JSON.stringify(faults[0])}`);
  return pieces.reduce((sum, piece, i) => sum + (piece.count - plan.left[i]!) * polygonArea(piece.outline), 0);
}

const anyTurn = (job: RegionJob): RegionJob => ({
  ...job,
  pieces: job.pieces.map((piece) => ({ ...piece, freeTurn: true })),
});

const turns = [
  { name: "quarter turns", of: (job: RegionJob): RegionJob => job },
  { name: "any turn", of: anyTurn },
];

for (const { name, of } of turns) {
  let skins = 0;
  let rolls = 0;
  let open = 0;
  for (let seed = 1; seed <= jobs; seed++) {
    const { skin, roll, area } = skinJobs(seed);
    const [onSkin, onRoll] = [of(skin), of(roll)].map((job) => (100 * laidArea(job, laid(job))) / area) as [
      number,
      number,
    ];
    const endless: RegionJob = { ...of(roll), region: { ...roll.region, length: null }, goal: "shortest" };
    const plan = laid(endless);
    const onOpen = (100 * laidArea(endless, plan)) / (roll.region.width * plan.length);
    skins += onSkin / jobs;
    rolls += onRoll / jobs;
    open += onOpen / jobs;
    console.log(
      `${name}, job ${seed}  skin ${onSkin.toFixed(2)} %  roll ${onRoll.toFixed(2)} %  ${(onSkin - onRoll).toFixed(2)} points  all on an open roll ${onOpen.toFixed(2)} %`,
    );
  }
  console.log(
    `${name}: mean skin ${skins.toFixed(2)} %  roll ${rolls.toFixed(2)} %  ${(skins - rolls).toFixed(2)} points  all on an open roll ${open.toFixed(2)} %  ${(skins - open).toFixed(2)} points, ${jobs} jobs, ${evaluations} evaluations each`,
  );
}
