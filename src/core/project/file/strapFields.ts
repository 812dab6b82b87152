import { z } from "zod";
import {
  CONSTRUCTION_IDS,
  END_WISHES,
  type LengthWish,
  STITCH_TYPES,
  STRAP_CHOICES,
  type StrapWish,
  type WidthWish,
} from "../../straps/wish/strapWish.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import {
  countField,
  expected,
  group,
  idField,
  lengthField,
  list,
  named,
  nameField,
  plainNumber,
  yesNo,
} from "./fields.ts";
import { SIZE } from "./shapeFields.ts";

const SMALL = { minMm: 0, maxMm: 1000 };

/** `"25 mm"` is finished; `{ "cut": "10 cm" }` says what is meant. */
function sizeField<K extends string>(unit: LengthUnit, kinds: readonly K[]) {
  const size = lengthField(unit, SIZE);
  const named = kinds.map((kind) =>
    group({ [kind]: size } as Record<K, typeof size>).transform((value) => ({
      kind,
      mm: (value as Record<K, number>)[kind],
    })),
  );
  const plain = size.transform((mm) => ({ kind: "finished" as K, mm }));
  return z.union([plain, ...named], expected("size"));
}

function materialsField() {
  return group({
    outer: idField(),
    facing: idField().optional(),
    interfacing: idField().optional(),
    padding: idField().optional(),
    webbing: idField().optional(),
    cord: idField().optional(),
  });
}

function endField(unit: LengthUnit) {
  return named(
    "end",
    "How one end of a strap is finished.",
    group({
      style: z.enum(END_WISHES),
      allowance: lengthField(unit, SMALL).optional(),
    }),
  );
}

function hardwareField(unit: LengthUnit) {
  return named(
    "hardware",
    "A ring, slider or clasp the strap runs through.",
    group({
      kind: z.enum(STRAP_CHOICES.hardware),
      innerWidth: lengthField(unit, SIZE),
      length: lengthField(unit, SMALL).optional(),
      opening: lengthField(unit, SMALL).optional(),
      bar: lengthField(unit, SMALL).optional(),
      fixedBar: yesNo().optional(),
    }),
  );
}

function foldsField(unit: LengthUnit) {
  const small = () => lengthField(unit, SMALL).optional();
  return group({
    crease: z.enum(STRAP_CHOICES.crease).optional(),
    clearance: plainNumber(0, 5).optional(),
    edgeGap: small(),
    setback: small(),
    hem: small(),
    reveal: small(),
    seamAllowance: small(),
    margin: small(),
    turn: small(),
    trim: small(),
    turnedThickness: small(),
    paddingPressed: plainNumber(0.05, 1).optional(),
    layers: countField(1, 3).optional(),
  });
}

/** A strap as it stands in a file: the maker's wish, key for key. */
export function strapField(unit: LengthUnit): z.ZodType<StrapWish> {
  const small = () => lengthField(unit, SMALL).optional();
  return named(
    "strap",
    "A strap, handle or tab as the maker asks for it.",
    group({
      id: idField(),
      name: nameField().optional(),
      construction: z.enum(CONSTRUCTION_IDS),
      count: countField(1, 1000).default(1),
      width: sizeField(unit, STRAP_CHOICES.width).optional(),
      length: sizeField(unit, STRAP_CHOICES.length),
      materials: materialsField(),
      grain: z.enum(STRAP_CHOICES.grain).optional(),
      adjustment: z.enum(STRAP_CHOICES.adjustment).optional(),
      shortPart: small(),
      ends: z.tuple([endField(unit), endField(unit)], expected("list")).optional(),
      endThickness: small(),
      interfacing: z.enum(STRAP_CHOICES.interfacing).optional(),
      core: group({ webbingWidth: small(), webbingThickness: small(), cordDiameter: small() }).optional(),
      hardware: list(hardwareField(unit), 0, 20).optional(),
      machine: group({ maxThickness: small(), maxLayers: countField(1, 100).optional() }).optional(),
      folds: foldsField(unit).optional(),
      stitch: group({
        fromEdge: small(),
        extraRows: countField(0, 20).optional(),
        length: small(),
        type: z.literal([...STITCH_TYPES]).optional(),
      }).optional(),
      joins: group({
        allowed: yesNo(),
        seam: z.enum(STRAP_CHOICES.joinSeam).optional(),
        seamAllowance: small(),
      }).optional(),
      edgeFinish: z.enum(STRAP_CHOICES.edgeFinish).optional(),
      cutBy: z.enum(STRAP_CHOICES.cutBy).optional(),
    }),
  ).transform(
    ({ width, ...strap }): StrapWish => ({
      ...strap,
      name: strap.name ?? strap.id,
      length: strap.length as LengthWish,
      ...(width === undefined ? {} : { width: width as WidthWish }),
    }),
  );
}
