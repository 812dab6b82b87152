import { z } from "zod";
import type { BagMeasure, Measure, MeasureTerm } from "../../panels/measure.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import type { LengthRange } from "../../units/parseLength.ts";
import { expected, group, idField, lengthField, list, named, nameField, plainNumber, text } from "./fields.ts";

const PLACE: LengthRange = { minMm: -100_000, maxMm: 100_000 };
const MOST_TERMS = 20;

function termField(): z.ZodType<MeasureTerm> {
  return named(
    "measureOf",
    "So many times a measure of the bag, or of the panel with the id in `of`.",
    group({ of: idField().optional(), measure: text(60), times: plainNumber(-1000, 1000).default(1) }),
  );
}

/** A length, what it follows, or a list of both that are added up. */
export function measureField(unit: LengthUnit, range: LengthRange = PLACE): z.ZodType<Measure> {
  return z.union(measureKinds(unit, range), expected("measure"));
}

/** A measure, or a group that is none. */
export function measureOrField<T>(
  unit: LengthUnit,
  other: z.ZodType<T>,
  range: LengthRange,
): z.ZodType<Measure | T> {
  return z.union([...measureKinds(unit, range), other], expected("measure"));
}

function measureKinds(unit: LengthUnit, range: LengthRange) {
  const sum = list(z.union([lengthField(unit, PLACE), termField()], expected("measure")), 1, MOST_TERMS);
  return [lengthField(unit, range), termField().transform((term): Measure => [term]), sum] as const;
}

/** One of the bag's own measures. */
export function bagMeasureField(unit: LengthUnit): z.ZodType<BagMeasure> {
  return named(
    "bagMeasure",
    "A measure of the bag that sizes of panels can follow.",
    group({ id: idField(), name: nameField().optional(), length: lengthField(unit, { minMm: 0, maxMm: 100_000 }) }),
  ).transform(({ id, name, length }): BagMeasure => ({ id, name: name ?? id, length }));
}
