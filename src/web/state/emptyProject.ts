import { plainMaterial } from "../../core/project/edits.ts";
import { USUAL_OUTPUT } from "../../core/project/outputSettings.ts";
import type { Project } from "../../core/project/project.ts";

/** A project with nothing but a plain cloth on the table yet, in the units of the page's visitor. */
export function emptyProject(name: string, clothName: string, system: "metric" | "inches"): Project {
  const bare: Project = {
    name,
    unit: system === "metric" ? "mm" : "in",
    bags: 1,
    currency: "EUR",
    materials: [],
    straps: [],
    panels: [],
    gap: 0,
    margin: 0,
    pins: [],
    output: {
      paper: system === "metric" ? "A4" : "Letter",
      ...USUAL_OUTPUT,
      lengths: system === "metric" ? "mm" : "in/16",
    },
  };
  return { ...bare, materials: [plainMaterial(bare, clothName)] };
}
