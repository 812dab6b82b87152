import { expect, test } from "vitest";
import {
  build,
  codes,
  MATERIALS,
  of,
  problems,
  steps,
  type Wish,
  wish,
} from "../../../../tests/tools/makersStraps.ts";
import { problemLine } from "../../problems/describeProblem.ts";
import type { ConstructionId } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

// What an experienced maker looks for in the order of work. Trade figures: common practice, no source.

test("10: interfacing is in the steps of every construction that has it, one piece for each strip, and vinyl is not told to fuse", () => {
  for (const construction of ["bonded", "webbing-overlay", "fourfold"] as const) {
    const result = build(construction, "canvas", {
      materials: { outer: "canvas", interfacing: "fuse" },
      interfacing: "full",
    });
    expect(steps(result).join(" ")).toContain("fuse or baste the interfacing");
    const count = (role: string) => result.pieces.find(({ id }) => id === `s-${role}`)?.count;
    expect(count("interfacing")).toBe(count("outer"));
  }
  const vinyl = build("fourfold", "vinyl", {
    materials: { outer: "vinyl", interfacing: "fuse" },
    interfacing: "full",
  });
  expect(steps(vinyl).join(" ")).not.toMatch(/fuse/iu);
  expect(steps(vinyl).join(" ")).toContain("glue the interfacing");
  const corded = {
    width: null,
    core: { cordDiameter: 10 },
    materials: { outer: "vinyl", interfacing: "fuse" },
    interfacing: "full",
  } as const;
  expect(problems("corded", "vinyl", corded)).toMatchObject([{ code: "strap-role-unused", role: "interfacing" }]);
});

test("11: ends are turned in after the interfacing is fused, not before", () => {
  const said = steps(
    build("fourfold", "canvas", {
      materials: { outer: "canvas", interfacing: "fuse" },
      interfacing: "full",
      ends: [{ style: "tucked" }, { style: "tucked" }],
    }),
  );
  expect(said.findIndex((step) => step.includes("interfacing"))).toBeLessThan(
    said.findIndex((step) => step.includes("of each end to be closed")),
  );
});

test("12: interfacing under the face counts no more layers than interfacing all over", () => {
  const layers = (interfacing: "full" | "quarter") => {
    const result = build("fourfold", "canvas", {
      materials: { outer: "canvas", interfacing: "fuse" },
      interfacing,
    });
    return Math.max(...result.needle.map((check) => check.layers));
  };
  expect(layers("quarter")).toBe(layers("full"));
});

test("13: the figure of the trade's rule is what the rule says", () => {
  const sleeve = { width: null, core: { webbingWidth: 38, webbingThickness: 2 } } as const;
  expect(build("webbing-sleeve", "canvas", sleeve).nominalWidth).toBeCloseTo(4 * 38 + 2 * 2, 9);
  const cover = { ...sleeve, folds: { layers: 1, turn: 8 } } as const;
  expect(build("webbing-sleeve", "canvas", cover).nominalWidth).toBeCloseTo(2 * 38 + 2 * 2 + 2 * 8, 9);
  const padded = { materials: { outer: "cotton", padding: "foam" } };
  expect(build("three-hemmed", "cotton", padded).nominalWidth).toBeCloseTo(3 * 38, 9);
  expect(build("tab", "vinyl", { folds: { layers: 2 } }).nominalWidth).toBeCloseTo(38, 9);
});

test("14: the finish of raw edges is a step of its own", () => {
  for (const [finish, word] of [
    ["paint", "paint"],
    ["burnish", "rub"],
    ["as-cut", "as cut"],
  ] as const)
    expect(steps(build("bonded", "4 oz leather", { edgeFinish: finish })).join(" ")).toContain(word);
  expect(steps(build("three-raw", "vinyl", { edgeFinish: "paint" })).join(" ")).toContain("Paint the long edge");
  expect(steps(build("three-raw", "vinyl", { edgeFinish: "as-cut" })).join(" ")).not.toMatch(/paint|colour/iu);
  expect(codes(build("bonded", "vinyl", { edgeFinish: "burnish" }))).toContain("burnish-leather");
});

test("15: sewn and turned with a reveal is topstitched from the facing's edges", () => {
  expect(steps(build("sewn-turned", "canvas", { folds: { reveal: 2 } })).join(" ")).toContain(
    "measured from the facing's edges",
  );
  expect(steps(build("sewn-turned", "canvas")).join(" ")).not.toContain("facing's edges");
});

