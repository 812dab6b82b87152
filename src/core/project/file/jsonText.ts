import type { JsonFaultReason } from "../../problems/fileProblems.ts";

/** The first fault in a JSON text, or the keys that an object holds twice (of which JSON would keep the last). */
export interface JsonScan {
  readonly fault: { readonly reason: JsonFaultReason; readonly offset: number } | null;
  readonly repeatedKeys: readonly { readonly path: readonly (string | number)[]; readonly key: string }[];
}

interface Frame {
  /** Keys seen so far in an object; null in a list. */
  readonly keys: Set<string> | null;
  key: string;
  /** −1 before the first member. */
  index: number;
}

const SPACE = /[ \t\n\r]*/uy;
// biome-ignore lint/suspicious/noControlCharactersInRegex: RFC 8259 forbids them unescaped
const PLAIN_TEXT = /[^"\\\u0000-\u001f]*/uy;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/uy;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/uy;
const WORD = /true|false|null/uy;

class Fault extends Error {
  readonly reason: JsonFaultReason;

  constructor(reason: JsonFaultReason) {
    super(reason);
    this.reason = reason;
  }
}

/**
 * Reads a JSON text (RFC 8259) without building it, to say where and why it is broken, where a key is given twice,
 * and that it is not nested deeper than `maxDepth`. Does not recurse. Cost O(n).
 */
export function scanJson(text: string, maxDepth: number): JsonScan {
  const scanner = new Scanner(text, maxDepth);
  try {
    scanner.run();
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return { fault: { reason: error.reason, offset: scanner.at }, repeatedKeys: scanner.repeatedKeys };
  }
  return { fault: null, repeatedKeys: scanner.repeatedKeys };
}

class Scanner {
  at = 0;
  readonly repeatedKeys: { path: (string | number)[]; key: string }[] = [];
  readonly #text: string;
  readonly #maxDepth: number;
  readonly #frames: Frame[] = [];

  constructor(text: string, maxDepth: number) {
    this.#text = text;
    this.#maxDepth = maxDepth;
  }

  run(): void {
    this.#value();
    while (this.#frames.length > 0) this.#next();
    this.#take(SPACE);
    if (this.at < this.#text.length) throw new Fault("more-after-end");
  }

  /** One value; an object or a list is only opened. */
  #value(): void {
    this.#take(SPACE);
    const sign = this.#text[this.at];
    if (sign === undefined) throw new Fault("ended-early");
    if (sign === "{" || sign === "[") this.#open(sign);
    else if (sign === '"') this.#string();
    else if (this.#take(NUMBER) !== "") this.#endOfNumber();
    else if (this.#take(WORD) === "") throw new Fault(/[-+.\d]/u.test(sign) ? "bad-number" : "value-expected");
  }

  #open(sign: "{" | "["): void {
    if (this.#frames.length === this.#maxDepth) throw new Fault("too-deep");
    this.at++;
    this.#frames.push({ keys: sign === "{" ? new Set() : null, key: "", index: -1 });
  }

  /** The next member of the innermost object or list, or its end. */
  #next(): void {
    const frame = this.#frames.at(-1)!;
    if (this.#closes()) {
      this.#close();
      return;
    }
    if (this.at >= this.#text.length) throw new Fault("ended-early");
    if (frame.index++ >= 0) this.#comma();
    if (frame.keys !== null) this.#key(frame, frame.keys);
    this.#value();
  }

  #comma(): void {
    if (this.#text[this.at] !== ",") throw new Fault("comma-expected");
    this.at++;
    if (this.#closes()) throw new Fault("comma-too-many");
  }

  #key(frame: Frame, seen: Set<string>): void {
    this.#take(SPACE);
    if (this.at >= this.#text.length) throw new Fault("ended-early");
    if (this.#text[this.at] === ",") throw new Fault("comma-too-many");
    if (this.#text[this.at] !== '"') throw new Fault("key-expected");
    frame.key = JSON.parse(this.#string()) as string;
    if (seen.has(frame.key)) {
      const path = this.#frames.slice(0, -1).map(({ keys, key, index }) => (keys === null ? index : key));
      this.repeatedKeys.push({ path, key: frame.key });
    }
    seen.add(frame.key);
    this.#take(SPACE);
    if (this.at >= this.#text.length) throw new Fault("ended-early");
    if (this.#text[this.at] !== ":") throw new Fault("colon-expected");
    this.at++;
  }

  #closes(): boolean {
    this.#take(SPACE);
    return this.#text[this.at] === (this.#frames.at(-1)!.keys === null ? "]" : "}");
  }

  #close(): void {
    this.at++;
    this.#frames.pop();
  }

  /** A text with its quotes. Step by step: as one expression, a text without its end would be tried 2ⁿ ways. */
  #string(): string {
    const start = this.at;
    this.at++;
    do this.#take(PLAIN_TEXT);
    while (this.#take(ESCAPE) !== "");
    const hasEnd = this.#text[this.at] === '"';
    const end = this.at + 1;
    if (!hasEnd) {
      this.at = start;
      throw new Fault("bad-text");
    }
    this.at = end;
    return this.#text.slice(start, end);
  }

  #endOfNumber(): void {
    if (/[-+.\w]/u.test(this.#text[this.at] ?? " ")) throw new Fault("bad-number");
  }

  #take(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    const taken = pattern.exec(this.#text)?.[0] ?? "";
    this.at += taken.length;
    return taken;
  }
}
