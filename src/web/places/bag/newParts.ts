import type { Panel } from "../../../core/panels/panel.ts";
import type { Project } from "../../../core/project/project.ts";
import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";

/** What the straps and panels of a project are called. */
export function partNames({ straps, panels }: Project): readonly string[] {
  return [...straps, ...panels].map(({ name }) => name);
}

/** A shoulder strap to start from: folded in four, an inch wide. */
export function newStrap(project: Project, id: string, name: string): StrapWish {
  const inches = project.output.lengths.startsWith("in");
  return {
    id,
    name,
    construction: "fourfold",
    count: 1,
    width: { kind: "finished", mm: inches ? 25.4 : 25 },
    length: { kind: "finished", mm: inches ? 762 : 800 },
    materials: { outer: project.materials[0]!.id },
    ends: [{ style: "usual" }, { style: "usual" }],
  };
}

/** A body panel to start from. */
export function newPanel(project: Project, id: string, name: string): Panel {
  const inches = project.output.lengths.startsWith("in");
  return {
    id,
    name,
    materialId: project.materials[0]!.id,
    count: 2,
    mirroredCount: 0,
    shape: {
      kind: "measured",
      shape: "rectangle",
      sizes: { along: inches ? 355.6 : 350, across: inches ? 406.4 : 400 },
    },
    seamAllowance: inches ? 9.525 : 10,
    foldEdge: null,
    grain: "either",
    notches: [],
    interfacing: null,
  };
}
