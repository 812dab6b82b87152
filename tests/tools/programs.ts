import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PNG } from "pngjs";

/** A fresh folder for one test. */
export function freshFolder(): string {
  return mkdtempSync(join(tmpdir(), "laywright-outside-"));
}

/** Writes a file into a fresh folder and returns its path. */
export function passingFile(name: string, data: string | Uint8Array): string {
  const path = join(freshFolder(), name);
  writeFileSync(path, data);
  return path;
}

/** Every file below a folder and its bytes, in base64. */
export function bytesIn(out: string): Record<string, string> {
  const names = readdirSync(out, { recursive: true, encoding: "utf8" }).sort();
  return Object.fromEntries(
    names
      .filter((name) => statSync(join(out, name)).isFile())
      .map((name) => [name, readFileSync(join(out, name), "base64")]),
  );
}

/** Runs a program and returns what it said on stdout; throws when it fails. */
export function run(program: string, args: readonly string[]): string {
  return execFileSync(program, args, { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"], maxBuffer: 1 << 28 });
}

/** A grey picture: 0 black … 255 white. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A binary PGM file of 256 greys, as poppler writes it. */
export function readPgm(path: string): Grey {
  const bytes = readFileSync(path);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/u.exec(bytes.subarray(0, 40).toString("latin1"));
  if (!head) throw new Error(`${path}: not a PGM file`);
  return { width: Number(head[1]), height: Number(head[2]), data: bytes.subarray(head[0].length) };
}

/** A PNG file as grey, over white. */
export function readPng(path: string): Grey {
  const { width, height, data } = PNG.sync.read(readFileSync(path));
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) {
    const alpha = data[4 * i + 3]! / 255;
    const light = (data[4 * i]! + data[4 * i + 1]! + data[4 * i + 2]!) / 3;
    grey[i] = light * alpha + 255 * (1 - alpha);
  }
  return { width, height, data: grey };
}

/**
 * Centre of the dark line that crosses a short window, in pixels: the window runs along x (`"x"`) or y (`"y"`) from
 * `from` to `to` at `across` on the other axis; each pixel weighs by its darkness. NaN when there is no line.
 */
export function lineCentre(picture: Grey, axis: "x" | "y", from: number, to: number, across: number): number {
  let mass = 0;
  let moment = 0;
  for (let i = Math.round(from); i <= Math.round(to); i++) {
    const [x, y] = axis === "x" ? [i, Math.round(across)] : [Math.round(across), i];
    const dark = 255 - picture.data[y * picture.width + x]!;
    mass += dark;
    moment += dark * (i + 0.5);
  }
  return mass === 0 ? Number.NaN : moment / mass;
}
