import type { BatchProblem } from "../problems/batchProblems.ts";
import type { Problem } from "../problems/problem.ts";
import { pathText, shortJson } from "../project/file/issues.ts";
import { type Column, columnsOf, type Template, valueAt, withValue } from "./columns.ts";
import type { OrderTable, RowProblem, TableRow } from "./orderTable.ts";

/** One order of a batch. */
export interface Order {
  readonly row: number;
  /** Unique in the batch. */
  readonly name: string;
  /** Year, month, day. */
  readonly due: string | null;
  /** Colour or dye lot of its cloth: different shades never lie together. */
  readonly shade: string | null;
  /** What is wrong with its own words: then it is not laid. */
  readonly faults: readonly RowProblem[];
  /** The project file of this order. Made anew each time, so that ten thousand orders need no room. */
  text(): string;
  /** The column that a problem of that file comes from, or null. */
  columnOf(problem: Problem): string | null;
}

/** The orders of a table, and what is wrong with it. */
export interface OrderList {
  /** Every row that names an order; what it says of the template is not looked at yet. */
  readonly orders: readonly Order[];
  /** Of the heads, and of rows that name no order. */
  readonly problems: readonly RowProblem[];
  /** Whether every head names something: if not, no order can be trusted. */
  readonly headsSound: boolean;
}

/**
 * The orders of a table. A cell takes the place of a value of the template; an empty cell leaves it as it is.
 * Errors: every problem of every head and row, all at once.
 */
export function ordersOf(template: Template, table: OrderTable): OrderList {
  const columns = columnsOf(template, table.heads);
  const problems: RowProblem[] = columns.flatMap((column) =>
    "code" in column ? [{ row: null, column: column.path, problem: column }] : [],
  );
  const sound = columns.map((column) => ("code" in column ? null : column));
  const nameAt = sound.findIndex((column) => column?.of === "order");
  if (nameAt < 0) problems.push(whole({ code: "order-column-missing", path: "" }));
  const headsSound = problems.length === 0;
  const rows = table.rows.filter(({ cells }) => cells.some((cell) => !isEmpty(cell)));
  if (rows.length === 0) problems.push(whole({ code: "orders-empty", path: "" }));
  const rowOf = new Map<string, number>();
  const orders: Order[] = [];
  for (const row of rows) {
    const name = nameAt < 0 ? "" : words(row.cells[nameAt]);
    const faults = rowFaults(row, sound, rowOf);
    if (rowOf.get(name) === row.row) orders.push(orderOf(template, row, sound, faults));
    else problems.push(...faults);
  }
  return { orders, problems, headsSound };
}

function whole(problem: BatchProblem): RowProblem {
  return { row: null, column: null, problem };
}

function rowFaults(
  { row, cells }: TableRow,
  columns: readonly (Column | null)[],
  rowOf: Map<string, number>,
): RowProblem[] {
  const faults: RowProblem[] = [];
  const tell = (column: string | null, problem: BatchProblem): void => void faults.push({ row, column, problem });
  const count = cells.findLastIndex((cell) => !isEmpty(cell)) + 1;
  if (count > columns.length) tell(null, { code: "order-too-many-cells", path: "", count, most: columns.length });
  for (const [i, column] of columns.entries()) {
    if (column === null || column.of === "place") continue;
    const text = words(cells[i]);
    if (column.of === "order") {
      const firstRow = rowOf.get(text);
      if (text === "") tell(column.head, { code: "order-nameless", path: "" });
      else if (firstRow !== undefined)
        tell(column.head, { code: "order-name-twice", path: "", name: text, firstRow });
      else rowOf.set(text, row);
    }
    if (column.of === "due" && text !== "" && !isDate(text))
      tell(column.head, { code: "due-unreadable", path: "", value: text });
  }
  return faults;
}

function orderOf(
  template: Template,
  { row, cells }: TableRow,
  columns: readonly (Column | null)[],
  faults: readonly RowProblem[],
): Order {
  const own = (of: "order" | "due" | "shade"): string =>
    words(cells[columns.findIndex((column) => column?.of === of)]);
  const name = own("order");
  const places = columns.flatMap((column, i) =>
    column?.of === "place" && !isEmpty(cells[i]) ? [{ ...column, cell: cells[i] }] : [],
  );
  return {
    row,
    name,
    due: own("due") || null,
    shade: own("shade") || null,
    faults,
    text: () => {
      let data: unknown = { ...template, name: `${words(template["name"])}, ${name}`.slice(0, LONGEST_NAME) };
      for (const { place, cell } of places)
        data = withValue(data, place, cellValue(cell, valueAt(template, place)));
      return JSON.stringify(data);
    },
    columnOf: ({ path }) => {
      const within = places.find(({ place }) => {
        const at = pathText(place);
        return path === at || path.startsWith(`${at}.`) || path.startsWith(`${at}[`);
      });
      return within?.head ?? null;
    },
  };
}

/** As many characters as a project's name may have. */
const LONGEST_NAME = 200;

/** What a cell says in place of `before`: a spreadsheet knows text only. */
function cellValue(cell: unknown, before: unknown): unknown {
  if (typeof cell !== "string") return cell;
  const text = cell.trim();
  if (typeof before === "string") return text;
  if (/^(?:true|yes|ja)$/iu.test(text)) return true;
  if (/^(?:false|no|nein)$/iu.test(text)) return false;
  return /^-?\d+(?:\.\d+)?$/u.test(text) ? Number(text) : text;
}

function isEmpty(cell: unknown): boolean {
  return cell === undefined || cell === null || (typeof cell === "string" && cell.trim() === "");
}

/** Text of a cell; a number of a JSON table as people write it. */
function words(cell: unknown): string {
  if (isEmpty(cell)) return "";
  return typeof cell === "string" ? cell.trim() : shortJson(cell);
}

/** A day of the calendar as ISO 8601-1:2019 writes it in full (5.2.2.1). */
function isDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text)?.map(Number) ?? [];
  if (year === undefined || month === undefined || day === undefined) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}
