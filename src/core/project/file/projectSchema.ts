import { z } from "zod";
import type { LengthUnit } from "../../units/lengthWords.ts";
import type { Project } from "../project.ts";
import { centredField, matchField, seamField } from "./edgeField.ts";
import { countField, group, lengthField, list, nameField, text } from "./fields.ts";
import { keptPlanField } from "./keptPlanFields.ts";
import { materialField } from "./materialFields.ts";
import { bagMeasureField } from "./measureFields.ts";
import { outputField } from "./outputFields.ts";
import { panelField } from "./panelFields.ts";
import { pinField } from "./pinField.ts";
import { pricingField, supplyField, taxField } from "./pricingFields.ts";
import { sewingMachineField } from "./sewingMachineField.ts";
import { strapField } from "./strapFields.ts";

/** The version this program writes, and the newest it reads. */
export const FILE_VERSION = 1;

/** Units a file may state for its bare numbers. */
export const UNITS: readonly ["mm", "cm", "m", "in", "ft", "yd"] = ["mm", "cm", "m", "in", "ft", "yd"];

const EDGE = { minMm: 0, maxMm: 1000 };

/** The project file, version 1, for files whose bare numbers are in `unit`; parses to a `Project`. */
export function projectSchema(unit: LengthUnit): z.ZodType<Project> {
  return group({
    laywright: z.literal(FILE_VERSION),
    // Where an editor finds the published schema.
    $schema: text(400).optional(),
    name: nameField(),
    unit: z.enum(UNITS).default("mm"),
    bags: countField(1, 10_000).default(1),
    currency: text(10).default("EUR"),
    measures: list(bagMeasureField(unit), 0, 100).optional(),
    materials: list(materialField(unit), 1, 100),
    straps: list(strapField(unit), 0, 500).default([]),
    panels: list(panelField(unit), 0, 500).default([]),
    seams: list(seamField(unit), 0, 2000).optional(),
    matches: list(matchField(), 0, 500).optional(),
    centred: list(centredField(), 0, 500).optional(),
    gap: lengthField(unit, EDGE).default(0),
    margin: lengthField(unit, EDGE).default(0),
    leastStrip: lengthField(unit, EDGE).optional(),
    pins: list(pinField(unit), 0, 20_000).default([]),
    output: outputField(unit).prefault({}),
    sewingMachine: sewingMachineField(unit).optional(),
    workshop: text(400).optional(),
    pricing: pricingField().optional(),
    tax: taxField().optional(),
    supplies: list(supplyField(), 0, 500).optional(),
    plans: list(keptPlanField(), 0, 200).optional(),
  }).transform(
    ({ laywright: _version, $schema: _schema, measures, ...project }): Project =>
      measures === undefined ? project : { ...project, measures },
  );
}
