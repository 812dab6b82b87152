import { type Curve, type CurvePart, quadraticPart } from "../../core/patterns/curve.ts";
import { arcByEnds } from "./arcByEnds.ts";
import { PathTokens } from "./pathTokens.ts";

/** The lines of a path, and how far it could be read when something in it is wrong. */
export interface PathLines {
  readonly curves: readonly Curve[];
  /** Characters into the data of the first fault; null when there is none. */
  readonly brokenAt: number | null;
}

/** How many numbers follow each command. */
const COUNTS: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7 };

/**
 * The lines of SVG path data in its own coordinates. As the standard wants it, a faulty path is drawn up to the
 * command with the fault.
 * Source: SVG 2, 9.3 (path data) and 9.5.4 (error handling).
 */
export function pathData(text: string): PathLines {
  const tokens = new PathTokens(text);
  const pen = new Pen();
  let first = true;
  while (!tokens.isDone) {
    const start = tokens.at;
    const letter = tokens.command();
    if (letter === "" || (first && letter !== "M" && letter !== "m"))
      return { curves: pen.finished(), brokenAt: start };
    first = false;
    if (letter === "z" || letter === "Z") pen.close();
    else if (!readRuns(letter, tokens, pen)) return { curves: pen.finished(), brokenAt: tokens.at };
  }
  return { curves: pen.finished(), brokenAt: null };
}

/** A command and its repeats; false when a number is missing. */
function readRuns(letter: string, tokens: PathTokens, pen: Pen): boolean {
  let command = letter;
  const kind = letter.toLowerCase();
  const numbers: number[] = [];
  let more = true;
  tokens.skipSpace();
  for (let run = 0; more; run++) {
    numbers.length = 0;
    for (let i = 0; i < COUNTS[kind]!; i++) {
      if (i > 0) tokens.skipComma();
      const value = kind === "a" && (i === 3 || i === 4) ? tokens.flag() : tokens.number();
      if (value === null) return false;
      numbers.push(value);
    }
    if (run === 1 && kind === "m") command = letter === "m" ? "l" : "L";
    pen.draw(command, numbers);
    const comma = tokens.skipComma();
    const at = tokens.at;
    more = tokens.number() !== null;
    tokens.at = at;
    // After a comma another number has to come.
    if (comma && !more) return false;
  }
  return true;
}

/** Follows the commands; keeps what "smooth" and "relative" refer to. */
class Pen {
  readonly #done: Curve[] = [];
  #parts: CurvePart[] = [];
  #startX = 0;
  #startY = 0;
  #x = 0;
  #y = 0;
  /** Last handle of the curve before, for S (cubic) and T (quadratic). */
  #handleX = 0;
  #handleY = 0;
  #handleOf = "";

  draw(command: string, n: readonly number[]): void {
    const kind = command.toLowerCase();
    const isRelative = command === kind;
    const ox = isRelative ? this.#x : 0;
    const oy = isRelative ? this.#y : 0;
    const at = (i: number): [number, number] => [ox + n[i]!, oy + n[i + 1]!];
    if (kind === "m") this.#moveTo(...at(0));
    else if (kind === "l") this.#add({ kind: "straight", x: ox + n[0]!, y: oy + n[1]! });
    else if (kind === "h") this.#add({ kind: "straight", x: ox + n[0]!, y: this.#y });
    else if (kind === "v") this.#add({ kind: "straight", x: this.#x, y: oy + n[0]! });
    else if (kind === "c") this.#cubic(at(0), at(2), at(4));
    else if (kind === "s") this.#cubic(this.#mirrored("c"), at(0), at(2));
    else if (kind === "q") this.#quadratic(at(0), at(2));
    else if (kind === "t") this.#quadratic(this.#mirrored("q"), at(0));
    else {
      const [x, y] = at(5);
      const part = arcByEnds(this.#x, this.#y, [n[0]!, n[1]!], n[2]!, n[3] === 1, n[4] === 1, x, y);
      if (part) this.#add(part);
    }
  }

  close(): void {
    if (this.#parts.length > 0) this.#finish(true);
    this.#x = this.#startX;
    this.#y = this.#startY;
    this.#handleOf = "";
  }

  finished(): readonly Curve[] {
    this.#finish(false);
    return this.#done;
  }

  #moveTo(x: number, y: number): void {
    this.#finish(false);
    this.#x = x;
    this.#y = y;
    this.#startX = x;
    this.#startY = y;
    this.#handleOf = "";
  }

  #add(part: CurvePart): void {
    this.#parts.push(part);
    this.#x = part.x;
    this.#y = part.y;
    this.#handleOf = "";
  }

  #cubic([x1, y1]: Pair, [x2, y2]: Pair, [x, y]: Pair): void {
    this.#add({ kind: "bezier", x1, y1, x2, y2, x, y });
    this.#keepHandle("c", x2, y2);
  }

  #quadratic([x1, y1]: Pair, [x, y]: Pair): void {
    this.#add(quadraticPart(this.#x, this.#y, x1, y1, x, y));
    this.#keepHandle("q", x1, y1);
  }

  #keepHandle(of: string, x: number, y: number): void {
    this.#handleOf = of;
    this.#handleX = x;
    this.#handleY = y;
  }

  /** The handle before, mirrored at the pen; the pen itself after any other command. */
  #mirrored(of: string): Pair {
    if (this.#handleOf !== of) return [this.#x, this.#y];
    return [2 * this.#x - this.#handleX, 2 * this.#y - this.#handleY];
  }

  #finish(closed: boolean): void {
    if (this.#parts.length > 0) this.#done.push({ x: this.#startX, y: this.#startY, parts: this.#parts, closed });
    this.#parts = [];
  }
}

type Pair = readonly [number, number];
