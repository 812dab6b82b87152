import { ROLE_STYLES } from "../../core/drawing/list/roleStyles.ts";
import type { PatternLine } from "../../core/patterns/patternDrawing.ts";

const ROLES: ReadonlyMap<string, string> = new Map(
  Object.entries(ROLE_STYLES).map(([role, { color }]) => [color, role]),
);

/** In a PDF of our own, each role has its colour; written to three decimals, it reads back to the same one. */
export function ownRole(line: PatternLine): PatternLine {
  const role = line.color === null ? undefined : ROLES.get(line.color);
  return role === undefined ? line : { ...line, layer: role, names: [role] };
}
