import { z } from "zod";
import { type StockPlacement, UNPLACED_REASONS, type Unplaced } from "../../lay/problem/layProblem.ts";
import { CUT_MODES } from "../../lay/search/engine.ts";
import { publishedSchema } from "../../project/file/jsonSchema.ts";
import { CUT_REASONS } from "../planCut.ts";
import type { MaterialPlan, OutlineData, PlanDocument } from "./planDocument.ts";

/** Of a plan file, what is needed to verify it. */
export interface JudgedPlan {
  readonly seed: number;
  readonly materials: readonly JudgedMaterial[];
}

type Kept =
  | "materialId"
  | "name"
  | "cuttingGap"
  | "edgeMargin"
  | "pieces"
  | "pinned"
  | "spread"
  | "pattern"
  | "phases"
  | "sameWay"
  | "shade";

export interface JudgedMaterial extends Pick<MaterialPlan, Kept> {
  readonly stock: readonly JudgedStock[];
  readonly placed: readonly StockPlacement[];
  readonly unplaced: readonly Unplaced[];
}

export type JudgedStock = {
  readonly id: string;
  readonly flaws: readonly OutlineData[];
  readonly firstLine?: readonly [number, number] | undefined;
  readonly lengthUsed: number;
  readonly bound: number | null;
} & (
  | { readonly kind: "roll"; readonly width: number; readonly length: number | null }
  | { readonly kind: "remnant"; readonly outline: OutlineData }
);

const text = z.string();
const number = z.number();
const count = z.number();
const flag = z.boolean();

/** Fewest points of an outline. */
export const LEAST_POINTS = 3;
const ring = z.array(z.tuple([number, number])).min(LEAST_POINTS);
const outline = z.object({ points: ring, holes: z.array(ring) }).meta({ title: "outline" });
const flaws = z.array(outline);
const orientation = z.object({ turnDeg: number, mirrored: flag });
const placement = z.object({
  pieceId: text,
  copy: count,
  stockId: text,
  x: number,
  y: number,
  turnDeg: number,
  mirrored: flag,
});
const sense = z.union([z.literal(1), z.literal(-1)]);
const firstLine = z.tuple([number, number]).optional();
const gives = z.object({ of: text, asDrawn: count, mirrored: count, onFold: flag });
const piece = z.object({
  id: text,
  outline,
  count,
  turns: z.array(orientation),
  freeTurn: flag,
  gives: gives.optional(),
  tiltDeg: number.optional(),
  match: z
    .object({ group: text, x: number, y: number, senseX: sense, senseY: sense, along: flag, across: flag })
    .optional(),
});
const repeat = number.nullable();
const pattern = z.object({
  along: repeat,
  across: repeat,
  firstAlong: number,
  firstAcross: number,
  halfDrop: flag,
  symmetric: flag,
  tolerance: number,
});
const phases = z.record(text, z.object({ along: number.nullable(), across: number.nullable() }));
const spread = z.object({
  layers: count,
  faces: z.enum(["up", "together"]),
  folded: flag,
  facesAlike: flag,
  asked: z.array(z.object({ pieceId: text, asDrawn: count, mirrored: count })),
});
const unplaced = z.object({ pieceId: text, count, reason: z.enum(UNPLACED_REASONS) });
const use = { lengthUsed: number, bound: number.nullable() };
const roll = z.object({
  id: text,
  kind: z.literal("roll"),
  firstLine,
  flaws,
  ...use,
  width: number,
  length: number.nullable(),
});
const remnant = z.object({ id: text, kind: z.literal("remnant"), firstLine, flaws, ...use, outline });

const judged = z.object({
  materialId: text,
  stock: z.array(z.discriminatedUnion("kind", [roll, remnant])),
  pieces: z.array(piece),
  cuttingGap: number,
  edgeMargin: number,
  pinned: z.array(placement),
  placed: z.array(placement),
  unplaced: z.array(unplaced),
  name: text,
  spread: spread.optional(),
  pattern: pattern.optional(),
  phases: phases.optional(),
  sameWay: z.literal(true).optional(),
  shade: z.object({ bags: count, band: number }).optional(),
});

