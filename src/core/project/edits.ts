import type { Material } from "../materials/material.ts";
import { USUAL_MATERIALS } from "../materials/usualMaterials.ts";
import { followedBy, type Measure } from "../panels/measure.ts";
import type { Panel } from "../panels/panel.ts";
import { mapMeasures } from "../panels/panelMeasures.ts";
import { Sizing } from "../panels/sizing.ts";
import { ok, type Result } from "../problems/problem.ts";
import type { StrapWish } from "../straps/wish/strapWish.ts";
import { readProject } from "./file/readProject.ts";
import { writeProject } from "./file/writeProject.ts";
import type { Project } from "./project.ts";

/**
 * The project after an edit, or why the edit is refused: what comes of it must read back from a file, or it would be
 * lost with the next start. Panels and materials that changed are kept as they are read back, so that an outline whose
 * corner was moved across it runs counter-clockwise again. An edit that changes nothing gives the very same project.
 * Cost: a few milliseconds.
 */
export function edited(project: Project, edit: (project: Project) => Project): Result<Project> {
  const next = edit(project);
  if (next === project) return ok(project);
  const read = readProject(writeProject(next));
  if (!read.ok) return read;
  return ok({
    ...next,
    panels: next.panels.map((panel, i) => (project.panels.includes(panel) ? panel : read.value.panels[i]!)),
    materials: next.materials.map((material, i) =>
      project.materials.includes(material) ? material : read.value.materials[i]!,
    ),
  });
}

/** First id of the form `roll-3` that nothing in the project has: no material, stock, strap or panel. */
export function freshIdIn({ materials, straps, panels, supplies = [] }: Project, stem: string): string {
  const taken = [...materials, ...materials.flatMap(({ stock }) => stock), ...straps, ...panels, ...supplies];
  const ids = new Set(taken.map(({ id }) => id));
  for (let n = 1; ; n++) if (!ids.has(`${stem}-${n}`)) return `${stem}-${n}`;
}

/** The project with a strap changed. Unknown ids change nothing. */
export function withStrap(project: Project, id: string, part: Partial<StrapWish>): Project {
  return { ...project, straps: patched(project.straps, id, part) };
}

/** The project with a panel changed. */
export function withPanel(project: Project, id: string, part: Partial<Panel>): Project {
  return { ...project, panels: patched(project.panels, id, part) };
}

/** The project with a material changed. */
export function withMaterial(project: Project, id: string, part: Partial<Material>): Project {
  return { ...project, materials: patched(project.materials, id, part) };
}

/** The project without a strap or panel, and without the pins of its pieces. */
export function withoutPart(project: Project, id: string, pieceIds: ReadonlySet<string>): Project {
  return {
    ...project,
    straps: project.straps.filter((strap) => strap.id !== id),
    panels: withoutPanel(project, id),
    ...(project.seams && {
      seams: project.seams.filter(({ first, second }) => ![...first, ...second].some(({ panel }) => panel === id)),
    }),
    ...(project.matches && {
      matches: project.matches.filter(({ first, second }) => first.panel !== id && second.panel !== id),
    }),
    ...(project.centred && { centred: project.centred.filter(({ part }) => part !== id) }),
    pins: project.pins.filter(({ pieceId }) => !pieceIds.has(pieceId)),
  };
}

/** The panels but for one: what follows it keeps the length it has now. */
function withoutPanel(project: Project, id: string): readonly Panel[] {
  const sizing = new Sizing(project.panels, project.measures ?? [], () => "");
  const kept = (measure: Measure): Measure =>
    followedBy(measure).some(({ of }) => of === id) ? (sizing.lengthOf(measure, "") ?? 0) : measure;
  return project.panels.filter((panel) => panel.id !== id).map((panel) => mapMeasures(panel, kept));
}

/**
 * The project with a strap or panel moved before another one of its kind (to the end with null). Straps stand before
 * panels; a part that is asked to leave its kind stays.
 */
export function withPartMoved(project: Project, id: string, before: string | null): Project {
  return {
    ...project,
    straps: movedBefore(project.straps, id, before),
    panels: movedBefore(project.panels, id, before),
  };
}

function movedBefore<T extends { readonly id: string }>(list: readonly T[], id: string, before: string | null) {
  const own = list.find((each) => each.id === id);
  if (own === undefined || id === before) return list;
  const others = list.filter((each) => each !== own);
  const at = before === null ? others.length : others.findIndex((each) => each.id === before);
  return at < 0 ? list : others.toSpliced(at, 0, own);
}

/** The project with a copy of a strap or panel right behind it. Unknown ids change nothing. */
export function withPartCopied(
  project: Project,
  id: string,
  copy: { readonly id: string; readonly name: string },
): Project {
  return {
    ...project,
    straps: project.straps.flatMap((one) => (one.id === id ? [one, { ...one, ...copy }] : [one])),
    panels: project.panels.flatMap((one) => (one.id === id ? [one, { ...one, ...copy }] : [one])),
  };
}

/** Names of the straps and panels that use a material. */
export function usersOf(project: Project, materialId: string): readonly string[] {
  const straps = project.straps.filter(({ materials }) => Object.values(materials).includes(materialId));
  const panels = project.panels.filter((panel) =>
    [panel.materialId, panel.interfacing?.materialId, panel.lining?.materialId].includes(materialId),
  );
  return [...straps, ...panels].map(({ name }) => name);
}

/** The project without a material that nothing uses; unchanged when something does, or when it is the last one. */
export function withoutMaterial(project: Project, id: string): Project {
  if (usersOf(project, id).length > 0 || project.materials.length === 1) return project;
  return {
    ...project,
    materials: project.materials.filter((material) => material.id !== id),
    pins: project.pins.filter(({ materialId }) => materialId !== id),
  };
}

/** A plain woven cotton off a roll: where every new material starts. */
export function plainMaterial(project: Project, name: string): Material {
  const inches = project.output.lengths.startsWith("in");
  return {
    id: freshIdIn(project, "material"),
    name,
    kind: USUAL_MATERIALS.cotton.kind,
    thickness: USUAL_MATERIALS.cotton.thickness,
    backing: "none",
    coating: "none",
    polymer: "none",
    grain: "either",
    oneWay: false,
    facesAlike: false,
    fold: {},
    shrinkage: { lengthwise: 0, crosswise: 0, when: "before-cutting" },
    repeat: null,
    price: null,
    gap: null,
    margin: null,
    stock: [
      {
        kind: "roll",
        id: freshIdIn(project, "roll"),
        width: inches ? 1117.6 : 1100,
        selvedge: inches ? 12.7 : 15,
        length: null,
        squaring: 0,
        flaws: [],
      },
    ],
  };
}

function patched<T extends { readonly id: string }>(
  list: readonly T[],
  id: string,
  part: Partial<T>,
): readonly T[] {
  return list.map((item) => (item.id === id ? { ...item, ...part } : item));
}
