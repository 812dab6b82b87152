import { parse } from "csv-parse/sync";
import { type OrderTable, tableOfGroups } from "../../core/batch/orderTable.ts";
import type { BatchProblem } from "../../core/problems/batchProblems.ts";

/**
 * A table of orders from its text: JSON where it starts like JSON, else comma-separated values (RFC 4180) under one row
 * of heads, with commas, semicolons or tabs between the cells, whichever the heads have most of.
 */
export function readOrders(text: string): OrderTable | BatchProblem {
  return /^\s*[[{]/u.test(text) ? readGroups(text) : readCsv(text);
}

function readGroups(text: string): OrderTable | BatchProblem {
  try {
    return tableOfGroups(JSON.parse(text)) ?? { code: "orders-not-a-list", path: "" };
  } catch {
    return { code: "orders-not-a-list", path: "" };
  }
}

function readCsv(text: string): OrderTable | BatchProblem {
  let records: string[][];
  try {
    records = parse(text, { bom: true, delimiter: delimiterOf(text), relax_column_count: true });
  } catch (error) {
    const { lines } = error as { lines?: number };
    if (lines === undefined) throw error;
    return { code: "orders-unreadable", path: "", line: lines };
  }
  const at = records.findIndex((cells) => cells.some((cell) => cell.trim() !== ""));
  if (at < 0) return { code: "orders-empty", path: "" };
  const heads = records[at]!;
  // Spreadsheets leave empty columns behind.
  while (heads.at(-1)?.trim() === "") heads.pop();
  return { heads, rows: records.map((cells, i) => ({ row: i + 1, cells })).slice(at + 1) };
}

function delimiterOf(text: string): string {
  const heads = (text.split("\n").find((line) => line.trim() !== "") ?? "").replace(/"[^"]*"/gu, "");
  const count = (sign: string): number => heads.split(sign).length;
  return [",", ";", "\t"].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
