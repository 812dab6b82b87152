import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { layDrawing } from "../../../src/core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../../src/core/drawing/lay/pieceArt.ts";
import { paperPart } from "../../../src/core/drawing/list/page.ts";
import { type Pose, turnCosSin } from "../../../src/core/geometry/pose.ts";
import { jobOf } from "../../../src/core/job/projectJob.ts";
import { checkPlan } from "../../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../../src/core/lay/engines/chooseEngines.ts";
import { arrange } from "../../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../../src/core/lay/search/breath.ts";
import { readProject } from "../../../src/core/project/file/readProject.ts";
import { pagesPdf } from "../../../src/export/pdf/pagesPdf.ts";
import { type PagePicture, PDF_DRAWERS } from "../../tools/pdfReaders.ts";
import { freshFolder } from "../../tools/programs.ts";

// Seen by programs that we did not write: the lay is drawn as PDF, rendered by poppler and PDFium, and the stripes are
// followed along the seam in the pixels of both panels, as if they were sewn side by side.

const DPI = 127;
const TOLERANCE = 0.5;
const REPEAT = 47;
const SEAM = 300;
const font = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const fonts = { regular: font("DejaVuSansCondensed"), bold: font("DejaVuSansCondensed-Bold"), fallbacks: [] };

const panel = (id: string, shape: object) => ({ id, name: id, material: "c", count: 2, seamAllowance: 10, shape });
const side = panel("side", { kind: "rectangle", along: SEAM, across: 90 });
const front = panel("front", {
  kind: "outline",
  points: [
    [0, 0],
    [SEAM, 0],
    [SEAM + 30, 200],
    [-20, 180],
  ],
});
const file = (matches: readonly object[], symmetric: boolean) => ({
  ...{ laywright: 1, name: "Stripes", gap: 2, margin: 4, panels: [side, front], matches },
  materials: [
    {
      ...{ id: "c", kind: "woven", thickness: 0.6, grain: "lengthwise" },
      repeat: { along: REPEAT, firstAlong: 33, symmetric, tolerance: TOLERANCE },
      stock: [{ kind: "roll", id: "r", width: 520, selvedge: 8 }],
    },
  ],
});
const MATCH = { first: { panel: "front", edge: 0 }, second: { panel: "side", edge: 2 } };

interface Rendered {
  readonly picture: PagePicture;
  /** Poses of the copies of each panel, and the height of the page, mm. */
  readonly poses: Readonly<Record<"side" | "front", readonly Pose[]>>;
  readonly height: number;
}

async function rendered(project: object, drawer: (typeof PDF_DRAWERS)[number]): Promise<Rendered> {
  const read = readProject(JSON.stringify(project));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const job = jobOf(read.value);
  const { problem } = job.lays[0]!;
  const plan = inOneGo(arrange(problem, (one) => chooseEngines(one, "free"), { evaluations: 60_000 }, 1));
  expect(checkPlan(problem, plan)).toEqual([]);
  const pattern = problem.pattern ?? {
    along: REPEAT,
    across: null,
    firstAlong: 13,
    firstAcross: 0,
    halfDrop: false,
    symmetric: true,
    tolerance: 1,
  };
  const { drawing } = layDrawing(
    problem.stocks[0]!,
    plan,
    pieceArt(job.pieces, "mm", "en"),
    "both",
    "en",
    [],
    pattern,
  );
  const items = drawing.items.filter(({ kind }) => kind === "area");
  const { maxX: width, maxY: height } = drawing.box;
  const page = { name: "lay", width, height, parts: [paperPart(items)] };
  const { bytes } = await pagesPdf([page], fonts, { title: "lay" });
  const path = join(freshFolder(), "lay.pdf");
  writeFileSync(path, bytes);
  const posesOf = (id: string) => plan.placements.filter(({ pieceId }) => pieceId === id);
  return {
    picture: await drawer.draw(path, 1, DPI),
    poses: { side: posesOf("side"), front: posesOf("front") },
    height,
  };
}

/** Where stripes begin and end along the seam of one copy, mm from the seam's start on the front; 1 mm inside it. */
function stripeEdges(
  { picture, height }: Rendered,
  pose: Pose,
  at: (mm: number) => readonly [number, number],
): number[] {
  const [c, s] = turnCosSin(pose.turnDeg);
  const isDark = (mm: number): boolean => {
    const [px, py] = at(mm);
    const x = Math.round((c * px - s * py + pose.x) * picture.perMm.x - 0.5);
    const y = Math.round((height - (s * px + c * py + pose.y)) * picture.perMm.y - 0.5);
    return picture.data[y * picture.width + x]! < 235;
  };
  const edges: number[] = [];
  for (let mm = 2; mm < SEAM - 2; mm += 0.1) if (isDark(mm) !== isDark(mm - 0.1)) edges.push(mm);
  return edges;
}

/** Largest difference between the stripes on any two copies over the seam, mm; infinite where one has none. */
function mostApart(lay: Rendered): number {
  // In the cut piece's frame the stitch line is 10 mm in from the box; the front leans out 20 mm to the left below.
  const corner = frontCorner();
  const onFront = (mm: number): [number, number] => [corner[0] + mm, corner[1] + 1];
  const onSide = (mm: number): [number, number] => [10 + mm, 100 - 1];
  const all = [
    ...lay.poses.front.map((pose) => stripeEdges(lay, pose, onFront)),
    ...lay.poses.side.map((pose) => stripeEdges(lay, pose, onSide)),
  ];
  expect(all).toHaveLength(4);
  for (const edges of all) expect(edges.length).toBeGreaterThan(8);
  const apart = all.flatMap((edges) =>
    all.map((others) =>
      edges.length === others.length ? Math.max(...edges.map((edge, i) => Math.abs(edge - others[i]!))) : Infinity,
    ),
  );
  return Math.max(...apart);
}

/** The seam's start on the front as it is cut: found from its match place, which is the seam's middle. */
function frontCorner(): readonly [number, number] {
  const read = readProject(JSON.stringify(file([MATCH], true)));
  if (!read.ok) throw new Error("unreadable");
  const place = jobOf(read.value).pieces.find(({ id }) => id === "front")!.matchPlaces![0]!;
  return [place.x - SEAM / 2, place.y];
}

test.each(PDF_DRAWERS)(
  "stripes run unbroken over the seam of every two panels, in the pixels of $name",
  async (drawer) => {
    const pixel = 25.4 / DPI;
    for (const symmetric of [true, false]) {
      const matched = await rendered(file([MATCH], symmetric), drawer);
      // On a rendered line each side of an edge may be off by half a pixel.
      expect(mostApart(matched)).toBeLessThanOrEqual(TOLERANCE + pixel + 0.1);
    }
    // The same panels laid without the match are broken at the seam: the look at pixels can tell.
    const free = await rendered(file([], true), drawer);
    expect(mostApart(free)).toBeGreaterThan(5 * TOLERANCE);
  },
);
