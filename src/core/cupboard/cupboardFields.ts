import { z } from "zod";
import type { Offcut } from "../buying/offcuts.ts";
import { contourBox, poseContour } from "../geometry/contourArcs.ts";
import { type Shape, shapeContour } from "../geometry/shape.ts";
import type { Flaw, MaterialStock } from "../materials/stock.ts";
import { expected, group, lengthField, list, named, nameField, report, text } from "../project/file/fields.ts";
import { UNITS } from "../project/file/projectSchema.ts";
import { flawField, SIZE, shapeField } from "../project/file/shapeFields.ts";
import type { LengthUnit } from "../units/lengthWords.ts";
import {
  CUPBOARD_STEPS,
  type Cupboard,
  type CupboardPiece,
  type CupboardStep,
  isPicture,
  isSmallPicture,
  MOST_PHOTO_KB,
  MOST_PIECES,
  plainCode,
  STEPS_KEPT,
} from "./cupboard.ts";
import { freeOnPiece } from "./freeOnPiece.ts";

/** The version this program reads and writes. */
export const CUPBOARD_VERSION = 1;

/** Signs of a data address; one that is a little too large is told as too large, not as too long. */
const LONGEST_PHOTO = 2 * MOST_PHOTO_KB * 1000;
const PLACE = { minMm: -100_000, maxMm: 100_000 };
const most = { minMm: 0, maxMm: 1000 };

/** A cupboard file as it is read, the unit of its bare numbers with it. */
export interface CupboardFile extends Cupboard {
  readonly unit: LengthUnit;
}

/** The cupboard file, for files whose bare numbers are in `unit`. */
export function cupboardSchema(unit: LengthUnit): z.ZodType<CupboardFile> {
  return group({
    laywrightCupboard: z.literal(CUPBOARD_VERSION),
    $schema: text(400).optional(),
    unit: z.enum(UNITS).default("mm"),
    pieces: list(pieceField(unit), 0, MOST_PIECES).default([]),
    steps: list(stepField(unit), 0, STEPS_KEPT).default([]),
  }).transform(({ pieces, steps, unit: own }, context): CupboardFile => {
    pieces.forEach(({ code }, i) => {
      const first = pieces.findIndex((other) => other.code === code);
      if (first < i)
        report(context, { code: "piece-twice", label: code, firstPath: `pieces[${first}]` }, ["pieces", i, "code"]);
    });
    return { unit: own, pieces, steps };
  });
}

function codeField() {
  return named(
    "code",
    "What stands on the label of a piece: letters and digits, one code for one piece.",
    text(20),
  );
}

function dayField() {
  return named("day", "Year, month and day, such as 2027-03-31.", text(10)).transform((value, context): string => {
    const [year = 0, month = 0, day = 0] = value.split("-").map(Number);
    const date = new Date(Date.UTC(year, month - 1, day));
    const isDay = /^\d{4}-\d\d-\d\d$/u.test(value) && date.toISOString().slice(0, 10) === value;
    if (!isDay) report(context, { code: "day-unreadable", value });
    return value;
  });
}

/** A file's name, or a small picture. */
function photoField() {
  return named(
    "photo",
    `Name of a photo file, or a small picture as a data address (JPEG, PNG or WebP of at most ${MOST_PHOTO_KB} kB).`,
    text(LONGEST_PHOTO),
  ).transform((value, context): string => {
    const isSound = isPicture(value) ? isSmallPicture(value) : value.length <= 200;
    if (!isSound) report(context, { code: "photo-unreadable", mostKb: MOST_PHOTO_KB });
    return value;
  });
}

