import { unreadable } from "../readingEnds.ts";

/** One group of a DXF file: its code says what the value means. */
export interface Group {
  readonly code: number;
  readonly value: string;
}

/** An entity, table entry or header variable: its kind and the groups that follow it. */
export interface DxfRecord {
  readonly kind: string;
  readonly groups: readonly Group[];
}

/** A section by its name, as the records it holds. */
export interface DxfSection {
  readonly name: string;
  readonly records: readonly DxfRecord[];
}

const MOST_RECORDS = 400_000;

/**
 * The sections of a text DXF. Errors: `ReadingEnds` when groups are not pairs of lines, or a section does not end.
 * Source: DXF reference, "Group code/value pairs" and "File structure".
 */
export function dxfSections(text: string): readonly DxfSection[] {
  const sections: DxfSection[] = [];
  let records: DxfRecord[] | null = null;
  let groups: Group[] = [];
  let count = 0;
  for (const { code, value, line } of groupsOf(text)) {
    if (code !== 0) {
      groups.push({ code, value });
      continue;
    }
    groups = [];
    if (value === "EOF") return records === null ? sections : unreadable("damaged", line);
    if (value === "SECTION") {
      records = [];
      // Its name is the first group that follows; read from the record of the section itself.
      records.push({ kind: value, groups });
    } else if (value === "ENDSEC") {
      if (records === null) unreadable("not-dxf", line);
      sections.push(sectionOf(records));
      records = null;
    } else if (records !== null) {
      if (++count > MOST_RECORDS) unreadable("damaged", line);
      records.push({ kind: value, groups });
    }
  }
  // Old writers leave the end of the file out, never that of a section.
  return records === null && sections.length > 0 ? sections : unreadable("damaged");
}

function sectionOf([head, ...records]: readonly DxfRecord[]): DxfSection {
  const name = head!.groups.find(({ code }) => code === 2)?.value ?? "";
  // The header is one run of groups: a variable's name and its values.
  return { name, records: name === "HEADER" ? variables(head!.groups) : records };
}

function variables(groups: readonly Group[]): readonly DxfRecord[] {
  const records: { kind: string; groups: Group[] }[] = [];
  for (const group of groups) {
    if (group.code === 9) records.push({ kind: group.value, groups: [] });
    else records.at(-1)?.groups.push(group);
  }
  return records;
}

function* groupsOf(text: string): Generator<Group & { readonly line: number }> {
  let at = 0;
  let line = 0;
  const next = (): string | null => {
    if (at >= text.length) return null;
    const end = text.indexOf("\n", at);
    const found = text.slice(at, end < 0 ? text.length : end);
    at = end < 0 ? text.length : end + 1;
    line++;
    return found.endsWith("\r") ? found.slice(0, -1) : found;
  };
  for (let head = next(); head !== null; head = next()) {
    if (head.trim() === "" && at >= text.length) return;
    if (!/^\s*-?\d{1,4}\s*$/u.test(head)) unreadable("not-dxf", line);
    const value = next();
    if (value === null) return unreadable("damaged", line);
    const code = Number(head);
    // Comments say nothing.
    if (code !== 999) yield { code, value: code === 0 || code === 9 || code === 2 ? value.trim() : value, line };
  }
}

/** The first value of a code as text. */
export function textOf({ groups }: DxfRecord, code: number): string | undefined {
  return groups.find((group) => group.code === code)?.value;
}

/** The first value of a code as a number; `otherwise` when it is not there. NaN when it is there and no number. */
export function numberOf(record: DxfRecord, code: number, otherwise = 0): number {
  const text = textOf(record, code);
  return text === undefined ? otherwise : numberIn(text);
}

/** A number as DXF writes it; NaN for anything else. */
function numberIn(text: string): number {
  const trimmed = text.trim();
  return /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eEdD][-+]?\d+)?$/u.test(trimmed)
    ? Number(trimmed.replace(/[dD]/u, "e"))
    : Number.NaN;
}

/** Every value of a code, in order, as numbers. */
export function numbersOf({ groups }: DxfRecord, code: number): number[] {
  return groups.filter((group) => group.code === code).map(({ value }) => numberIn(value));
}
