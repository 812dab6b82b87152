import { z } from "zod";
import { PIECE_GRAINS, type PieceGrain } from "../../materials/cutPiece.ts";
import { unstated } from "../../materials/laser.ts";
import {
  BACKINGS,
  type ClothRepeat,
  COATINGS,
  MATERIAL_KINDS,
  type Material,
  MOST_TILT,
  ONE_WAYS,
  type OneWay,
  PLAIN_REPEAT,
  POLYMERS,
  WASHED_WHEN,
} from "../../materials/material.ts";
import type { Price } from "../../materials/price.ts";
import { LEAST_LAYERS, MOST_LAYERS, SPREAD_FACES, type Spread } from "../../materials/spread.ts";
import type { ClothRoll } from "../../materials/stock.ts";
import { FOLD_TESTS } from "../../straps/foldTest.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { readLength } from "../../units/parseLength.ts";
import {
  countField,
  expected,
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
  thicknessField,
  yesNo,
} from "./fields.ts";
import { readBasis, readStep } from "./priceText.ts";
import { flawField, SIZE, shapeField } from "./shapeFields.ts";

/** Cut off each cut end of a roll to square it: the least of 2 to 5 cm (common practice, no source). */
const SQUARING = 20;

/** The direction a piece or a material keeps; a bias cannot be said. */
export function grainField(): z.ZodType<PieceGrain> {
  return z.enum(PIECE_GRAINS);
}

/** A label is to be read off a shelf. */
const LONGEST_LABEL = 20;
const PLACE = { minMm: -100_000, maxMm: 100_000 };
const most = { minMm: 0, maxMm: 1000 };

function priceField(unit: LengthUnit) {
  const quantity = z.union([z.string(), z.number()], expected("length"));
  return group({
    amount: moneyField(),
    per: text(40),
    step: quantity.optional(),
    least: quantity.optional(),
    steps: list(group({ from: quantity, amount: moneyField() }), 0, 20).optional(),
  }).transform(({ amount, per, step, least, steps }, context): Price => {
    const basis = readBasis(per, unit);
    if ("problems" in basis) {
      for (const problem of basis.problems) report(context, problem, ["per"]);
      return z.NEVER;
    }
    const read = (text: string | number | undefined, path: readonly (string | number)[]): number => {
      const value = readStep(text, per, basis, unit);
      if (value.ok) return value.value;
      for (const problem of value.problems) report(context, problem, path);
      return 0;
    };
    return {
      amount,
      basis,
      step: read(step, ["step"]),
      ...(least === undefined ? {} : { least: read(least, ["least"]) }),
      ...(steps === undefined
        ? {}
        : { steps: steps.map((one, i) => ({ from: read(one.from, ["steps", i, "from"]), amount: one.amount })) }),
    };
  });
}

/** A length, or "open": said as one kind of text, so that a wrong text is told as a wrong length. */
function openLength(unit: LengthUnit) {
  return z
    .union([z.string(), z.number()], expected("length-or-open"))
    .transform((value, context): number | "open" => {
      if (value === "open") return value;
      const read = readLength(value, unit, "", SIZE);
      if (read.ok) return read.value;
      for (const problem of read.problems) report(context, problem);
      return z.NEVER;
    });
}

/** Of stock that is still in the shop, or has a price of its own. */
function pricedFields(unit: LengthUnit) {
  return { toBuy: yesNo().optional(), price: priceField(unit).optional() };
}

function firstLineField(unit: LengthUnit) {
  return group({ along: lengthField(unit, PLACE).default(0), across: lengthField(unit, PLACE).default(0) });
}

function rollField(unit: LengthUnit) {
  return group({
    kind: z.literal("roll"),
    id: idField(),
    width: lengthField(unit, { minMm: 1, maxMm: 20_000 }),
    selvedge: lengthField(unit, most).default(0),
    length: openLength(unit).default("open"),
    squaring: lengthField(unit, most).optional(),
    ...pricedFields(unit),
    label: text(LONGEST_LABEL).optional(),
    firstLine: firstLineField(unit).optional(),
    flaws: list(flawField(unit), 0, 200).default([]),
  }).transform((roll, context): ClothRoll => {
    if (roll.width <= 2 * roll.selvedge)
      report(context, { code: "selvedges-eat-width", widthMm: roll.width, selvedgeMm: roll.selvedge }, [
        "selvedge",
      ]);
    const length = roll.length === "open" ? null : roll.length;
    // What is measured at home is measured square; what is still to be bought is not.
    return { ...roll, length, squaring: roll.squaring ?? (length === null ? SQUARING : 0) };
  });
}

function stockField(unit: LengthUnit) {
  const piece = {
    id: idField(),
    shape: shapeField(unit),
    flaws: list(flawField(unit), 0, 200).default([]),
    count: countField(1, 1000).default(1),
    keptBack: yesNo().optional(),
    ...pricedFields(unit),
    label: text(LONGEST_LABEL).optional(),
    firstLine: firstLineField(unit).optional(),
  };
  const remnant = group({ kind: z.literal("remnant"), ...piece });
  const skin = group({ kind: z.literal("skin"), ...piece });
  return named(
    "stock",
    "Cloth that there is or can be bought: a roll, a measured leftover, or a skin.",
    z.discriminatedUnion("kind", [rollField(unit), remnant, skin], expected("group")),
  );
}

