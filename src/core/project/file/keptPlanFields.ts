import { z } from "zod";
import type { KeptPlan } from "../keptPlan.ts";
import {
  countField,
  expected,
  group,
  idField,
  list,
  named,
  nameField,
  plainNumber,
  text,
  yesNo,
} from "./fields.ts";

/** Furthest place and length, mm. */
const FAR = 1_000_000;
const LONGEST_PROJECT = 4_000_000;

/** A plan kept by name; its lengths are plain numbers in mm in every file. */
export function keptPlanField(): z.ZodType<KeptPlan> {
  const place = plainNumber(-FAR, FAR);
  const length = plainNumber(0, FAR);
  return named(
    "keptPlan",
    "A plan that was kept by name, with all lengths in mm; written by the page.",
    group({
      name: nameField(),
      material: idField(),
      savedAt: text(40),
      held: yesNo().default(false),
      length,
      placements: list(
        group({
          stock: text(400),
          piece: text(400),
          copy: countField(0, 100_000),
          x: place,
          y: place,
          turn: plainNumber(-360, 360),
          mirrored: yesNo(),
        }),
        0,
        20_000,
      ),
      uses: list(group({ stock: text(400), length, bound: length.nullable() }), 0, 2000),
      unplaced: list(group({ piece: text(400), count: countField(1, 100_000), reason: text(60) }), 0, 2000).default(
        [],
      ),
      project: z.string(expected("text")).max(LONGEST_PROJECT).optional(),
    }),
  ).transform(
    ({ material, placements, uses, unplaced, ...plan }): KeptPlan => ({
      ...plan,
      materialId: material,
      placements: placements.map(({ stock, piece, turn, ...pose }) => ({
        ...pose,
        stockId: stock,
        pieceId: piece,
        turnDeg: turn,
      })),
      uses: uses.map(({ stock, length: usedLength, bound }) => ({ stockId: stock, usedLength, bound })),
      unplaced: unplaced.map(({ piece, ...left }) => ({ ...left, pieceId: piece })),
    }),
  );
}
