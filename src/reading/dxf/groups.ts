import { tooMuch, unreadable } from "../readingEnds.ts";

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
  const reader = new GroupReader(text);
  while (reader.next()) {
    const { code, value, line } = reader;
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
      if (++count > MOST_RECORDS) tooMuch("lines", MOST_RECORDS);
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

/** Goes through a text pair of lines by pair of lines; a file can have millions, so that nothing is made for one. */
class GroupReader {
  code = 0;
  value = "";
  line = 0;
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  /** Reads the next pair that says something; false at the end of the text. */
  next(): boolean {
    do {
      const from = this.#at;
      if (from >= this.#text.length) return false;
      const to = this.#lineEnd();
      if (this.#at >= this.#text.length && this.#text.slice(from, to).trim() === "") return false;
      this.code = this.#codeIn(from, to);
      if (this.#at >= this.#text.length) unreadable("damaged", this.line + 1);
      const start = this.#at;
      this.value = this.#text.slice(start, this.#lineEnd());
      // Comments say nothing.
    } while (this.code === 999);
    if (this.code === 0 || this.code === 9 || this.code === 2) this.value = this.value.trim();
    return true;
  }

  /** Where the line ends that begins here; goes on behind it. */
  #lineEnd(): number {
    const found = this.#text.indexOf("\n", this.#at);
    const end = found < 0 ? this.#text.length : found;
    this.line++;
    const start = this.#at;
    this.#at = end + (found < 0 ? 0 : 1);
    return end > start && this.#text.charCodeAt(end - 1) === 13 ? end - 1 : end;
  }

  /** One to four digits, a minus before them, blanks round them. */
  #codeIn(from: number, to: number): number {
    const head = this.#text.slice(from, to);
    if (!CODE.test(head)) unreadable("not-dxf", this.line);
    return Number(head);
  }
}

const CODE = /^\s*-?\d{1,4}\s*$/u;

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
