import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cutListOf } from "../project/cutList.ts";
import { readProject } from "../project/file/readProject.ts";
import { writeProject } from "../project/file/writeProject.ts";
import type { Project } from "../project/project.ts";
import { lengthNow } from "../project/sizedPanels.ts";
import { PANEL_WORDS } from "../words/words.ts";
import { addBag } from "./addBag.ts";
import { STARTERS, starterBag } from "./starters.ts";

const words = PANEL_WORDS.en;

function demo(): Project {
  const read = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  return read.value;
}

const cutOf = (project: Project) => {
  const list = cutListOf(project);
  if (!list.ok) throw new Error(JSON.stringify(list.problems));
  return list.value.pieces;
};

test.each(STARTERS)("the parts of a %s come besides those of a project, in one piece with the file", (starter) => {
  const before = demo();
  const after = addBag(before, starterBag(starter, false), words, words.starters[starter]);
  // What was there is the very same, pins too.
  expect(after.straps.slice(0, before.straps.length)).toEqual(before.straps);
  expect(after.panels.slice(0, before.panels.length)).toEqual(before.panels);
  expect(after.pins).toEqual(before.pins);
  const cut = new Map(cutOf(after).map((piece) => [piece.id, piece.outline]));
  for (const piece of cutOf(before)) expect(cut.get(piece.id)).toEqual(piece.outline);
  const parts = [...after.straps, ...after.panels];
  expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
  expect(new Set(parts.map(({ name }) => name)).size).toBe(parts.length);
  expect(parts.length).toBeGreaterThan(before.straps.length + before.panels.length + 3);
  const again = readProject(writeProject(after));
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  expect(again.value.panels.length).toBe(after.panels.length);
});

test("two bags of one kind follow measures of their own, and so do their seams", () => {
  const wish = starterBag("tote", false);
  const one = addBag({ ...demo(), straps: [], panels: [], pins: [], seams: [], measures: [] }, wish, words, "Tote");
  const two = addBag(one, { ...wish, width: 300 }, words, "Tote");
  const three = addBag(two, { ...wish, width: 200 }, words, "Tote");
  expect(three.measures!.filter(({ id }) => /^width/u.test(id)).map(({ length }) => length)).toEqual([
    380, 300, 200,
  ]);
  expect(new Set(three.measures!.map(({ name }) => name)).size).toBe(three.measures!.length);
  expect(three.seams!.length).toBe(3 * one.seams!.length);
  const ofBag = (project: Project, from: number) => cutOf(project).length - from;
  expect(ofBag(two, cutOf(one).length)).toBe(cutOf(one).length);
  // The second's front is 80 mm narrower than the first's: it does not follow the first's width.
  const front = (project: Project, nth: number) => {
    const like = project.panels.filter(({ id }) => /^(front|body)(-\d+)?$/u.test(id))[nth]!;
    return (
      lengthNow(project, [{ of: like.id, measure: "along", times: 1 }])! +
      lengthNow(project, [{ of: like.id, measure: "across", times: 1 }])!
    );
  };
  expect(front(three, 0) - front(three, 1)).toBeCloseTo(80, 9);
  expect(front(three, 1) - front(three, 2)).toBeCloseTo(100, 9);
});
