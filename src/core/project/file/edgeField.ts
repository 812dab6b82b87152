import { z } from "zod";
import { CENTRED_ON, type Centred, MATCH_AXES, MATCH_POINTS, type Match } from "../../panels/match.ts";
import type { EdgeRef } from "../../panels/panel.ts";
import type { Seam, SeamEdge } from "../../panels/seams.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { countField, expected, group, idField, lengthField, list, named, report } from "./fields.ts";

/** Characters that the name of an edge may have. */
const LONGEST_NAME = 60;

/** An edge by number or by name. */
export function edgeField(): z.ZodType<EdgeRef> {
  const field = z.union([z.string(), z.number()], expected("edge"));
  return named("edge", "An edge by its number, or by the name its shape has for it.", field).transform(
    (value, context): EdgeRef => {
      if (value === "") {
        report(context, { code: "text-empty" });
        return z.NEVER;
      }
      if (typeof value === "string" && !/^\s*\d+\s*$/u.test(value)) {
        if (value.length <= LONGEST_NAME) return value;
        report(context, { code: "text-too-long", characters: value.length, limit: LONGEST_NAME });
        return z.NEVER;
      }
      const read = countField(0, 2000).safeParse(value);
      if (read.success) return read.data;
      report(context, { code: "count-out-of-range", count: Number(value), min: 0, max: 2000 });
      return z.NEVER;
    },
  );
}

function seamEdgeField() {
  return named(
    "seamEdge",
    "One edge of one panel.",
    group({ panel: idField(), edge: edgeField() }),
  ) satisfies z.ZodType<SeamEdge>;
}

/** A seam over which the cloth's pattern runs on. */
export function matchField(): z.ZodType<Match> {
  return named(
    "match",
    "Two edges that meet, over which the cloth's pattern runs on.",
    group({
      first: seamEdgeField(),
      second: seamEdgeField(),
      at: z.enum(MATCH_POINTS).optional(),
      axes: z.enum(MATCH_AXES).optional(),
    }),
  );
}

/** A part whose middle has its place on the cloth's pattern. */
export function centredField(): z.ZodType<Centred> {
  return named(
    "centred",
    "A panel or strap whose middle has its place on the cloth's pattern.",
    group({ part: idField(), on: z.enum(CENTRED_ON), axes: z.enum(MATCH_AXES).optional() }),
  );
}

/** Edges that are sewn together. */
export function seamField(unit: LengthUnit): z.ZodType<Seam> {
  const edge = seamEdgeField();
  const side = list(edge, 1, 100);
  const ease = lengthField(unit, { minMm: -1000, maxMm: 1000 });
  return named(
    "seam",
    "Two runs of edges that are sewn together; the second is met backwards.",
    group({ first: side, second: side, ease: ease.optional() }),
  ).transform(
    ({ first, second, ease: more }): Seam => ({ first, second, ...(more === undefined ? {} : { ease: more }) }),
  );
}
