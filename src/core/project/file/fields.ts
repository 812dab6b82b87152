import { z } from "zod";
import type { Expected } from "../../problems/fileProblems.ts";
import type { Problem } from "../../problems/problem.ts";
import type { ReadNumber } from "../../units/lengthProblem.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { ANY_LENGTH, type LengthRange, readLength } from "../../units/parseLength.ts";
import { readCount, readMoney, readShare } from "../../units/parseNumber.ts";
import { readThickness } from "../../units/parseThickness.ts";

// Before the first schema is made: zod would otherwise compile checks, and a page that forbids `eval` would tell of it.
z.config({ jitless: true });

/** A problem without its place, which the issue carries. */
type Placeless<P = Problem> = P extends Problem ? Omit<P, "path"> : never;

/** Where fields put their issues: the part of zod's context that they use. */
export type IssueSink = Pick<z.core.ParsePayload, "issues">;

/** Adds a problem at the field itself, or at `path` below it. */
export function report(sink: IssueSink, problem: Placeless, path: readonly (string | number)[] = []): void {
  sink.issues.push({ code: "custom", input: undefined, path: [...path], params: { problem } });
}

/** What stands in a zod message: the kind of value that was expected here. */
export const expected = (kind: Expected): { readonly error: string } => ({ error: kind });

/** A group of keys; unknown ones are issues that carry the known ones. */
export function group<S extends z.core.$ZodLooseShape>(shape: S): z.ZodObject<S, z.core.$strict> {
  const known = Object.keys(shape).join(" ");
  return z.strictObject(shape, { error: (issue) => (issue.code === "unrecognized_keys" ? known : "group") });
}

/** A field under a name and with a sentence about it, as the published schema has it. */
export function named<T extends z.ZodType>(title: string, description: string, field: T): T {
  return field.meta({ title, description });
}

/** Text of at least one character, without control characters. */
export function text(longest: number): z.ZodString {
  return z
    .string(expected("text"))
    .min(1)
    .max(longest)
    .regex(/^[^\p{Cc}\p{Cs}]*$/u);
}

/** An id: short text, used to point at things. */
export const idField = (): z.ZodString =>
  named("id", "Short text that other places in the file point with.", text(60));

/** A name for people. */
export const nameField = (): z.ZodString => named("name", "A name for people, in any writing.", text(200));

type NumberField = z.ZodPipe<
  z.ZodUnion<readonly [z.ZodString, z.ZodNumber]>,
  z.ZodTransform<number, string | number>
>;

const NUMBERS = {
  length:
    'A length with its unit, such as "12 cm", "4 7/8 in" or "1 m 20"; a plain number is in the unit of the file.',
  thickness: 'Thickness of one layer, such as "0.8 mm" or, of leather, "3 oz".',
  share: 'A percentage such as "3 %", or as a number 0.03.',
  count: "A whole number of things.",
  money: "An amount of money without its sign, such as 12.50.",
} as const;

function numberField(
  kind: Expected,
  read: (value: string | number) => ReadNumber,
  title: keyof typeof NUMBERS,
): NumberField {
  const raw = named(title, NUMBERS[title], z.union([z.string(), z.number()], expected(kind)));
  return raw.transform((value, context) => {
    const result = read(value);
    if (result.ok) return result.value;
    for (const problem of result.problems) report(context, problem);
    return z.NEVER;
  });
}

/** Fields that hold lengths, for files whose bare numbers are in `unit`. */
export function lengthField(unit: LengthUnit, range: LengthRange = ANY_LENGTH): NumberField {
  return numberField("length", (value) => readLength(value, unit, "", range), "length");
}

/** Thickness of one layer. Ounces are taken as leather's here; other materials are checked for them apart. */
export function thicknessField(unit: LengthUnit): NumberField {
  return numberField("length", (value) => readThickness(value, unit, "", true), "thickness");
}

/** A share between `min` and `max`: "3 %" or 0.03. */
export function shareField(min: number, max: number): NumberField {
  return numberField("share", (value) => readShare(value, "", min, max), "share");
}

/** A whole number of things. */
export function countField(min: number, max: number): NumberField {
  return numberField("count", (value) => readCount(value, "", min, max), "count");
}

/** An amount of money. */
export function moneyField(): NumberField {
  return numberField("money", (value) => readMoney(value, ""), "money");
}

/** A plain number between two others. */
export function plainNumber(min: number, max: number): z.ZodNumber {
  return z.number(expected("number")).min(min).max(max);
}

/** Yes or no. */
export const yesNo = (): z.ZodBoolean => z.boolean(expected("yes-or-no"));

/** A list of `least` to `most` entries. */
export function list<T extends z.ZodType>(entry: T, least: number, most: number): z.ZodArray<T> {
  return z.array(entry, expected("list")).min(least).max(most);
}
