import { z } from "zod";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { PRICED_BY, type Pricing, type Project, type Supply } from "../project.ts";
import { centredField, matchField, seamField } from "./edgeField.ts";
import {
  countField,
  group,
  idField,
  lengthField,
  list,
  moneyField,
  named,
  nameField,
  plainNumber,
  report,
  shareField,
  text,
  yesNo,
} from "./fields.ts";
import { keptPlanField } from "./keptPlanFields.ts";
import { materialField } from "./materialFields.ts";
import { bagMeasureField } from "./measureFields.ts";
import { outputField } from "./outputFields.ts";
import { panelField } from "./panelFields.ts";
import { pinField } from "./pinField.ts";
import { sewingMachineField } from "./sewingMachineField.ts";
import { strapField } from "./strapFields.ts";

/** The version this program writes, and the newest it reads. */
export const FILE_VERSION = 1;

/** Units a file may state for its bare numbers. */
export const UNITS: readonly ["mm", "cm", "m", "in", "ft", "yd"] = ["mm", "cm", "m", "in", "ft", "yd"];

const MOST_MARGIN = 0.95;
const EDGE = { minMm: 0, maxMm: 1000 };

function pricingField() {
  return group({
    workPerBag: moneyField().default(0),
    minutesPerBag: plainNumber(0, 100_000).optional(),
    hourlyRate: moneyField().optional(),
    overheadShare: shareField(0, 10).optional(),
    overheadPerBag: moneyField().optional(),
    by: z.enum(PRICED_BY),
    share: shareField(0, 10),
  }).transform((pricing, context): Pricing => {
    // A price of which everything is left has no end.
    if (pricing.by === "margin" && pricing.share > MOST_MARGIN)
      report(
        context,
        { code: "share-out-of-range", share: pricing.share, min: 0, max: MOST_MARGIN, isNumber: false },
        ["share"],
      );
    return pricing;
  });
}

function taxField() {
  return named(
    "tax",
    "The tax on what is bought and sold.",
    group({ rate: shareField(0, 1), inPrices: yesNo().default(true), onBags: yesNo().default(false) }),
  );
}

function supplyField() {
  return named(
    "supply",
    "Something that goes into every bag besides cloth.",
    group({
      id: idField(),
      name: nameField().optional(),
      perBag: plainNumber(0, 10_000).default(1),
      price: moneyField().optional(),
      pack: countField(1, 1_000_000).default(1),
    }),
  ).transform(
    ({ name, price, ...supply }): Supply => ({ ...supply, name: name ?? supply.id, price: price ?? null }),
  );
}

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
