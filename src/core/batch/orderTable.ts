import type { Problem } from "../problems/problem.ts";

/** A table of orders as it stands in its file. */
export interface OrderTable {
  readonly heads: readonly string[];
  readonly rows: readonly TableRow[];
}

/** One row; a cell is text, or any JSON value where the table came as JSON. `undefined` where nothing stands. */
export interface TableRow {
  /** As the file numbers it for people: of a spreadsheet the heads are row 1, of a list the first group is 1. */
  readonly row: number;
  readonly cells: readonly unknown[];
}

/** A problem of a table: in which row and under which head; null for the heads themselves, and for the whole row. */
export interface RowProblem {
  readonly row: number | null;
  readonly column: string | null;
  readonly problem: Problem;
}

/** Lists of groups as a table: every key of any group is a head. Null when it is no such list. */
export function tableOfGroups(data: unknown): OrderTable | null {
  if (!Array.isArray(data) || !data.every(isGroup)) return null;
  const heads = [...new Set(data.flatMap((group) => Object.keys(group)))];
  const rows = data.map((group, i) => ({
    row: i + 1,
    cells: heads.map((head) => (Object.hasOwn(group, head) ? group[head] : undefined)),
  }));
  return { heads, rows };
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
