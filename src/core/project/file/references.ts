import { PIECE_GRAINS, type PieceGrain } from "../../materials/cutPiece.ts";
import { grainOn } from "../../materials/orientations.ts";
import { nearestWord } from "../../problems/nearestWord.ts";
import type { Problem } from "../../problems/problem.ts";
import { saysOunces } from "../../units/parseThickness.ts";
import { pathText } from "./issues.ts";

type Path = readonly (string | number)[];
type Group = Readonly<Record<string, unknown>>;

/**
 * What the parts of a file say about each other: ids used twice, materials that are not there, directions that
 * contradict their material. Works on the file as it came, so that these are told together with all other problems.
 */
export function referenceProblems(data: unknown): Problem[] {
  const materials = entries(data, "materials");
  const straps = entries(data, "straps");
  const panels = entries(data, "panels");
  const measures = entries(data, "measures");
  const stock = materials.flatMap(([material, path]) => entries(material, "stock", path));
  const grains = new Map(materials.map(([material]) => [material["id"], grainOf(material, "either")]));
  return [
    ...duplicates(materials),
    ...materials.flatMap(([material, path]) => clothOunces(material, path)),
    ...duplicates(stock),
    ...duplicates(measures),
    ...duplicates(entries(data, "supplies")),
    ...duplicates([...straps, ...panels]),
    ...[...straps, ...panels].flatMap(([part, path]) => unknownMaterials(materialUses(part, path), grains)),
    ...entries(data, "pins").flatMap(([pin, path]) =>
      unknownMaterials([[pin["material"], [...path, "material"]]], grains),
    ),
    ...panels.flatMap(([panel, path]) =>
      conflicts(panel, grainOf(panel, "lengthwise"), panel["material"], path, grains),
    ),
    ...straps.flatMap(([strap, path]) =>
      conflicts(strap, grainOf(strap, "either"), groupAt(strap, "materials")["outer"], path, grains),
    ),
  ];
}

function clothOunces({ kind, thickness }: Group, path: Path): Problem[] {
  if (kind === "leather" || typeof thickness !== "string" || !saysOunces(thickness)) return [];
  return [{ code: "thickness-in-cloth-ounces", path: pathText([...path, "thickness"]), text: thickness }];
}

type Entry = readonly [Group, Path];

function isGroup(value: unknown): value is Group {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function groupAt(group: Group, key: string): Group {
  const value = group[key];
  return isGroup(value) ? value : {};
}

function entries(parent: unknown, key: string, path: Path = []): Entry[] {
  const list = isGroup(parent) ? parent[key] : undefined;
  if (!Array.isArray(list)) return [];
  return list.flatMap((entry, i): Entry[] => (isGroup(entry) ? [[entry, [...path, key, i]]] : []));
}

function duplicates(all: readonly Entry[]): Problem[] {
  const first = new Map<string, Path>();
  return all.flatMap(([entry, path]): Problem[] => {
    const id = entry["id"];
    if (typeof id !== "string") return [];
    const before = first.get(id);
    if (before) return [{ code: "duplicate-id", path: pathText([...path, "id"]), id, firstPath: pathText(before) }];
    first.set(id, [...path, "id"]);
    return [];
  });
}

function materialUses(part: Group, path: Path): [unknown, Path][] {
  const roles = Object.entries(groupAt(part, "materials"));
  return [
    [part["material"], [...path, "material"]],
    [groupAt(part, "interfacing")["material"], [...path, "interfacing", "material"]],
    [groupAt(part, "lining")["material"], [...path, "lining", "material"]],
    ...roles.map(([role, id]): [unknown, Path] => [id, [...path, "materials", role]]),
  ];
}

function unknownMaterials(
  uses: readonly (readonly [unknown, Path])[],
  known: ReadonlyMap<unknown, unknown>,
): Problem[] {
  const ids = [...known.keys()].filter((id) => typeof id === "string");
  return uses.flatMap(([id, path]): Problem[] =>
    typeof id !== "string" || known.has(id)
      ? []
      : [{ code: "unknown-material", path: pathText(path), id, nearest: nearestWord(id, ids), known: ids }],
  );
}

/** The stated direction, the default when none is stated, null when it is none. */
function grainOf(group: Group, otherwise: PieceGrain): PieceGrain | null {
  const grain = group["grain"] ?? otherwise;
  return PIECE_GRAINS.find((known) => known === grain) ?? null;
}

function conflicts(
  part: Group,
  wish: PieceGrain | null,
  materialId: unknown,
  path: Path,
  grains: ReadonlyMap<unknown, PieceGrain | null>,
): Problem[] {
  const rule = grains.get(materialId);
  if (wish === null || !rule || typeof materialId !== "string" || grainOn(wish, rule) !== null) return [];
  const at = "grain" in part ? [...path, "grain"] : path;
  return [{ code: "grain-conflict", path: pathText(at), wish, materialId, rule }];
}
