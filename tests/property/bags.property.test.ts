import fc from "fast-check";
import { expect, test } from "vitest";
import {
  BAG_BODIES,
  type BagOpening,
  type BagPockets,
  type BagStraps,
  type BagWish,
  usualBag,
} from "../../src/core/bags/bagWish.ts";
import { startBag } from "../../src/core/bags/startBag.ts";
import { seamLengths } from "../../src/core/panels/seams.ts";
import { sizePanels } from "../../src/core/panels/sizePanels.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { writeProject } from "../../src/core/project/file/writeProject.ts";
import type { Project } from "../../src/core/project/project.ts";
import { PANEL_WORDS } from "../../src/core/words/words.ts";

const empty = readProject(
  JSON.stringify({ laywright: 1, name: "Bag", materials: [{ id: "m", kind: "woven", thickness: 0.3 }] }),
);
if (!empty.ok) throw new Error("the empty project must be readable");
const start: Project = empty.value;

const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
const wish: fc.Arbitrary<BagWish> = fc.record({
  body: fc.constantFrom(...BAG_BODIES),
  width: mm(80, 1500),
  height: mm(80, 1500),
  depth: mm(20, 800),
  allowance: mm(3, 40),
  opening: fc.constantFrom<BagOpening>("open", "zip", "flap"),
  lining: fc.option(mm(0, 8), { nil: null }),
  pockets: fc.constantFrom<BagPockets>("none", "slip", "zip", "both"),
  interfacing: fc.constantFrom("none", "full", "inset"),
  straps: fc.constantFrom<BagStraps>("none", "handles", "shoulder", "wrist"),
});

/** Every pair of edges that meets. */
function seamsOf(project: Project) {
  const sized = sizePanels(project.panels, project.measures);
  if (!sized.ok) throw new Error(JSON.stringify(sized.problems));
  const seams = seamLengths(sized.value, project.seams ?? []);
  if (!seams.ok) throw new Error(JSON.stringify(seams.problems));
  return seams.value;
}

test("every pair of edges that meets has equal stitch length, whatever the measures", () => {
  fc.assert(
    fc.property(wish, (given) => {
      const project = startBag(start, given, PANEL_WORDS.en);
      const seams = seamsOf(project);
      expect(seams.length).toBeGreaterThanOrEqual(2);
      for (const { over, seam } of seams) expect(Math.abs(over), JSON.stringify(seam)).toBeLessThan(1e-6);
    }),
    { numRuns: 300, endOnFailure: true },
  );
});

test("a changed measure changes all that follows: edges still meet, and nothing keeps its old size", () => {
  fc.assert(
    fc.property(wish, mm(80, 1500), mm(80, 1500), mm(20, 800), (given, width, height, depth) => {
      const project = startBag(start, given, PANEL_WORDS.en);
      const lengths: Record<string, number> = { width, height, depth };
      const changed = {
        ...project,
        measures: project.measures!.map((one) => ({ ...one, length: lengths[one.id] ?? one.length })),
      };
      for (const { over } of seamsOf(changed)) expect(Math.abs(over)).toBeLessThan(1e-6);
      const corner = changed.measures.find(({ id }) => id === "corner");
      const again = startBag(start, { ...given, width, height, depth }, PANEL_WORDS.en);
      const same = { ...again, measures: again.measures!.map((one) => (one.id === "corner" ? corner! : one)) };
      expect(changed.panels).toEqual(same.panels);
      const a = cutListOf(changed);
      const b = cutListOf(same);
      expect(a).toEqual(b);
    }),
    { numRuns: 60, endOnFailure: true },
  );
});

test("a bag is written to a file and read back, and has a cut list", () => {
  fc.assert(
    fc.property(wish, fc.constantFrom("en", "de"), (given, language) => {
      const project = startBag(start, given, PANEL_WORDS[language]);
      expect(readProject(writeProject(project))).toEqual({ ok: true, value: project });
      const list = cutListOf(project, language);
      expect(list.ok || list.problems).toBe(true);
    }),
    { numRuns: 80, endOnFailure: true },
  );
});

test("the finished bag has the outside measures: a boxed front by hand", () => {
  const project = startBag(start, { ...usualBag("boxed", false), lining: null }, PANEL_WORDS.en);
  const list = cutListOf(project);
  if (!list.ok) throw new Error(JSON.stringify(list.problems));
  const front = list.value.pieces.find(({ id }) => id === "front")!;
  const xs = [...front.contour.vertices].filter((_, i) => i % 3 === 0);
  const ys = [...front.contour.vertices].filter((_, i) => i % 3 === 1);
  // Width 300, depth 100, height 250; 10 allowance, 25 hem at the top; laid with its height along the grain.
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(250 + 50 + 10 + 25, 9);
  expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(300 + 100 + 20, 9);
});
