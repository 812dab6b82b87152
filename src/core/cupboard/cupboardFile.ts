import type { Offcut } from "../buying/offcuts.ts";
import { failed, ok, type Result } from "../problems/problem.ts";
import { problemsOfIssues } from "../project/file/issues.ts";
import { readGroup } from "../project/file/jsonGroup.ts";
import { publishedSchema } from "../project/file/jsonSchema.ts";
import { UNITS } from "../project/file/projectSchema.ts";
import type { Json, Say } from "../project/file/writeJson.ts";
import { lengthWriter, stockJson } from "../project/file/writeProject.ts";
import type { LengthUnit } from "../units/lengthWords.ts";
import type { Cupboard, CupboardPiece, CupboardStep } from "./cupboard.ts";
import { CUPBOARD_VERSION, type CupboardFile, cupboardSchema } from "./cupboardFields.ts";

const schemas = new Map<LengthUnit, ReturnType<typeof cupboardSchema>>();

/** Reads a cupboard file; everything wrong with it is told at once. Never throws, whatever the text. */
export function readCupboard(source: string): Result<CupboardFile> {
  const read = readGroup(source);
  if (!read.ok) return read;
  const version = read.value["laywrightCupboard"];
  if (typeof version === "number" && version > CUPBOARD_VERSION)
    return failed({ code: "file-newer", path: "laywrightCupboard", version, known: CUPBOARD_VERSION });
  const unit = UNITS.find((known) => known === read.value["unit"]) ?? "mm";
  const schema = schemas.get(unit) ?? cupboardSchema(unit);
  schemas.set(unit, schema);
  const parsed = schema.safeParse(read.value);
  return parsed.success ? ok(parsed.data) : failed(...problemsOfIssues(parsed.error.issues, read.value));
}

/** The text of a cupboard file; bare numbers are in `unit`. The same cupboard gives the same bytes. */
export function writeCupboard({ pieces, steps }: Cupboard, unit: LengthUnit = "mm"): string {
  const say = lengthWriter(unit);
  const file: Json = {
    laywrightCupboard: CUPBOARD_VERSION,
    unit,
    pieces: pieces.map((piece) => pieceJson(piece, say)),
    steps: steps.map((step) => stepJson(step, say)),
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** The structure of a cupboard file as JSON Schema (draft 2020-12). */
export function cupboardJsonSchema(): object {
  const head = { $id: "laywright-cupboard-1", title: "Laywright cupboard file, version 1" };
  return publishedSchema(cupboardSchema("mm"), "input", head);
}

/** A piece as it stands in the file. */
export function pieceJson(piece: CupboardPiece, say: Say): Json {
  const {
    id: _id,
    count: _count,
    ...stock
  } = stockJson(piece.stock, say, "mm") as { readonly [key: string]: Json };
  return {
    code: piece.code,
    material: piece.material,
    shade: piece.shade ?? undefined,
    source: piece.source ?? undefined,
    kept: piece.kept,
    photo: piece.photo ?? undefined,
    note: piece.note ?? undefined,
    stock,
    largest: rectangleJson(piece.largest, say),
    strip: rectangleJson(piece.strip, say),
    taken: piece.taken === null ? undefined : { ...piece.taken },
  };
}

function rectangleJson(free: Offcut | null, say: Say): Json {
  return free === null
    ? null
    : { x: say(free.x), y: say(free.y), along: say(free.along), across: say(free.across) };
}

function stepJson({ did, on, project, plan, codes, before }: CupboardStep, say: Say): Json {
  return {
    did,
    on,
    project: project ?? undefined,
    plan: plan ?? undefined,
    codes,
    before: before.map((piece) => pieceJson(piece, say)),
  };
}
