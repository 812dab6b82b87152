import type { Problem } from "../../problems/problem.ts";
import type { ChoiceWord } from "../../words/strapWords.ts";
import { CONSTRUCTIONS, coreFor } from "../constructions/catalogue.ts";
import type { Construction } from "../constructions/construction.ts";
import {
  CONSTRUCTION_IDS,
  type ConstructionId,
  type EndWish,
  type FoldChoices,
  type HardwareWish,
  type MaterialRoles,
  type StrapWish,
} from "../wish/strapWish.ts";
import { unsaidEndStyle, usualEndStyle } from "./usualEnds.ts";

/** Something a wish says that its strap has no use for, and where it stands. */
interface Unused {
  readonly choice: ChoiceWord;
  readonly path: string;
}

/** Ends that a construction can have: a tab is caught in a seam at most, and only a corded handle has flat ends. */
function takesEnd({ overRing, usualEnd }: Construction, style: EndWish["style"]): boolean {
  if (style === "usual") return true;
  if (overRing) return style === "raw" || style === "seam";
  return style !== "doubled" || usualEnd === "doubled";
}

/** Whether any row of topstitching runs along the strap. */
function isTopstitched(construction: Construction, choices: FoldChoices): boolean {
  return construction.rows(choices, 0, 0).some((row) => row.kind === "topstitch");
}

/** Whether an end of the strap comes to lie on the strap itself. */
export function doublesEnds(wish: StrapWish): boolean {
  const styles = wish.ends?.map(({ style }) => (style === "usual" ? usualEndStyle(wish) : style)) ?? [
    unsaidEndStyle(wish),
  ];
  return styles.some((style) => style === "fold-back" || style === "tucked");
}

function unusedFolds({ construction: id, folds = {}, materials }: StrapWish): Unused[] {
  const heeded = new Set<string>(CONSTRUCTIONS[id].heeds(folds));
  if (materials.padding === undefined) heeded.delete("paddingPressed");
  return (Object.keys(folds) as (keyof FoldChoices)[])
    .filter((choice) => folds[choice] !== undefined && !heeded.has(choice))
    .map((choice) => ({ choice, path: `folds.${choice}` }));
}

function unusedOfHardware(one: HardwareWish, at: string): Unused[] {
  const slider = one.kind === "slider";
  const given: [ChoiceWord, boolean, string][] = [
    ["opening", !slider && one.opening !== undefined, "opening"],
    ["fixedBar", !slider && one.fixedBar === true, "fixedBar"],
    ["hardwareLength", slider && one.length !== undefined, "length"],
  ];
  return given.flatMap(([choice, unused, field]) => (unused ? [{ choice, path: `${at}.${field}` }] : []));
}

/** Everything a wish says that has no place in its strap, in the order of the wish. Cost: none to speak of. */
function unusedIn(wish: StrapWish): Unused[] {
  const { folds = {}, stitch, ends = [], width, cutBy, adjustment = "fixed" } = wish;
  const construction = CONSTRUCTIONS[wish.construction];
  const topstitched = isTopstitched(construction, folds);
  const given: [ChoiceWord, boolean, string][] = [
    ["adjustment", adjustment !== "fixed" && construction.overRing, "adjustment"],
    ["shortPart", wish.shortPart !== undefined && adjustment !== "two-part", "shortPart"],
    ["endThickness", wish.endThickness !== undefined && !doublesEnds(wish), "endThickness"],
    ["fromEdge", stitch?.fromEdge !== undefined && !topstitched, "stitch.fromEdge"],
    ["extraRows", (stitch?.extraRows ?? 0) > 0 && !topstitched, "stitch.extraRows"],
    ["stitchLength", stitch?.length !== undefined && !topstitched, "stitch.length"],
    ["edgeFinish", wish.edgeFinish !== undefined && construction.visibleEdges(folds) === 0, "edgeFinish"],
    ["tradeCut", cutBy === "trade" && width?.kind === "cut", "cutBy"],
  ];
  return [
    ...ends.flatMap(({ style }, i): Unused[] =>
      takesEnd(construction, style) ? [] : [{ choice: "endStyle", path: `ends[${i}].style` }],
    ),
    ...(wish.hardware ?? []).flatMap((one, i) => unusedOfHardware(one, `hardware[${i}]`)),
    ...unusedFolds(wish),
    ...given.flatMap(([choice, unused, path]) => (unused ? [{ choice, path }] : [])),
  ];
}

/** Constructions that would heed a choice about the folds, the others being as they are. */
function heededBy(choice: ChoiceWord): readonly ConstructionId[] {
  return CONSTRUCTION_IDS.filter((id) =>
    [{}, { layers: 1 }].some((choices) => (CONSTRUCTIONS[id].heeds(choices) as readonly string[]).includes(choice)),
  );
}

/** What a strap has no use for is refused, so that nobody waits for it in vain; all at once. */
export function unusedChoices(wish: StrapWish, path: string): readonly Problem[] {
  return unusedIn(wish).map(({ choice, path: at }) => ({
    code: "strap-choice-unused",
    path: path + at,
    choice,
    construction: wish.construction,
    heededBy: heededBy(choice),
  }));
}

/** The hardware without what belongs to another kind of it. */
function ownOf({ kind, innerWidth, length, opening, bar, fixedBar }: HardwareWish): HardwareWish {
  return kind === "slider" ? { kind, innerWidth, opening, bar, fixedBar } : { kind, innerWidth, length, bar };
}

/** The wish built another way, or the same one: what that strap has no use for is left out, all else stays as it is. */
export function rebuiltAs(wish: StrapWish, id: ConstructionId): StrapWish {
  const construction = CONSTRUCTIONS[id];
  const { outer, interfacing, ...extra } = wish.materials;
  const taken = Object.entries(extra).filter(([role]) => role in construction.roles) as [
    keyof MaterialRoles,
    string | undefined,
  ][];
  const interfaced = construction.interfaced !== null;
  const unused = (one: StrapWish): ReadonlySet<string> => new Set(unusedIn(one).map(({ choice }) => choice));
  const next: StrapWish = {
    ...wish,
    construction: id,
    core: coreFor(id, wish.core),
    materials: { outer, ...(interfaced ? { interfacing } : {}), ...Object.fromEntries(taken) },
    interfacing: interfaced ? wish.interfacing : undefined,
    hardware: wish.hardware?.map(ownOf),
    ends: wish.ends?.every(({ style }) => takesEnd(construction, style)) ? wish.ends : undefined,
    adjustment: construction.overRing ? undefined : wish.adjustment,
  };
  const { crease, ...own } = wish.folds ?? {};
  // A clearance or a hem was chosen for the construction; the kind of crease goes with the cloth.
  const carried: FoldChoices = { crease, ...(id === wish.construction ? own : {}) };
  const out = unused({ ...next, folds: carried });
  const folds = Object.entries(carried).filter(([choice, value]) => value !== undefined && !out.has(choice));
  return {
    ...next,
    shortPart: out.has("shortPart") ? undefined : next.shortPart,
    folds: folds.length === 0 ? undefined : Object.fromEntries(folds),
    stitch:
      out.has("stitchLength") || out.has("fromEdge") || out.has("extraRows")
        ? { type: wish.stitch?.type }
        : wish.stitch,
    edgeFinish: out.has("edgeFinish") ? undefined : wish.edgeFinish,
    endThickness: out.has("endThickness") ? undefined : wish.endThickness,
    cutBy: out.has("tradeCut") ? undefined : wish.cutBy,
  };
}