function pieceField(unit: LengthUnit): z.ZodType<CupboardPiece> {
  return named(
    "piece",
    "A leftover, a roll or a skin that is kept for later, or was taken out for a project.",
    group({
      code: codeField(),
      material: nameField(),
      shade: nameField().optional(),
      source: nameField().optional(),
      kept: dayField(),
      photo: photoField().optional(),
      note: text(500).optional(),
      stock: stockField(unit),
      largest: rectangleField(unit).nullable().optional(),
      strip: rectangleField(unit).nullable().optional(),
      taken: group({ project: nameField(), on: dayField() }).optional(),
    }),
  ).transform(({ stock, largest, strip, ...piece }): CupboardPiece => {
    const code = plainCode(piece.code);
    const own = { ...stock, id: code };
    // What stands there was worked out; a piece put in by hand says nothing of it.
    const known = largest === undefined || strip === undefined ? freeOnPiece(own) : { largest, strip };
    return {
      code,
      material: piece.material,
      shade: piece.shade ?? null,
      source: piece.source ?? null,
      kept: piece.kept,
      photo: piece.photo ?? null,
      note: piece.note ?? null,
      stock: own,
      ...known,
      taken: piece.taken ?? null,
    };
  });
}

/** A rectangle on a piece, from its lower-left corner. */
function rectangleField(unit: LengthUnit): z.ZodType<Offcut> {
  const size = lengthField(unit, SIZE);
  return named(
    "free rectangle",
    "A rectangle that lies free on the piece, along and across the lengthwise grain.",
    group({ x: lengthField(unit, PLACE), y: lengthField(unit, PLACE), along: size, across: size }),
  );
}

function stockField(unit: LengthUnit): z.ZodType<MaterialStock> {
  const shared = {
    flaws: list(flawField(unit), 0, 200).default([]),
    firstLine: group({ along: lengthField(unit, PLACE), across: lengthField(unit, PLACE) }).optional(),
  };
  const shaped = { shape: shapeField(unit).transform(atOrigin), ...shared };
  const roll = group({
    kind: z.literal("roll"),
    width: lengthField(unit, { minMm: 1, maxMm: 20_000 }),
    selvedge: lengthField(unit, most).default(0),
    length: lengthField(unit, SIZE),
    squaring: lengthField(unit, most).default(0),
    ...shared,
  });
  const remnant = group({ kind: z.literal("remnant"), ...shaped });
  const skin = group({ kind: z.literal("skin"), ...shaped });
  return named(
    "kept stock",
    "The piece as it lies: a remnant or a skin with its outline, or a roll with the length that is left.",
    z.discriminatedUnion("kind", [roll, remnant, skin], expected("group")),
  ).transform((stock): MaterialStock => (stock.kind === "roll" ? { ...stock, id: "" } : asPiece(stock)));
}

interface ReadPiece {
  readonly kind: "remnant" | "skin";
  readonly shape: MovedShape;
  readonly flaws: readonly Flaw[];
  readonly firstLine?: MaterialStock["firstLine"];
}

interface MovedShape {
  readonly shape: Shape;
  readonly dx: number;
  readonly dy: number;
}

function asPiece({ kind, shape: { shape, dx, dy }, flaws, firstLine }: ReadPiece): MaterialStock {
  const moved = flaws.map((flaw) => ({ ...flaw, x: flaw.x + dx, y: flaw.y + dy }));
  const line = firstLine && { along: firstLine.along + dx, across: firstLine.across + dy };
  return { kind, id: "", shape, flaws: moved, count: 1, ...(line ? { firstLine: line } : {}) };
}

/** An outline with its box at the origin, as everything that looks for room on it expects. */
function atOrigin(shape: Shape): MovedShape {
  if (shape.kind !== "outline") return { shape, dx: 0, dy: 0 };
  const { minX, minY } = contourBox(shapeContour(shape));
  if (minX === 0 && minY === 0) return { shape, dx: 0, dy: 0 };
  const pose = { x: -minX, y: -minY, turnDeg: 0, mirrored: false };
  return { shape: { kind: "outline", contour: poseContour(shape.contour, pose) }, dx: -minX, dy: -minY };
}

function stepField(unit: LengthUnit): z.ZodType<CupboardStep> {
  return named(
    "change",
    "A change of the cupboard with the pieces as they were before, so that it can be undone.",
    group({
      did: z.enum(CUPBOARD_STEPS),
      on: dayField(),
      project: nameField().optional(),
      plan: text(100).optional(),
      codes: list(codeField(), 0, MOST_PIECES),
      before: list(pieceField(unit), 0, MOST_PIECES).default([]),
    }),
  ).transform(({ project, plan, ...step }): CupboardStep => {
    return { ...step, project: project ?? null, plan: plan ?? null };
  });
}
