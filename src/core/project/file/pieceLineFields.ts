import { z } from "zod";
import type { PieceLine } from "../../materials/cutPiece.ts";
import type { LengthUnit } from "../../units/length.ts";
import { group, list, named, yesNo } from "./fields.ts";
import { openContour, pointField } from "./shapeFields.ts";

/** A line on a panel. */
export function pieceLineField(unit: LengthUnit): z.ZodType<PieceLine> {
  const line = group({
    role: z.enum(["fold", "stitch", "mark"]),
    points: list(pointField(unit), 2, 2000),
    closed: yesNo().default(false),
  });
  return named("line", "A line drawn on the panel, from the same corner as its outline.", line).transform(
    ({ role, points, closed }, context): PieceLine => ({ role, contour: openContour(points, closed, context) }),
  );
}
