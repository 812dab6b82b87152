import type { z } from "zod";
import type { LengthUnit } from "../../units/lengthWords.ts";
import type { Pin } from "../project.ts";
import { countField, group, idField, lengthField, named, plainNumber, text, yesNo } from "./fields.ts";

const PLACE = { minMm: -100_000, maxMm: 100_000 };

/** A piece put down by hand; `unit` is that of the file's bare numbers. */
export function pinField(unit: LengthUnit): z.ZodType<Pin> {
  return named(
    "pin",
    "A piece put down by hand, which the lay works around.",
    group({
      material: idField(),
      stock: idField(),
      piece: text(400),
      copy: countField(0, 100_000),
      x: lengthField(unit, PLACE),
      y: lengthField(unit, PLACE),
      turn: plainNumber(-360, 360).default(0),
      mirrored: yesNo().default(false),
    }),
  ).transform(({ material, stock, piece, turn, ...pin }) => ({
    ...pin,
    materialId: material,
    stockId: stock,
    pieceId: piece,
    turnDeg: turn,
  }));
}
