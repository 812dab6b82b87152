import { z } from "zod";
import { MATERIAL_KINDS } from "../../materials/material.ts";
import type { SewingMachine } from "../../straps/wish/strapWish.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { countField, group, lengthField, list, named, text } from "./fields.ts";

const STACK = { minMm: 0.1, maxMm: 100 };

/** A sewing machine: what goes under its foot, and what it sews which kind of material with. */
export function sewingMachineField(unit: LengthUnit): z.ZodType<SewingMachine> {
  return named(
    "sewing machine",
    "What the sewing machine can take, and needle and thread by kind of material.",
    group({
      maxThickness: lengthField(unit, STACK).optional(),
      maxLayers: countField(1, 100).optional(),
      footLift: lengthField(unit, STACK).optional(),
      needles: list(
        group({ kind: z.enum(MATERIAL_KINDS), needle: text(100), thread: text(100).optional() }),
        0,
        20,
      ).optional(),
    }),
  );
}
