import type { FileProblem } from "../problems/fileProblems.ts";
import { DRAWING_ROLES, type DrawingRole, type LineWishes, type OutputSettings } from "./outputSettings.ts";
import { paperOf } from "./papers.ts";

/** What must be left of a sheet between its margins and its overlap, or taping would never end, mm. */
const LEAST_STEP = 40;

/** What a layer may be called: what release 12 of DXF and an SVG id both allow. */
export const LAYER_NAME: RegExp = /^[\w$-]{1,31}$/u;

/** Output settings that do not go together, however each may be by itself. Paths begin with `output`. */
export function outputProblems(output: OutputSettings): FileProblem[] {
  return [...paperProblems(output), ...layerProblems(output.lines), ...machineProblems(output)];
}

function paperProblems({ paper, pageMargin, overlap, testSquare }: OutputSettings): FileProblem[] {
  const sideMm = paperOf(paper).width;
  const usable = ((sideMm - 2 * pageMargin) * Math.min(testSquare.x, testSquare.y)) / 100;
  if (usable - overlap >= LEAST_STEP) return [];
  return [{ code: "paper-too-small", path: "output.paper", sideMm, marginMm: pageMargin, overlapMm: overlap }];
}

/** Whatever lies on the layer of the cuts is cut. Layer names in DXF are capitals, so case does not tell them apart. */
function layerProblems(lines: LineWishes): FileProblem[] {
  const name = (role: DrawingRole): string => (lines[role]?.layer ?? role).toUpperCase();
  const role = DRAWING_ROLES.find((one) => one !== "cut" && name(one) === name("cut"));
  if (role === undefined) return [];
  const at = lines[role]?.layer === undefined ? "cut" : role;
  return [{ code: "layer-is-cut", path: `output.lines.${at}.layer`, layer: name("cut"), role }];
}

function machineProblems({ machine }: OutputSettings): FileProblem[] {
  if (machine === null) return [];
  const { tool, kerf, bladeOffset, overcut, grip, bedWidth, bedHeight } = machine;
  const problems: FileProblem[] = [];
  const path = "output.machine";
  if (tool === "laser") {
    for (const key of ["bladeOffset", "overcut"] as const)
      if (machine[key] > 0) problems.push({ code: "laser-has-no-blade", path: `${path}.${key}`, key });
  } else if (kerf > 0 && (bladeOffset > 0 || overcut > 0)) {
    problems.push({ code: "knife-takes-no-kerf", path: `${path}.kerf`, kerfMm: kerf });
  }
  const sideMm = Math.min(bedWidth, bedHeight);
  if (sideMm <= 2 * grip) problems.push({ code: "grip-eats-bed", path: `${path}.grip`, gripMm: grip, sideMm });
  return problems;
}
