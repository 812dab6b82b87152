import type { Io } from "../command.ts";

/** The program's own streams. Progress is a single line redrawn in place, and only where a person watches. */
export function terminalIo(): Io {
  let shown = 0;
  const clear = (): void => {
    if (shown > 0) process.stderr.write(`\r${" ".repeat(shown)}\r`);
    shown = 0;
  };
  return {
    language: "en",
    out: (text) => {
      clear();
      process.stdout.write(text);
    },
    err: (text) => {
      clear();
      process.stderr.write(text);
    },
    progress: (text) => {
      if (!process.stderr.isTTY) return;
      const line = text.slice(0, (process.stderr.columns ?? 80) - 1);
      clear();
      process.stderr.write(line);
      shown = line.length;
    },
  };
}

/** Words in rows of at most `width` characters; the first row starts with `first`, the others with `rest`. */
export function wrapRows(text: string, first: string, rest: string, width = 96): string[] {
  const rows: string[] = [];
  let row = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && row.length + 1 + word.length > width) {
      rows.push(row);
      row = rest;
      empty = true;
    }
    row += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...rows, row];
}