function spreadField() {
  const layers = group({
    layers: countField(LEAST_LAYERS, MOST_LAYERS),
    faces: z.enum(SPREAD_FACES).default("up"),
  });
  return named(
    "spread",
    "How a roll lies when several layers are cut at once: folded lengthwise, or lengths on one another.",
    z.union([z.literal("folded"), layers], expected("group")),
  ).transform((spread, context): Spread => {
    if (spread === "folded") return { kind: "folded" };
    if (spread.faces === "together" && spread.layers % 2 === 1)
      report(context, { code: "layers-not-in-twos", count: spread.layers }, ["layers"]);
    return { kind: "layers", ...spread };
  });
}

function foldTestField(unit: LengthUnit) {
  return named(
    "fold test",
    "A folded test strip as it was measured; several of one material are averaged.",
    group({
      construction: z.enum(FOLD_TESTS),
      thickness: thicknessField(unit),
      cutWidth: lengthField(unit, SIZE),
      finishedWidth: lengthField(unit, SIZE),
      setback: lengthField(unit, most),
      readingError: lengthField(unit, most),
    }),
  );
}

function foldField(unit: LengthUnit) {
  return group({
    neutral: plainNumber(0, 1).optional(),
    leastRadius: lengthField(unit, most).optional(),
    clearance: plainNumber(0, 5).optional(),
    tests: list(foldTestField(unit), 0, 50).optional(),
  });
}

function shrinkageField() {
  return group({
    lengthwise: shareField(0, 0.3).default(0),
    crosswise: shareField(0, 0.3).default(0),
    when: z.enum(WASHED_WHEN).default("after-making"),
  });
}

/** A length along the roll, or everything there is to say of a pattern. */
function repeatField(unit: LengthUnit): z.ZodType<ClothRepeat> {
  const whole = group({
    along: lengthField(unit, SIZE).optional(),
    across: lengthField(unit, SIZE).optional(),
    firstAlong: lengthField(unit, PLACE).default(0),
    firstAcross: lengthField(unit, PLACE).default(0),
    symmetric: yesNo().default(false),
    halfDrop: yesNo().default(false),
    tolerance: lengthField(unit, { minMm: 0, maxMm: 100 }).default(PLAIN_REPEAT.tolerance),
  }).transform((repeat, context): ClothRepeat => {
    const { along, across, halfDrop } = repeat;
    if (along === undefined && across === undefined) report(context, { code: "repeat-without-length" });
    else if (halfDrop && (along === undefined || across === undefined))
      report(context, { code: "half-drop-one-way" });
    const least = Math.min(along ?? Infinity, across ?? Infinity);
    if (2 * repeat.tolerance >= least)
      report(context, { code: "tolerance-eats-repeat", toleranceMm: repeat.tolerance, repeatMm: least }, [
        "tolerance",
      ]);
    return { ...repeat, along: along ?? null, across: across ?? null };
  });
  return named(
    "repeat",
    "How the cloth's pattern repeats: a length along the roll, or lengths along and across it with where the first line lies.",
    z.union([z.string(), z.number(), whole], expected("length")).transform((value, context): ClothRepeat => {
      if (typeof value === "object") return value;
      const read = readLength(value, unit, "", SIZE);
      if (read.ok) return { ...PLAIN_REPEAT, along: read.value };
      for (const problem of read.problems) report(context, problem);
      return z.NEVER;
    }),
  );
}

/** `true` has always meant that all arrows point up the roll. */
function oneWayField() {
  return z
    .union([z.boolean(), z.enum(ONE_WAYS)], expected("one-way"))
    .default(false)
    .transform((value): OneWay | false => (value === true ? "up" : value));
}

/** Lengths of roll that keep the parts of one bag together. */
const BAND = { minMm: 10, maxMm: 100_000 };

/** A material with its stock. Webbing and cord need no stock: they are bought by the metre. */
export function materialField(unit: LengthUnit): z.ZodType<Material> {
  return named(
    "material",
    "A cloth, leather, interfacing or the like, with its stock.",
    group({
      id: idField(),
      name: nameField().optional(),
      kind: z.enum(MATERIAL_KINDS),
      thickness: thicknessField(unit),
      backing: z.enum(BACKINGS).default("unknown"),
      coating: z.enum(COATINGS).optional(),
      polymer: z.enum(POLYMERS).optional(),
      grain: grainField().default("either"),
      oneWay: oneWayField(),
      shadeBand: lengthField(unit, BAND).optional(),
      tilt: plainNumber(0, MOST_TILT).optional(),
      facesAlike: yesNo().default(false),
      fold: foldField(unit).default({}),
      shrinkage: shrinkageField().default({ lengthwise: 0, crosswise: 0, when: "after-making" }),
      repeat: repeatField(unit).optional(),
      price: priceField(unit).optional(),
      source: nameField().optional(),
      gap: lengthField(unit, most).optional(),
      margin: lengthField(unit, most).optional(),
      spread: spreadField().optional(),
      stock: list(stockField(unit), 0, 200).default([]),
    }),
  ).transform((material, context): Material => {
    const flawed = material.stock.findIndex((stock) => stock.kind === "roll" && stock.flaws.length > 0);
    if (material.spread?.kind === "layers" && flawed >= 0)
      report(context, { code: "flaws-under-layers" }, ["stock", flawed, "flaws"]);
    return {
      ...material,
      name: material.name ?? material.id,
      coating: material.coating ?? unstated(material.kind).coating,
      polymer: material.polymer ?? unstated(material.kind).polymer,
      repeat: material.repeat ?? null,
      price: material.price ?? null,
      gap: material.gap ?? null,
      margin: material.margin ?? null,
    };
  });
}
