// Whatever is typed and pressed: a field understands it or refuses it with a reason, and what is kept reads back.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { inOtherWay, otherWays } from "../../src/core/job/otherWays.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import {
  edited,
  freshIdIn,
  plainMaterial,
  withMaterial,
  withoutMaterial,
  withoutPart,
  withPanel,
  withStrap,
} from "../../src/core/project/edits.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { writeProject } from "../../src/core/project/file/writeProject.ts";
import type { Project } from "../../src/core/project/project.ts";
import { CONSTRUCTION_IDS } from "../../src/core/straps/wish/strapWish.ts";
import { parseLength } from "../../src/core/units/parseLength.ts";
import { readCount, readMoney, readShare } from "../../src/core/units/parseNumber.ts";
import { type History, present, record, redo, startHistory, undo } from "../../src/web/state/history.ts";

const demo = (): Project => {
  const read = readProject(readFileSync(new URL("../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  return read.value;
};

/** Text as fingers make it: anything, and near misses of lengths. */
const typed = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc
    .array(fc.constantFrom(..."0123456789.,/-½¼ mcin\"'ft+e%€".split(""), "mm", " in", "1 1/2", "m "), {
      maxLength: 8,
    })
    .map((parts) => parts.join("")),
);

test("field parsers never throw: a number they may hold, or a reason with the field's path", () => {
  const range = { minMm: 1, maxMm: 5000 };
  fc.assert(
    fc.property(typed, fc.constantFrom("mm" as const, "cm" as const, "in" as const), (text, unit) => {
      const results = [
        [parseLength(text, unit, "here", range), 1, 5000],
        [readCount(text, "here", 1, 99), 1, 99],
        [readShare(text, "here", 0, 0.5), 0, 0.5],
        [readMoney(text, "here"), 0, Infinity],
      ] as const;
      for (const [result, least, most] of results) {
        if (result.ok) {
          expect(result.value).toBeGreaterThanOrEqual(least);
          expect(result.value).toBeLessThanOrEqual(most);
        } else {
          expect(result.problems.length).toBeGreaterThan(0);
          for (const { path } of result.problems) expect(path).toBe("here");
        }
      }
    }),
    { numRuns: 2000 },
  );
});

type Edit = (project: Project) => Project;
const size = fc.oneof(fc.double({ min: -10, max: 12_000, noNaN: true }), fc.constantFrom(0, 1e-9, 1e9));
const pick = <T>(list: readonly T[], n: number): T => list[n % list.length]!;
const nth = fc.nat({ max: 20 });

/** What the page's forms, desks and buttons do, with any values. */
const edits: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(nth, size).map(
    ([n, mm]): Edit =>
      (project) =>
        project.straps.length === 0
          ? project
          : withStrap(project, pick(project.straps, n).id, { width: { kind: "finished", mm } }),
  ),
  fc.tuple(nth, size).map(
    ([n, mm]): Edit =>
      (project) =>
        project.straps.length === 0
          ? project
          : withStrap(project, pick(project.straps, n).id, { length: { kind: "finished", mm } }),
  ),
  fc.tuple(nth, fc.constantFrom(...CONSTRUCTION_IDS)).map(
    ([n, construction]): Edit =>
      (project) =>
        project.straps.length === 0 ? project : withStrap(project, pick(project.straps, n).id, { construction }),
  ),
  fc.tuple(nth, size, size, size).map(
    ([n, along, across, radius]): Edit =>
      (project) =>
        project.panels.length === 0
          ? project
          : withPanel(project, pick(project.panels, n).id, {
              shape: { kind: "measured", shape: "rounded", sizes: { along, across, radius } },
            }),
  ),
  fc.tuple(nth, nth, size, size).map(
    ([n, corner, x, y]): Edit =>
      (project) => {
        const drawn = project.panels.filter(({ shape }) => shape.kind === "outline");
        const panel = drawn.length === 0 ? undefined : pick(drawn, n);
        if (panel?.shape.kind !== "outline") return project;
        const vertices = panel.shape.contour.vertices.slice();
        const at = 3 * (corner % (vertices.length / 3));
        vertices[at] = x;
        vertices[at + 1] = y;
        return withPanel(project, panel.id, {
          shape: { kind: "outline", contour: { ...panel.shape.contour, vertices } },
        });
      },
  ),
  fc
    .tuple(nth, fc.constantFrom("lengthwise" as const, "crosswise" as const, "either" as const, "free" as const))
    .map(
      ([n, grain]): Edit =>
        (project) =>
          withMaterial(project, pick(project.materials, n).id, { grain }),
    ),
  fc.tuple(nth, size).map(
    ([n, thickness]): Edit =>
      (project) =>
        withMaterial(project, pick(project.materials, n).id, { thickness }),
  ),
  fc.tuple(nth, nth).map(
    ([n, k]): Edit =>
      (project) => {
        const { id } = pick(project.materials, n);
        const ways = otherWays(project, id);
        return ways.length === 0 ? project : inOtherWay(project, id, pick(ways, k));
      },
  ),
  nth.map(
    (n): Edit =>
      (project) => {
        const parts = [...project.straps, ...project.panels];
        return parts.length === 0 ? project : withoutPart(project, pick(parts, n).id, new Set());
      },
  ),
  nth.map(
    (n): Edit =>
      (project) =>
        withoutMaterial(project, pick(project.materials, n).id),
  ),
  typed.map(
    (name): Edit =>
      (project) => ({ ...project, materials: [...project.materials, plainMaterial(project, name)] }),
  ),
  typed.map(
    (name): Edit =>
      (project) => ({ ...project, name }),
  ),
  fc.integer({ min: -3, max: 100_000 }).map(
    (bags): Edit =>
      (project) => ({ ...project, bags }),
  ),
);

test("any edits: what is kept reads back and comes to a cut list or reasons; what is refused changes nothing; undo and redo keep all", () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof({ weight: 6, arbitrary: edits }, fc.constantFrom("undo", "redo")), { maxLength: 14 }),
      (steps) => {
        let history: History<Project> = startHistory(demo(), "start");
        const past = [present(history)];
        let future: Project[] = [];
        for (const step of steps) {
          if (step === "undo") {
            history = undo(history);
            if (past.length > 1) future.push(past.pop()!);
          } else if (step === "redo") {
            history = redo(history);
            const next = future.pop();
            if (next !== undefined) past.push(next);
          } else {
            const before = present(history);
            const result = edited(before, step);
            if (!result.ok) expect(result.problems.length).toBeGreaterThan(0);
            else if (result.value !== before) {
              history = record(history, result.value, "edit");
              past.push(result.value);
              future = [];
            }
          }
          const now = present(history);
          expect(now).toBe(past.at(-1));
          const text = writeProject(now);
          const read = readProject(text);
          expect(read.ok).toBe(true);
          if (read.ok) expect(writeProject(read.value)).toBe(text);
          const list = cutListOf(now);
          if (!list.ok) expect(list.problems.length).toBeGreaterThan(0);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test("a fresh id is nobody's, whatever kind of thing has it", () => {
  const ids = fc.array(fc.constantFrom("strap-1", "strap-2", "strap-3", "panel-1").map((id) => ({ id })));
  fc.assert(
    fc.property(ids, ids, ids, ids, (materials, stock, straps, panels) => {
      const cloths = [...materials, { id: "cloth" }].map((material) => ({ ...material, stock }));
      const crowded = { materials: cloths, straps, panels } as unknown as Project;
      const taken = [...materials, ...stock, ...straps, ...panels].map(({ id }) => id);
      expect(taken).not.toContain(freshIdIn(crowded, "strap"));
    }),
  );
});
