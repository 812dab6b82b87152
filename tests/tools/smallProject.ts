// A small project file, and what reading it with something else in it says.
import { readProject } from "../../src/core/project/file/readProject.ts";

export const roll = { kind: "roll", id: "roll", width: "150 cm" };
export const cloth = { id: "cloth", kind: "woven", thickness: "0.5 mm", stock: [roll] };
export const strap = {
  id: "strap",
  construction: "fourfold",
  width: "1 in",
  length: "1.2 m",
  materials: { outer: "cloth" },
};
export const panel = { id: "panel", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 } };
export const file = { laywright: 1, name: "Test", materials: [cloth], straps: [strap], panels: [panel] };

export const read = (more: object) => readProject(JSON.stringify({ ...file, ...more }));
export const codes = (text: string | object) => {
  const result = typeof text === "string" ? readProject(text) : read(text);
  return result.ok ? [] : result.problems.map((problem) => `${problem.path}: ${problem.code}`);
};
