import { failed, ok, type Problem, type Result } from "../../problems/problem.ts";
import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { type Construction, type OpenSectionInput, planOf } from "../constructions/construction.ts";
import { measuredFold } from "../foldTest.ts";
import type { Ply, PlyRole } from "../section/foldPlan.ts";
import { plyOf } from "../section/ply.ts";
import { foldThickness } from "../section/skiving.ts";
import type { FoldChoices, StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { unusedChoices } from "./unusedChoices.ts";

/** Heavy cotton webbing (common practice) when nothing is said, mm. */
const WEBBING_THICKNESS = 2;
/** Fleece and foam are pressed to well under half in a strap, unless the maker has measured hers (common practice, no source). */
const PADDING_PRESSED = 0.4;

/** A wish with its materials looked up and its numbers checked. */
export interface ResolvedWish {
  readonly wish: StrapWish;
  /** Put before the place of each problem, e.g. `straps[1].`; empty for a wish on its own. */
  readonly path: string;
  readonly construction: Construction;
  readonly materials: Readonly<Partial<Record<PlyRole, StrapMaterial>>> & { readonly outer: StrapMaterial };
  readonly input: OpenSectionInput;
  readonly choices: FoldChoices;
}

const ROLES: readonly PlyRole[] = ["outer", "facing", "interfacing", "padding", "webbing", "cord"];

type Ranges = { readonly [K in keyof FoldChoices]?: readonly [least: number, most: number] };

/** Shares and counts. */
const RANGES: Ranges = { clearance: [0, 1], layers: [1, 3], paddingPressed: [0.05, 1] };

/** mm. */
const LENGTHS: Ranges = {
  edgeGap: [0, 100],
  setback: [0, 100],
  hem: [1, 50],
  reveal: [0, 50],
  seamAllowance: [1, 50],
  margin: [0, 50],
  turn: [2, 50],
  trim: [0, 25],
  turnedThickness: [0.1, 50],
};

/** The most of a layer that has to go round a fold, mm: less than its thickness where every fold of it is skived. */
function thickestFold(construction: Construction, input: OpenSectionInput, ply: Ply): number {
  if (construction.plan === null) return ply.thickness;
  const folds = planOf(construction, input)
    .strips.filter((strip) => strip.ply.role === ply.role)
    .flatMap((strip) => strip.levels.slice(1).map((_, fold) => foldThickness(strip, fold)));
  return folds.length === 0 ? ply.thickness : Math.max(...folds);
}

/** Skiving of woven cloth, which frays, and skiving to more than there is. */
function skivingProblem(
  construction: Construction,
  { choices, outer, facing }: OpenSectionInput,
  { kind }: StrapMaterial,
  path: string,
): Problem | null {
  const mm = choices.turnedThickness;
  if (mm === undefined) return null;
  const at = `${path}folds.turnedThickness`;
  if (kind === "woven")
    return {
      code: "strap-choice-unused",
      path: at,
      choice: "turnedThickness",
      construction: construction.id,
      heededBy: [],
    };
  const thickest = Math.max(outer.thickness, facing.thickness);
  return mm < thickest ? null : { code: "length-out-of-range", path: at, mm, minMm: 0.1, maxMm: thickest };
}

function choiceProblems(construction: Construction, choices: FoldChoices, path: string): Problem[] {
  const problems: Problem[] = [];
  const { layers } = choices;
  const [least, most] = [construction.layerChoices[0], construction.layerChoices.at(-1)];
  if (layers !== undefined && least !== undefined && most !== undefined && layers >= 1 && layers <= 3) {
    if (!construction.layerChoices.includes(layers))
      problems.push({
        code: "strap-choice-out-of-range",
        path: `${path}folds.layers`,
        value: layers,
        least,
        most,
      });
  }
  for (const [name, [least, most]] of Object.entries(RANGES)) {
    const value = choices[name as keyof FoldChoices];
    if (typeof value !== "number") continue;
    const whole = name !== "layers" || Number.isInteger(value);
    if (value >= least && value <= most && whole) continue;
    problems.push({ code: "strap-choice-out-of-range", path: `${path}folds.${name}`, value, least, most });
  }
  for (const [name, [minMm, maxMm]] of Object.entries(LENGTHS)) {
    const mm = choices[name as keyof FoldChoices];
    if (typeof mm !== "number" || (mm >= minMm && mm <= maxMm)) continue;
    problems.push({ code: "length-out-of-range", path: `${path}folds.${name}`, mm, minMm, maxMm });
  }
  return problems;
}

/** A cord or webbing that the construction has no place for: refused, so that nobody waits for it in vain. */
function coreProblems({ core, construction }: StrapWish, path: string): Problem[] {
  const { roles } = CONSTRUCTIONS[construction];
  const places = [
    ["cord", ["cordDiameter"]],
    ["webbing", ["webbingWidth", "webbingThickness"]],
  ] as const;
  return places.flatMap(([role, fields]): Problem[] => {
    const given = fields.find((field) => core?.[field] !== undefined);
    if (given === undefined || roles[role] === "needed") return [];
    return [{ code: "strap-role-unused", path: `${path}core.${given}`, role, construction }];
  });
}

/** Every number of the wish that has to be a real length: path and value. */
function lengthProblems(wish: StrapWish, path: string): Problem[] {
  const numbers: [string, number | undefined, number, number][] = [
    ["width", wish.width?.mm, 0.1, 2000],
    ["length", wish.length.mm, 1, 100_000],
    ["core.cordDiameter", wish.core?.cordDiameter, 0.5, 100],
    ["core.webbingWidth", wish.core?.webbingWidth, 1, 500],
    ["core.webbingThickness", wish.core?.webbingThickness, 0.1, 25],
    ["shortPart", wish.shortPart, 10, 10_000],
    ["endThickness", wish.endThickness, 0.1, 50],
    ["stitch.length", wish.stitch?.length, 0.5, 15],
    ["stitch.fromEdge", wish.stitch?.fromEdge, 0.5, 100],
    ["machine.maxThickness", wish.machine?.maxThickness, 0.1, 100],
    ...(wish.hardware ?? []).map(
      (one, i) => [`hardware[${i}].innerWidth`, one.innerWidth, 1, 1000] as [string, number, number, number],
    ),
    ...(wish.ends ?? []).map(
      (end, i) => [`ends[${i}].allowance`, end.allowance, 0, 1000] as [string, number | undefined, number, number],
    ),
  ];
  return numbers.flatMap(([name, mm, minMm, maxMm]): Problem[] => {
    if (mm === undefined || (mm >= minMm && mm <= maxMm)) return [];
    if (!Number.isFinite(mm)) return [{ code: "length-not-finite", path: path + name, text: String(mm) }];
    return [{ code: "length-out-of-range", path: path + name, mm, minMm, maxMm }];
  });
}

function findMaterials(
  wish: StrapWish,
  construction: Construction,
  materials: readonly StrapMaterial[],
  path: string,
): { found: Partial<Record<PlyRole, StrapMaterial>>; problems: Problem[] } {
  const found: Partial<Record<PlyRole, StrapMaterial>> = {};
  const problems: Problem[] = [];
  for (const role of ROLES) {
    const id = wish.materials[role];
    const at = `${path}materials.${role}`;
    if (id === undefined) continue;
    const material = materials.find((one) => one.id === id);
    const used =
      role === "outer" ||
      (role === "interfacing" ? construction.interfaced !== null : construction.roles[role] !== undefined);
    if (!material) problems.push({ code: "strap-material-missing", path: at, role, id });
    else if (!used) problems.push({ code: "strap-role-unused", path: at, role, construction: construction.id });
    else found[role] = material;
  }
  if ((wish.interfacing ?? "none") !== "none" && wish.materials.interfacing === undefined) {
    problems.push({
      code: "strap-material-missing",
      path: `${path}materials.interfacing`,
      role: "interfacing",
      id: null,
    });
  }
  return { found, problems };
}

/** A material with the K of its fold tests where the maker says none. */
function measured(material: StrapMaterial): StrapMaterial {
  const neutral = material.fold.neutral ?? measuredFold(material.fold).neutral?.value;
  return { ...material, fold: { ...material.fold, neutral } };
}

/** How far raw edges keep out of the bends of this construction: the maker's word, a test of this very construction, else null. */
export function clearanceOf(
  construction: Construction,
  { fold }: StrapMaterial,
  choices: FoldChoices,
): number | null {
  const tested = construction.testedAs === null ? undefined : measuredFold(fold).clearance[construction.testedAs];
  return choices.clearance ?? fold.clearance ?? tested?.value ?? null;
}

/** Checks a wish's numbers and looks up its materials. All problems at once. */
export function resolveWish(wish: StrapWish, materials: readonly StrapMaterial[], path = ""): Result<ResolvedWish> {
  const construction = CONSTRUCTIONS[wish.construction];
  const choices = wish.folds ?? {};
  const { found, problems } = findMaterials(wish, construction, materials, path);
  const unused = unusedChoices(wish, path);
  const idle = new Set(unused.map((problem) => problem.path));
  const all: Problem[] = [
    ...unused,
    ...choiceProblems(construction, choices, path).filter((problem) => !idle.has(problem.path)),
    ...lengthProblems(wish, path),
    ...coreProblems(wish, path),
    ...problems,
  ];
  const corded = construction.roles.cord === "needed";
  const byWebbing = construction.roles.webbing === "needed" && wish.core?.webbingWidth !== undefined;
  if (!wish.width && !corded && !byWebbing) {
    all.push({ code: "strap-width-missing", path: `${path}width`, construction: construction.id });
  }
  if (corded && wish.core?.cordDiameter === undefined) {
    all.push({ code: "strap-cord-missing", path: `${path}core.cordDiameter` });
  }
  const outer = found.outer;
  if (all.length > 0 || !outer) return failed(...all);
  const placement = wish.interfacing ?? "none";
  const fused = placement === "full" || placement === "reduced" ? (found.interfacing?.thickness ?? 0) : 0;
  const onFacing = construction.interfaced === "facing";
  const facing = found.facing ?? outer;
  const padding = found.padding ? found.padding.thickness * (choices.paddingPressed ?? PADDING_PRESSED) : null;
  const input: OpenSectionInput = {
    outer: plyOf("outer", measured(outer), onFacing ? 0 : fused, choices),
    facing: plyOf("facing", measured(facing), onFacing ? fused : 0, choices),
    ownFacing: found.facing !== undefined,
    clearance: clearanceOf(construction, outer, choices),
    padding,
    webbingThickness: wish.core?.webbingThickness ?? found.webbing?.thickness ?? WEBBING_THICKNESS,
    choices,
  };
  const skiving = skivingProblem(construction, input, outer, path);
  if (skiving) return failed(skiving);
  const thick = [input.outer, input.facing].find(
    (ply) => thickestFold(construction, input, ply) > construction.thickestLayer,
  );
  if (thick) {
    return failed({
      code: "strap-too-thick",
      path: `${path}materials.${thick.role}`,
      construction: construction.id,
      thicknessMm: thick.thickness,
      mostMm: construction.thickestLayer,
    });
  }
  return ok({ wish, path, construction, materials: { ...found, outer }, input, choices });
}
