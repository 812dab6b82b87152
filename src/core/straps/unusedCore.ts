import type { Problem } from "../problems/problem.ts";
import { CONSTRUCTIONS } from "./constructions/catalogue.ts";
import type { StrapWish } from "./strapWish.ts";

/** A cord or webbing that is asked for and that the construction has no place for, at the places named. */
export function unusedCore({ core, construction }: StrapWish, cordPath: string, webbingPath: string): Problem[] {
  const { needs } = CONSTRUCTIONS[construction];
  const unused = (role: "cord" | "webbing", path: string): Problem => {
    return { code: "strap-role-unused", path, role, construction };
  };
  return [
    ...(core?.cordDiameter !== undefined && !needs.includes("cord") ? [unused("cord", cordPath)] : []),
    ...(core?.webbingWidth !== undefined && !needs.includes("webbing") ? [unused("webbing", webbingPath)] : []),
  ];
}
