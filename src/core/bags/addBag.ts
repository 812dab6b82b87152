import type { Measure } from "../panels/measure.ts";
import { mapMeasures } from "../panels/panelMeasures.ts";
import type { SeamEdge } from "../panels/seams.ts";
import type { Project } from "../project/project.ts";
import type { PanelWords } from "../words/panelWords.ts";
import type { BagWish } from "./bagWish.ts";
import { startBag } from "./startBag.ts";

/**
 * A project with the parts of a bag besides its own: new ids and, where a name is there already, the bag's name behind
 * it; its panels follow measures of their own. What is there stays as it is, pins too. In a project without parts it is
 * the bag itself.
 */
export function addBag(project: Project, wish: BagWish, words: PanelWords, bag: string): Project {
  const isEmpty = project.straps.length + project.panels.length === 0;
  if (isEmpty) return startBag(project, wish, words);
  const made = startBag({ ...project, straps: [], panels: [], seams: [], pins: [], measures: [] }, wish, words);
  const parts = [...project.straps, ...project.panels];
  const stocks = made.materials.flatMap(({ stock }) => stock);
  const ids = new Set([...parts, ...made.materials, ...stocks, ...(project.supplies ?? [])].map(({ id }) => id));
  const names = new Set(parts.map(({ name }) => name));
  const measureIds = new Set(project.measures?.map(({ id }) => id));
  const measureNames = new Set(project.measures?.map(({ name }) => name));
  const partIds = new Map([...made.straps, ...made.panels].map(({ id }) => [id, fresh(id, ids)] as const));
  const ownIds = new Map(made.measures?.map(({ id }) => [id, fresh(id, measureIds)] as const));
  const named = ({ id, name }: { readonly id: string; readonly name: string }) => ({
    id: partIds.get(id)!,
    name: freshName(name, bag, names),
  });
  /** A measure that follows what its own are called now. */
  const renamed = (measure: Measure): Measure =>
    typeof measure === "number"
      ? measure
      : measure.map((term) => {
          if (typeof term === "number") return term;
          return term.of === undefined
            ? { ...term, measure: ownIds.get(term.measure)! }
            : { ...term, of: partIds.get(term.of)! };
        });
  const edges = (list: readonly SeamEdge[]) => list.map((edge) => ({ ...edge, panel: partIds.get(edge.panel)! }));
  return {
    ...project,
    materials: made.materials,
    straps: [...project.straps, ...made.straps.map((strap) => ({ ...strap, ...named(strap) }))],
    panels: [
      ...project.panels,
      ...made.panels.map((panel) => ({ ...mapMeasures(panel, renamed), ...named(panel) })),
    ],
    measures: [
      ...(project.measures ?? []),
      ...(made.measures ?? []).map(({ id, name, length }) => ({
        id: ownIds.get(id)!,
        name: freshName(name, bag, measureNames),
        length,
      })),
    ],
    seams: [
      ...(project.seams ?? []),
      ...(made.seams ?? []).map((seam) => ({
        ...seam,
        first: edges(seam.first),
        second: edges(seam.second),
      })),
    ],
  };
}

/** An id that nothing has yet, taken at once. */
function fresh(id: string, taken: Set<string>): string {
  let own = id;
  for (let n = 2; taken.has(own); n++) own = `${id}-${n}`;
  taken.add(own);
  return own;
}

/** A name that nothing has yet, with the bag's behind it where it is there already. */
function freshName(name: string, bag: string, taken: Set<string>): string {
  let own = name;
  for (let n = 1; taken.has(own); n++) own = n === 1 ? `${name} (${bag})` : `${name} (${bag} ${n})`;
  taken.add(own);
  return own;
}
