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
