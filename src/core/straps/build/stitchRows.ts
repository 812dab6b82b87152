import { failed, ok, type Problem, type Result } from "../../problems/problem.ts";
import { type StitchRow, TRADE } from "../constructions/construction.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";

/** Rows of stitching nearer than this perforate or lie on each other (from memory), mm. */
const LEAST_APART = 2;

/** Every row along the strap, and what the steps say of them. mm. */
export interface StitchRows {
  readonly rows: readonly StitchRow[];
  readonly fromEdge: number;
  /** Distance between rows where there are more than the construction needs; null where there are none. */
  readonly apart: number | null;
}

/**
 * The rows of a strap: those the construction needs, at the maker's distance or the usual one (nearer the edge where
 * the strap is too narrow for it), and further ones evenly between them.
 *
 * Errors: a distance at which both rows meet or cross, more rows than there is room for.
 */
export function stitchRows(resolved: ResolvedWish, widths: SolvedWidths): Result<StitchRows> {
  const { construction, choices, wish, path } = resolved;
  const rowsAt = (fromEdge: number): readonly StitchRow[] => construction.rows(choices, fromEdge, widths.setback);
  const between = (rows: readonly StitchRow[]): readonly [number, number] | null => {
    const top = rows.filter((row) => row.kind === "topstitch");
    if (top.length < 2) return null;
    const left = top.find((row) => row.from === "left")!.mm;
    return [left, widths.finished - top.find((row) => row.from === "right")!.mm];
  };
  const bare = between(rowsAt(0));
  if (bare === null)
    return ok({ rows: rowsAt(TRADE.topstitchFromEdge), fromEdge: TRADE.topstitchFromEdge, apart: null });
  const room = bare[1] - bare[0];
  const mostMm = (room - LEAST_APART) / 2;
  const asked = wish.stitch?.fromEdge;
  const fromEdge = asked ?? (TRADE.topstitchFromEdge <= mostMm ? TRADE.topstitchFromEdge : room / 4);
  const off: Problem = {
    code: "strap-stitch-off",
    path: `${path}stitch.fromEdge`,
    fromEdgeMm: fromEdge,
    mostMm,
    widthMm: widths.finished,
  };
  if (asked !== undefined && asked > mostMm) return failed(off);
  const rows = rowsAt(fromEdge);
  const extra = wish.stitch?.extraRows ?? 0;
  if (extra === 0) return ok({ rows, fromEdge, apart: null });
  const [left, right] = between(rows)!;
  const apart = (right - left) / (extra + 1);
  if (apart < LEAST_APART) {
    const most = Math.max(0, Math.floor((right - left) / LEAST_APART) - 1);
    return failed({
      code: "strap-choice-out-of-range",
      path: `${path}stitch.extraRows`,
      value: extra,
      least: 0,
      most,
    });
  }
  const further = Array.from(
    { length: extra },
    (_, i): StitchRow => ({ kind: "topstitch", from: "left", mm: left + (i + 1) * apart }),
  );
  return ok({ rows: [...rows, ...further], fromEdge, apart });
}
