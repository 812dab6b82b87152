import { problemLine } from "../../src/core/problems/describeProblem.ts";
import type { Problem } from "../../src/core/problems/problem.ts";
import { buildStrap } from "../../src/core/straps/build/buildStrap.ts";
import type { StrapResult } from "../../src/core/straps/build/strapResult.ts";
import type { ConstructionId, StrapMaterial, StrapWish } from "../../src/core/straps/wish/strapWish.ts";
import { phraseText } from "../../src/core/words/phrase.ts";
import { STRAP_WORDS } from "../../src/core/words/words.ts";

// Straps of usual materials, for tests of what an experienced maker looks at first.

const english = STRAP_WORDS.en;
export const INCH = 25.4;

export function of(
  id: string,
  kind: StrapMaterial["kind"],
  thickness: number,
  more: Partial<StrapMaterial> = {},
): StrapMaterial {
  return { id, name: id, kind, thickness, backing: "woven", fold: {}, ...more };
}

export const MATERIALS = [
  of("cotton", "woven", 0.3),
  of("canvas", "woven", 0.7),
  of("vinyl", "vinyl", 1),
  of("stout vinyl", "vinyl", 1.4),
  of("4 oz leather", "leather", 1.588),
  of("cork", "cork", 0.6),
  of("fuse", "interfacing", 0.2),
  of("foam", "padding", 4),
];

export type Wish = Partial<Omit<StrapWish, "width" | "length">> & {
  readonly width?: number | null;
  readonly length?: number;
};

export function wish(
  construction: ConstructionId,
  outer: string,
  { width = 38, length = 700, ...more }: Wish = {},
): StrapWish {
  return {
    id: "s",
    name: "strap",
    construction,
    count: 1,
    width: width === null ? undefined : { kind: "finished", mm: width },
    length: { kind: "finished", mm: length },
    materials: { outer },
    ...more,
  };
}

export function build(construction: ConstructionId, outer: string, more: Wish = {}): StrapResult {
  const built = buildStrap(wish(construction, outer, more), MATERIALS);
  if (!built.ok) throw new Error(built.problems.map((problem) => problemLine(problem)).join("\n"));
  return built.value;
}

export function problems(construction: ConstructionId, outer: string, more: Wish = {}): readonly Problem[] {
  const built = buildStrap(wish(construction, outer, more), MATERIALS);
  return built.ok ? [] : built.problems;
}

export const steps = (result: StrapResult): string[] =>
  result.steps.map((step) => phraseText(step, (mm) => `${mm.toFixed(1)} mm`, english));
export const codes = (result: StrapResult): string[] => result.warnings.map(({ code }) => code);