test("16: rows of stitching that meet, cross or leave the strap are refused; further rows are placed and counted once", () => {
  const at = (fromEdge: number, extraRows?: number): Wish => ({ width: 20, stitch: { fromEdge, extraRows } });
  expect(problems("fourfold", "vinyl", at(10))).toMatchObject([{ code: "strap-stitch-off", mostMm: 9 }]);
  expect(problems("fourfold", "vinyl", at(30))).toMatchObject([{ code: "strap-stitch-off" }]);
  expect(problems("fourfold", "vinyl", at(3, 9))).toMatchObject([{ code: "strap-choice-out-of-range", most: 6 }]);
  const result = build("fourfold", "vinyl", at(3, 1));
  expect(result.rows.filter(({ kind }) => kind === "topstitch")).toHaveLength(3);
  expect(steps(result).join(" ")).toContain("Stitch 1 more between those rows, 7.0 mm from one to the next");
  const thread = (rows: StrapResult) => rows.consumables.find(({ kind }) => kind === "topstitch-thread")!.mm;
  expect(thread(result) / thread(build("fourfold", "vinyl", at(3)))).toBeCloseTo(3 / 2, 9);
});

test("17: what a construction has no use for is refused, all of it at once", () => {
  const unused = (construction: ConstructionId, more: Wish) =>
    problems(construction, "vinyl", more).map((problem) =>
      problem.code === "strap-choice-unused" ? problem.choice : problem.code,
    );
  expect(unused("tube", { folds: { setback: 4, layers: 3, seamAllowance: 5 } })).toEqual(["setback", "layers"]);
  expect(unused("fourfold", { folds: { hem: 5 }, shortPart: 200, edgeFinish: "paint" })).toEqual([
    "hem",
    "shortPart",
    "edgeFinish",
  ]);
  expect(unused("fourfold", { folds: { clearance: 0.4, crease: "hard" } })).toEqual([]);
  // The gap says where the edge stops, a clearance beside it nothing more.
  expect(unused("fourfold", { folds: { edgeGap: 3, clearance: 0.4 } })).toEqual(["clearance"]);
  expect(unused("corded", { width: null, core: { cordDiameter: 10 }, stitch: { extraRows: 1 } })).toEqual([
    "extraRows",
  ]);
  const [hem] = problems("fourfold", "vinyl", { folds: { hem: 5 } });
  expect(problemLine(hem!)).toContain("folded in three, hemmed edge");
});

test("18: with the width of the cloth known, the strap asked for has its metres", () => {
  const cloth = [of("cotton", "woven", 0.3, { usableWidth: 1100 })];
  const built = buildStrap({ ...wish("fourfold", "cotton"), count: 4 }, cloth);
  if (!built.ok) throw new Error("no strap");
  // Four strips of about 152 mm: side by side along the roll 700 mm, crosswise four times their width.
  expect(built.value.rollLength).toBeCloseTo(Math.min(700, 4 * built.value.cutWidth), 6);
});

test("19: the short half of a two-part strap is long enough for its fold-backs, and made in the steps", () => {
  const parts = { adjustment: "two-part", length: 1300 } as const;
  expect(problems("fourfold", "vinyl", { ...parts, shortPart: 100 })).toMatchObject([
    { code: "strap-short-part-short" },
  ]);
  expect(steps(build("fourfold", "vinyl", parts)).join(" ")).toContain("Make the short part, 254.0 mm long");
});

test("21: a tube that is sewn 7 % longer is cut 7 % longer, and trimmed in the steps", () => {
  const result = build("tube", "cotton", { length: 1000 });
  expect(result.lengths.cut).toBeCloseTo(1070, 9);
  expect(result.lengths.items.reduce((sum, { mm }) => sum + mm, 0)).toBeCloseTo(result.lengths.cut, 9);
  expect(steps(result).join(" ")).toContain("Trim 70.0 mm");
});

test("22: tape is bought and drawn where a step uses it", () => {
  for (const construction of [
    "fourfold",
    "three-raw",
    "three-hemmed",
    "two-layer",
    "webbing-overlay",
    "webbing-sleeve",
    "tab",
    "bonded",
    "tube",
  ] as const)
    for (const outer of ["cotton", "vinyl"]) {
      const result = build(construction, outer);
      const used = /\btape\b/u.test(steps(result).join(" "));
      expect(
        result.consumables.some(({ kind }) => kind === "tape"),
        `${construction} ${outer}`,
      ).toBe(used);
      const drawn = result.pieces.some(({ lines }) => lines.some(({ role }) => role === "tape"));
      expect(drawn && !used, `${construction} ${outer}`).toBe(false);
    }
});

test("23: leather runs along the backbone, cork is never creased, a narrow tube may lie on the bias, thick leather is skived", () => {
  expect(steps(build("bonded", "4 oz leather"))[0]).toContain("along the backbone");
  expect(steps(build("fourfold", "vinyl"))[0]).not.toMatch(/bias|grain/u);
  const cork = steps(build("fourfold", "cork")).join(" ");
  expect(cork).not.toMatch(/\b[Cc]rease (?:or|the)|\bpress\b/u);
  expect(cork).toContain("Draw the centre line");
  expect(steps(build("tube", "cotton"))[0]).not.toContain("never on the bias");
  expect(codes(build("tube", "cotton"))).toContain("tube-bias");
  const [thick] = buildStrap(wish("fourfold", "hide"), [of("hide", "leather", 3)]).ok ? [] : problemsOf();
  expect(problemLine(thick!)).toContain("skive");
});

