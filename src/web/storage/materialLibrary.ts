import type { Material } from "../../core/materials/material.ts";
import type { MaterialStock } from "../../core/materials/stock.ts";
import { freshIdIn } from "../../core/project/edits.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import { writeProject } from "../../core/project/file/writeProject.ts";
import type { Project } from "../../core/project/project.ts";
import { createStore, type Store } from "../state/store.ts";

/** The materials that she works with again and again, by name; of this device, for all projects. */
export interface MaterialLibrary {
  readonly materials: Store<readonly Material[]>;
  /** Keeps a material; one of the same name is replaced. Leftovers belong to the project that they are in. */
  keep(material: Material, project: Project): void;
  forget(name: string): void;
}

const PLACE = "laywright-materials";

/** Opens the library of this device; without storage it lasts as long as the page. */
export function openMaterialLibrary(): MaterialLibrary {
  const materials = createStore<readonly Material[]>([]);
  /** Each as a project file of its own, so that what an older version kept is read as any old file is. */
  let texts = readTexts();
  const put = (next: readonly string[]) => {
    texts = next;
    materials.set(texts.flatMap(materialOf));
    try {
      localStorage.setItem(PLACE, JSON.stringify(texts));
    } catch {
      // No storage, or no room: the library lasts as long as the page is open.
    }
  };
  const without = (name: string) => texts.filter((text) => materialOf(text)[0]?.name !== name);
  materials.set(texts.flatMap(materialOf));
  return {
    materials,
    keep: (material, project) => {
      const rolls = { ...material, stock: material.stock.filter(({ kind }) => kind === "roll") };
      put([
        ...without(material.name),
        writeProject({ ...project, materials: [rolls], straps: [], panels: [], pins: [] }),
      ]);
    },
    forget: (name) => put(without(name)),
  };
}

/** A material of the library as one of the project, with ids that nothing there has. */
export function takenInto(project: Project, material: Material): Material {
  const id = freshIdIn(project, "material");
  const stock: MaterialStock[] = [];
  for (const each of material.stock) {
    const taken = { ...material, id, stock };
    stock.push({ ...each, id: freshIdIn({ ...project, materials: [...project.materials, taken] }, each.kind) });
  }
  return { ...material, id, stock };
}

function readTexts(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? "[]");
    return Array.isArray(kept) ? kept.filter((text): text is string => typeof text === "string") : [];
  } catch {
    return [];
  }
}

function materialOf(text: string): readonly Material[] {
  const read = readProject(text);
  return read.ok ? read.value.materials.slice(0, 1) : [];
}
