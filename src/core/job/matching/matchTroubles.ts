import { nearestWord } from "../../problems/nearestWord.ts";
import type { Problem } from "../../problems/problem.ts";
import type { CutList } from "../../project/cutList.ts";
import type { Project } from "../../project/project.ts";
import { matchingOf } from "./matching.ts";

/** Matches of a project that cannot be kept: each is left out of the lay, and told. */
export function matchTroubles(project: Project, { pieces }: CutList): Problem[] {
  const { matches = [], centred = [], materials } = project;
  if (matches.length === 0 && centred.length === 0) return [];
  const known = [...project.panels, ...project.straps].map(({ id }) => id);
  const clothsOf = (part: string): Set<string> =>
    new Set(pieces.filter(({ partId }) => partId === part).map(({ materialId }) => materialId));
  const apart = matches.flatMap(({ first, second }, i): Problem[] => {
    const [one, other] = [clothsOf(first.panel), clothsOf(second.panel)];
    if (one.size === 0 || other.size === 0 || [...one].some((id) => other.has(id))) return [];
    return [{ code: "match-no-common-cloth", path: `matches[${i}]`, first: first.panel, second: second.panel }];
  });
  const unknown = centred.flatMap(({ part }, i): Problem[] =>
    known.includes(part)
      ? []
      : [{ code: "unknown-part", path: `centred[${i}].part`, id: part, nearest: nearestWord(part, known), known }],
  );
  const unkept = materials.flatMap((material): Problem[] => {
    const cut = pieces.filter(({ materialId }) => materialId === material.id);
    const matching = matchingOf(project, material, cut);
    return [...(matching?.problems ?? [])];
  });
  return [...apart, ...unknown, ...unkept];
}