test("23: cloth is never cut to a thirty-second of an inch, what lies still may be", () => {
  expect(build("fourfold", "cotton").inches).toBe("in/16");
  expect(build("fourfold", "vinyl").inches).toBe("in/32");
});

function problemsOf() {
  const built = buildStrap(wish("fourfold", "hide"), [of("hide", "leather", 3)]);
  return built.ok ? [] : built.problems;
}

test("31: ends skived or trimmed are thinner under the needle, in the steps and along the strap", () => {
  const ends = [{ style: "fold-back" }, { style: "fold-back" }] as const;
  const whole = build("fourfold", "4 oz leather", { ends });
  const skived = build("fourfold", "4 oz leather", { ends, endThickness: 2 });
  const at = (result: StrapResult) => result.needle.find(({ where }) => where === "fold-back")!;
  // Four layers of 4 oz, and on them the same again or 2 mm.
  expect(at(whole).thickness).toBeCloseTo(8 * 1.588, 9);
  expect(at(skived).thickness).toBeCloseTo(4 * 1.588 + 2, 9);
  expect(Math.max(...skived.along.map(({ thickness }) => thickness))).toBeCloseTo(4 * 1.588 + 2, 9);
  expect(steps(skived).join(" ")).toContain("so that the strap is 2.0 mm thick there");
  expect(problems("fourfold", "vinyl", { endThickness: 2 })).toMatchObject([
    { code: "strap-choice-unused", choice: "endThickness" },
  ]);
});

test("31: turned edges that are skived go round a thinner fold, and the step they climb counts", () => {
  const overlay = (more: Wish["folds"]) =>
    build("webbing-overlay", "stout vinyl", {
      width: null,
      core: { webbingWidth: 38, webbingThickness: 2 },
      folds: { margin: 3, turn: 8, ...more },
    });
  const skived = overlay({ turnedThickness: 0.7 });
  // Worked by hand: the face less both thin folds; in each fold a half turn at mid-depth and a step of 1.4 − 0.7;
  // 8 mm lie beyond the stitch in the middle of that fold.
  const fold = Math.PI * 0.35 + 0.7;
  expect(skived.cutWidth).toBeCloseTo(38 - 6 - 1.4 + 2 * (fold + 8 - fold / 2), 9);
  expect(skived.cutWidth).toBeGreaterThan(overlay({}).cutWidth);
  // Webbing, face and turned edge.
  expect(skived.needle[0]!.thickness).toBeCloseTo(2 + 1.4 + 0.7, 9);
  expect(overlay({}).needle[0]!.thickness).toBeCloseTo(2 + 1.4 + 1.4, 9);
  expect(steps(skived).join(" ")).toContain("Skive the edges that are turned to 0.7 mm");
  const back = buildStrap(
    { ...wish("two-layer", "vinyl", { folds: { turnedThickness: 0.5 } }), width: { kind: "cut", mm: 70 } },
    MATERIALS,
  );
  if (!back.ok) throw new Error("two-layer");
  const again = build("two-layer", "vinyl", { width: back.value.finishedWidth, folds: { turnedThickness: 0.5 } });
  expect(again.cutWidth).toBeCloseTo(70, 9);
  // The same in a soft crease, half as wide inside as the skived edge is thick.
  const soft = overlay({ turnedThickness: 0.7, crease: "soft" });
  const softFold = Math.PI * 0.7 + 0.7;
  expect(soft.cutWidth).toBeCloseTo(38 - 6 - 2 * (0.35 + 0.7) + 2 * (softFold / 2 + 8), 9);
  // Both turned edges lie as thick.
  expect(skived.across!.map(({ thickness }) => thickness)).toEqual(
    [2, 4.1, 3.4, 4.1, 2].map((mm) => expect.closeTo(mm, 9)),
  );
  // Of three layers with a hem the hem alone is skived: its fold takes less, and climbs a step of half a millimetre.
  const hemmed = (folds: Wish["folds"]) => build("three-hemmed", "vinyl", { folds }).cutWidth;
  const folds = [Math.PI * 0.5, Math.PI * 0.25 + 0.5] as const;
  expect(hemmed({ turnedThickness: 0.5 }) - hemmed({})).toBeCloseTo(0.5 + (folds[1] - folds[0]) / 2, 9);
  // Too thick to be turned whole, and thin enough where it is turned.
  const hide = of("hide", "leather", 1.8);
  expect(buildStrap(wish("sewn-turned", "hide"), [hide]).ok).toBe(false);
  expect(buildStrap(wish("sewn-turned", "hide", { folds: { turnedThickness: 0.8 } }), [hide]).ok).toBe(true);
});

test("31: skiving of woven cloth, or to more than there is, is refused", () => {
  expect(problems("sewn-turned", "canvas", { folds: { turnedThickness: 0.4 } })).toMatchObject([
    { code: "strap-choice-unused", choice: "turnedThickness" },
  ]);
  expect(problems("sewn-turned", "vinyl", { folds: { turnedThickness: 1 } })).toMatchObject([
    { code: "length-out-of-range", path: "folds.turnedThickness", maxMm: 1 },
  ]);
});
