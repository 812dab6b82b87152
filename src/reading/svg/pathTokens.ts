/**
 * Reads numbers and flags of SVG path data one after another.
 * Source: SVG 2, 9.3.9, the grammar for path data: a number ends where the next cannot go on, commas and white space
 * may stand between, flags of an arc are one digit each and may be glued together.
 */
export class PathTokens {
  readonly #text: string;
  at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  get isDone(): boolean {
    this.skipSpace();
    return this.at >= this.#text.length;
  }

  skipSpace(): void {
    while (isSpace(this.#text.charCodeAt(this.at))) this.at++;
  }

  /** A command letter, or an empty text when something else stands here. */
  command(): string {
    this.skipSpace();
    const letter = this.#text[this.at] ?? "";
    if (!/^[MmZzLlHhVvCcSsQqTtAa]$/u.test(letter)) return "";
    this.at++;
    return letter;
  }

  /** White space and at most one comma; true when there was a comma. */
  skipComma(): boolean {
    this.skipSpace();
    if (this.#text[this.at] !== ",") return false;
    this.at++;
    this.skipSpace();
    return true;
  }

  /** The number that stands here, or null; nothing is read then. */
  number(): number | null {
    NUMBER.lastIndex = this.at;
    const found = NUMBER.exec(this.#text);
    if (found === null) return null;
    this.at += found[0].length;
    return Number(found[0]);
  }

  /** `0` or `1`, or null. */
  flag(): number | null {
    const digit = this.#text[this.at];
    if (digit !== "0" && digit !== "1") return null;
    this.at++;
    return Number(digit);
  }
}

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/uy;

function isSpace(code: number): boolean {
  return code === 0x20 || code === 0x9 || code === 0xa || code === 0xc || code === 0xd;
}
