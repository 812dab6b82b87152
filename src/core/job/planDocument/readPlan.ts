import type { z } from "zod";
import type { Polygon, Ring } from "../../geometry/ring.ts";
import type { LayPlan, LayProblem, Stock } from "../../lay/problem/layProblem.ts";
import { pathText } from "../../project/file/issues.ts";
import type { OutlineData, Points } from "./planDocument.ts";
import { JUDGED_PLAN, type JudgedMaterial, type JudgedStock, LEAST_POINTS } from "./planSchema.ts";

/** One material's problem and plan out of a plan file. */
export interface ReadPlan {
  readonly name: string;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
}

/** What a value of a plan file should have been. */
export type PlanValue =
  | "object"
  | "list"
  | "number"
  | "text"
  | "flag"
  | "version"
  | "point"
  | "outline"
  | "stock-kind"
  | "reason";

/** A value of a plan file that is not what it should be. */
export interface PlanFault {
  /** As people write it: `materials[1].placed[0].x`. */
  readonly path: string;
  readonly wanted: PlanValue;
}

export type PlanReading =
  | { readonly ok: true; readonly plans: readonly ReadPlan[] }
  | { readonly ok: false; readonly faults: readonly PlanFault[] };

/** Most wrong values told of one file. */
const MOST_TOLD = 100;

/** Whether parsed JSON claims to be a plan file. */
export function isPlanDocument(data: unknown): boolean {
  return typeof data === "object" && data !== null && "laywrightPlan" in data;
}

/**
 * Problems and plans of a plan file, for the checker, or every value that is not what it should be. The placed
 * outlines in the file are not read: what is verified is the poses against the pieces.
 */
export function readPlanDocument(data: unknown): PlanReading {
  const parsed = JUDGED_PLAN.safeParse(data);
  if (!parsed.success) {
    const faults = parsed.error.issues.map((issue) => ({ path: pathText(issue.path), wanted: wantedBy(issue) }));
    return { ok: false, faults: faults.slice(0, MOST_TOLD) };
  }
  const { seed, materials } = parsed.data;
  return { ok: true, plans: materials.map((material) => readMaterial(material, seed)) };
}

function wantedBy(issue: z.core.$ZodIssue): PlanValue {
  switch (issue.code) {
    case "invalid_type":
      return BY_TYPE[issue.expected] ?? "object";
    case "too_small":
      return issue.minimum === LEAST_POINTS ? "outline" : "point";
    case "too_big":
      return "point";
    case "invalid_union":
      return "stock-kind";
    default:
      return issue.path.at(-1) === "reason" ? "reason" : "version";
  }
}

const BY_TYPE: Readonly<Record<string, PlanValue>> = {
  object: "object",
  array: "list",
  tuple: "point",
  number: "number",
  string: "text",
  boolean: "flag",
};

function readMaterial(material: JudgedMaterial, seed: number): ReadPlan {
  const { materialId, name, stock, pieces, placed, unplaced, pinned, spread, pattern, phases, sameWay, shade } =
    material;
  return {
    name,
    problem: {
      materialId,
      pieces: pieces.map(({ outline, turns, tiltDeg, ...piece }) => ({
        ...piece,
        outline: readOutline(outline),
        orientations: turns,
        ...(tiltDeg === undefined ? {} : { tilt: tiltDeg }),
      })),
      stocks: stock.map((each) => readStock(each, spread?.folded === true)),
      gap: material.cuttingGap,
      margin: material.edgeMargin,
      pinned,
      spread,
      ...(pattern === undefined ? {} : { pattern, phases }),
      ...(sameWay === undefined ? {} : { sameWay }),
      ...(shade === undefined ? {} : { shade }),
    },
    plan: {
      materialId,
      placements: placed,
      unplaced,
      uses: stock.map(({ id, lengthUsed, bound }) => ({ stockId: id, usedLength: lengthUsed, bound })),
      evaluations: 0,
      seed,
    },
  };
}

function readStock(stock: JudgedStock, folded: boolean): Stock {
  const { id } = stock;
  const flaws = stock.flaws.map(readOutline);
  const line = stock.firstLine === undefined ? {} : { firstLine: stock.firstLine };
  if (stock.kind === "remnant") return { kind: "remnant", id, outline: readOutline(stock.outline), flaws, ...line };
  const roll = { kind: "roll", id, width: stock.width, length: stock.length, flaws, ...line } as const;
  return folded ? { ...roll, folded } : roll;
}

function readOutline({ points, holes }: OutlineData): Polygon {
  return { outer: ringOf(points), holes: holes.map(ringOf) };
}

function ringOf(points: Points): Ring {
  return Float64Array.from(points.flat());
}