const judgedPlan = z.object({ laywrightPlan: z.literal(1), seed: number, materials: z.array(judged) });

/** What of a plan file the checker needs; whatever else stands in it is passed over. */
export const JUDGED_PLAN: z.ZodType<JudgedPlan> = judgedPlan;

const named = { path: text, pieceId: text, count };
const leftOut = z.discriminatedUnion("code", [
  z.object({
    ...named,
    code: z.literal("piece-too-long-for-width"),
    neededWidthMm: number,
    widestMm: number,
    fitsTurned: flag,
  }),
  z.object({ ...named, code: z.literal("piece-too-large-for-stock"), alongMm: number, acrossMm: number }),
  z.object({ ...named, code: z.literal("piece-stock-used-up"), moreLengthMm: number.nullable() }),
  z.object({
    ...named,
    code: z.literal("piece-no-room-on-pattern"),
    neededWidthMm: number,
    widestMm: number,
  }),
  z.object({
    ...named,
    code: z.literal("piece-band-too-short"),
    bandMm: number,
    neededMm: number.nullable(),
  }),
  z.object({ ...named, code: z.literal("piece-no-stock") }),
]);

const amount = number.nullable();
const bill = z.object({
  stockId: text,
  source: z.enum(["buy", "own"]),
  usedLength: number.nullable(),
  buyLength: number.nullable(),
  area: number,
  cost: amount,
});
const purchase = z.object({
  materialId: text,
  bills: z.array(bill),
  buyLength: number,
  toPay: amount,
  ownWorth: amount,
});
/** In whole smallest coins. */
const costs = z.object({
  bags: number,
  cloths: z.array(z.object({ materialId: text, toPay: amount, ownWorth: amount, cost: amount, wasted: amount })),
  supplies: z.array(z.object({ id: text, name: text, needed: number, packs: number, toPay: amount, cost: amount })),
  toPay: amount,
  suppliesToPay: amount,
  work: amount,
  overhead: amount,
  total: amount,
  clothPerBag: amount,
  costPerBag: amount,
  pricePerBag: amount,
  priceWithTax: amount,
  batchPrice: amount,
  batchLeft: amount,
  markup: amount,
  margin: amount,
});
const offcut = z.object({ x: number, y: number, along: number, across: number });

const material = judged.extend({
  lengthUsed: number,
  utilisation: number,
  bound: number.nullable(),
  gap: number.nullable(),
  cut: z.object({
    asked: z.enum(CUT_MODES),
    laid: z.enum(["free", "ruler"]).nullable(),
    stages: number.nullable(),
    narrowStrips: number.nullable(),
    reason: z.enum(CUT_REASONS).nullable(),
  }),
  evaluations: number,
  stock: z.array(
    z.discriminatedUnion("kind", [
      roll.extend({ outline: z.null(), utilisation: number }),
      remnant.extend({ width: number, length: number, utilisation: number }),
    ]),
  ),
  placed: z.array(placement.extend({ outline })),
  unplaced: z.array(unplaced.extend({ help: leftOut.nullable(), outline })),
  offcuts: z.array(z.object({ stockId: text, offcuts: z.array(offcut) })),
  purchase,
  cost: amount,
});

/** All that stands in a plan file. */
const PLAN = judgedPlan.extend({
  project: text,
  currency: text,
  toPay: amount,
  clothPerBag: amount,
  costPerBag: amount,
  pricePerBag: amount,
  markup: amount,
  margin: amount,
  minorDigits: number,
  costs,
  materials: z.array(material),
  files: z.array(z.object({ name: text, sha256: text })).optional(),
}) satisfies z.ZodType<PlanDocument>;

/** The plan file as JSON Schema (draft 2020-12): every key that `lay` writes, and no other. */
export function planJsonSchema(): object {
  return publishedSchema(PLAN, "output", { $id: "laywright-plan-1", title: "Laywright plan file, version 1" });
}
