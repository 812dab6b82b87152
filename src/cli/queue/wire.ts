import { z } from "zod";
import { type LayPlan, UNPLACED_REASONS } from "../../core/lay/problem/layProblem.ts";
import { CUT_MODES } from "../../core/lay/search/engine.ts";
import { LANGUAGES } from "../../core/words/words.ts";
import { OUTPUTS } from "../../export/outputs.ts";
import type { LayTask } from "../batch/layTask.ts";

const OUTPUT_IDS = OUTPUTS.map(({ id }) => id);
const text = z.string();
const number = z.number();
const count = z.int().min(0);

const placement = z.object({
  pieceId: text,
  copy: count,
  stockId: text,
  x: number,
  y: number,
  turnDeg: number,
  mirrored: z.boolean(),
});

const plan = z.object({
  materialId: text,
  placements: z.array(placement),
  unplaced: z.array(z.object({ pieceId: text, count, reason: z.enum(UNPLACED_REASONS) })),
  uses: z.array(
    z.object({
      stockId: text,
      usedLength: number.min(0),
      bound: number.nullable(),
      toll: number.min(0).optional(),
    }),
  ),
  evaluations: number.min(0),
  seed: count,
}) satisfies z.ZodType<LayPlan>;

const task = z.object({
  folder: text,
  orders: z.array(z.object({ name: text, folder: text, text })).min(1),
  withheld: z.record(text, z.array(text)),
  effort: z.object({ evaluations: number.min(1), seed: count, mode: z.enum(CUT_MODES) }),
  language: z.enum(LANGUAGES),
  write: z.array(z.enum(OUTPUT_IDS)).optional(),
  island: z.object({ cloth: count, from: plan.nullable() }).optional(),
}) satisfies z.ZodType<LayTask>;

/** What is sent to a worker: one lay, and the version of the program that wants it laid. */
const sentLay = z.object({ version: text, task, byFolder: z.boolean().optional() });

export interface SentLay {
  readonly version: string;
  readonly task: LayTask;
  /** Who wants it reads plans out of a shared folder as well. */
  readonly byFolder?: boolean | undefined;
}

const plans = z.array(plan);

/** What a worker sends back: a plan for each cloth, or null where they lie in the shared folder. Nothing else of it is used. */
const foundPlans = z.object({ version: text, worker: text, plans: plans.nullable() });

export interface FoundPlans {
  readonly version: string;
  readonly worker: string;
  readonly plans: readonly LayPlan[] | null;
}

/** Reads plans, whoever wrote them; null where they are none. */
export function readPlans(data: unknown): readonly LayPlan[] | null {
  return plans.safeParse(data).data ?? null;
}

/** Reads what came from the store, whoever put it there; null where it is not of the kind. */
export function readSentLay(data: unknown): SentLay | null {
  return sentLay.safeParse(data).data ?? null;
}

export function readFoundPlans(data: unknown): FoundPlans | null {
  return foundPlans.safeParse(data).data ?? null;
}
