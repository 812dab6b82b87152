import { findNodeAtLocation, type Node, parseTree } from "jsonc-parser";

/** What can stand in a project file. */
export type FileValue =
  | string
  | number
  | boolean
  | null
  | readonly FileValue[]
  | { readonly [key: string]: FileValue };

/** One change of a project file: what is to stand at a place, in the file's own words. A list takes one more at its end. */
export interface FileEdit {
  readonly path: readonly (string | number)[];
  readonly value: FileValue;
}

/** Values up to this long are written on one line. */
const ONE_LINE = 90;

/**
 * The text of a project file with some values set, every other byte kept: units, order, blanks, line ends, unknown keys.
 * Groups that a path names and the file lacks are made; what is put in looks like what stands beside it.
 *
 * Errors: RangeError when the text is no JSON or a path leads through a plain value.
 * Cost:   O(edits × text).
 */
export function editedText(text: string, edits: readonly FileEdit[]): string {
  return edits.reduce(withEdit, text);
}

function withEdit(text: string, { path, value }: FileEdit): string {
  const mark = text.startsWith("\ufeff") ? "\ufeff" : "";
  const body = text.slice(mark.length);
  const root = parseTree(body);
  if (root === undefined) throw new RangeError("editedText: the text is no JSON");
  const there = path.length === 0 ? root : findNodeAtLocation(root, [...path]);
  const changed = there === undefined ? putIn(body, root, path, value) : setAt(body, there, value);
  return mark + changed;
}

function setAt(text: string, { offset, length }: Node, value: FileValue): string {
  const written = valueText(value, lineOf(text, offset));
  // What already says the same is left as it is written.
  if (same(text.slice(offset, offset + length), written)) return text;
  return text.slice(0, offset) + written + text.slice(offset + length);
}

function same(a: string, b: string): boolean {
  return JSON.stringify(JSON.parse(a)) === JSON.stringify(JSON.parse(b));
}

function putIn(text: string, root: Node, path: readonly (string | number)[], value: FileValue): string {
  let depth = path.length - 1;
  while (depth > 0 && findNodeAtLocation(root, path.slice(0, depth)) === undefined) depth--;
  const parent = depth === 0 ? root : findNodeAtLocation(root, path.slice(0, depth))!;
  if (parent.type !== "object" && parent.type !== "array")
    throw new RangeError(`editedText: ${path.join(".")} leads through a plain value`);
  // Groups that are not there yet are made round the value, from the inside out.
  const whole = path.slice(depth + 1).reduceRight((inner: FileValue, key) => ({ [key]: inner }), value);
  const key = parent.type === "object" ? `${JSON.stringify(path[depth])}: ` : "";
  const members = parent.children ?? [];
  const last = members.at(-1);
  if (last === undefined) {
    const open = parent.offset + 1;
    const line = lineOf(text, parent.offset);
    const inner = { ...line, indent: line.indent + line.step };
    const put = `${line.end}${inner.indent}${key}${valueText(whole, inner)}${line.end}${line.indent}`;
    return text.slice(0, open) + put + text.slice(parent.offset + parent.length - 1);
  }
  const end = last.offset + last.length;
  const line = lineOf(text, last.offset);
  // Members that stand in one line stay in one line.
  const between = line.starts ? `,${line.end}${line.indent}` : ", ";
  return `${text.slice(0, end)}${between}${key}${valueText(whole, line)}${text.slice(end)}`;
}

/** How the text is laid out round a place in it. */
interface Line {
  /** The place is the first thing in its line. */
  readonly starts: boolean;
  readonly indent: string;
  /** One step of indentation, as the file has it. */
  readonly step: string;
  /** Line end, as the file has it. */
  readonly end: string;
}

function lineOf(text: string, offset: number): Line {
  const from = text.lastIndexOf("\n", offset - 1) + 1;
  const indent = /^[ \t]*/u.exec(text.slice(from, offset))![0];
  const step = /\n([ \t]+)\S/u.exec(text)?.[1] ?? "  ";
  return {
    starts: from + indent.length === offset && from > 0,
    indent,
    step,
    end: text.includes("\r\n") ? "\r\n" : "\n",
  };
}

/** Short values on one line with blanks, as people write them; longer ones in rows. */
function valueText(value: FileValue, { indent, step, end }: Line): string {
  const rows = JSON.stringify(value, null, 1).split("\n");
  const short = rows
    .map((row) => row.trim())
    .join(" ")
    .replaceAll("[ ", "[")
    .replaceAll(" ]", "]");
  if (short.length <= ONE_LINE && same(short, JSON.stringify(value))) return short;
  return JSON.stringify(value, null, step).replaceAll("\n", `${end}${indent}`);
}
