import type { Contour } from "../../geometry/contour.ts";
import { signedArea } from "../../geometry/ring.ts";

/** What stands in a file; keys that are undefined are left out. */
export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

/** How a length is put down in the file. */
export type Say = (mm: number) => string | number;

/** Corners of an outline or a line, with the bows of its arcs. */
export function pointsJson({ vertices }: Contour, say: Say): Json {
  const n = vertices.length / 3;
  // Bows are told from the polygon of the corners, as they are read.
  const side = signedArea(vertices.filter((_, i) => i % 3 !== 2)) < 0 ? -1 : 1;
  return Array.from({ length: n }, (_, i) => {
    const [x, y, bulge] = vertices.slice(3 * i, 3 * i + 3) as unknown as [number, number, number];
    const next = 3 * ((i + 1) % n);
    const bow = (side * bulge * Math.hypot(vertices[next]! - x, vertices[next + 1]! - y)) / 2;
    return bulge === 0 ? [say(x), say(y)] : [say(x), say(y), say(Number(bow.toPrecision(15)))];
  });
}
