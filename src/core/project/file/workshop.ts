import { z } from "zod";
import type { Material } from "../../materials/material.ts";
import { failed, ok, type Problem, type Result } from "../../problems/problem.ts";
import type { SewingMachine } from "../../straps/wish/strapWish.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { group, list, nameField, text } from "./fields.ts";
import { problemsOfIssues } from "./issues.ts";
import { type Group, readGroup } from "./jsonGroup.ts";
import { materialField } from "./materialFields.ts";
import { UNITS } from "./projectSchema.ts";
import { sewingMachineField } from "./sewingMachineField.ts";
import { lengthWriter, materialJson } from "./writeProject.ts";

/** A maker's workshop, kept in a file beside her projects: her sewing machine and her materials. */
export interface Workshop {
  readonly name: string;
  readonly sewingMachine?: SewingMachine | undefined;
  readonly materials: readonly Material[];
}

/** The version this program reads. */
const WORKSHOP_VERSION = 1;

/** The workshop file, for files whose bare numbers are in `unit`. */
export function workshopSchema(unit: LengthUnit): z.ZodType<Workshop> {
  return group({
    laywrightWorkshop: z.literal(WORKSHOP_VERSION),
    $schema: text(400).optional(),
    name: nameField(),
    unit: z.enum(UNITS).default("mm"),
    sewingMachine: sewingMachineField(unit).optional(),
    materials: list(materialField(unit), 0, 200).default([]),
  }).transform(({ name, sewingMachine, materials }): Workshop => ({ name, sewingMachine, materials }));
}

/** Whether a text is a workshop file rather than a project; false for what is no JSON. */
export function isWorkshop(source: string): boolean {
  const read = source.includes('"laywrightWorkshop"') ? readGroup(source) : null;
  return read?.ok === true && "laywrightWorkshop" in read.value;
}

/** Reads a workshop file; everything wrong with it is told at once. Never throws. */
export function readWorkshop(source: string): Result<Workshop> {
  const read = readGroup(source);
  if (!read.ok) return read;
  const unit = UNITS.find((known) => known === read.value["unit"]) ?? "mm";
  const parsed = workshopSchema(unit).safeParse(read.value);
  return parsed.success ? ok(parsed.data) : failed(...problemsOfIssues(parsed.error.issues, read.value));
}

/**
 * The text of a project with what its `workshop` gives put in: the sewing machine where the project has none, and for
 * each material that says `from` the fields it leaves out. A project without a workshop comes back as it is, and so
 * does what is no project, whose faults are told by who reads it. `workshop` gives the text of a named file.
 *
 * Errors: a workshop that is not there or not sound, a material that it does not have.
 */
export function withWorkshop(source: string, workshop: (name: string) => string | null): Result<string> {
  if (!source.includes('"workshop"')) return ok(source);
  const read = readGroup(source);
  const name = read.ok ? read.value["workshop"] : undefined;
  if (!read.ok || typeof name !== "string") return ok(source);
  const named = workshop(name);
  if (named === null) return failed({ code: "workshop-missing", path: "workshop", name });
  const shop = readWorkshop(named);
  if (!shop.ok)
    return failed(...shop.problems.map((problem) => ({ ...problem, path: `${name}: ${problem.path}` })));
  const unit = UNITS.find((known) => known === read.value["unit"]) ?? "mm";
  const say = lengthWriter(unit);
  const problems: Problem[] = [];
  const own = Array.isArray(read.value["materials"]) ? (read.value["materials"] as readonly unknown[]) : [];
  const materials = own.map((material, i) => {
    if (typeof material !== "object" || material === null || !("from" in material)) return material;
    const { from, ...rest } = material as Group;
    const found = shop.value.materials.find(({ id }) => id === from);
    if (found !== undefined) return { ...(materialJson(found, say, unit) as Group), ...rest };
    const known = shop.value.materials.map(({ id }) => id);
    problems.push({ code: "workshop-material-unknown", path: `materials[${i}].from`, id: String(from), known });
    return rest;
  });
  if (problems.length > 0) return failed(...problems);
  const machine = (JSON.parse(named.replace(/^\ufeff/u, "")) as Group)["sewingMachine"];
  const sameUnit = (JSON.parse(named.replace(/^\ufeff/u, "")) as Group)["unit"] ?? "mm";
  const sewing = read.value["sewingMachine"] ?? withUnits(machine, String(sameUnit));
  const { materials: _, ...project } = read.value;
  return ok(JSON.stringify({ ...project, materials, ...(sewing === undefined ? {} : { sewingMachine: sewing }) }));
}

/** Bare numbers of a machine's lengths with the unit of the file they stand in. */
function withUnits(machine: unknown, unit: string): unknown {
  if (typeof machine !== "object" || machine === null) return undefined;
  const lengths = new Set(["maxThickness", "footLift"]);
  return Object.fromEntries(
    Object.entries(machine).map(([key, value]) => [
      key,
      lengths.has(key) && typeof value === "number" ? `${value} ${unit}` : value,
    ]),
  );
}
