import type { CutBox, CutDirection, CutTree } from "./cutTree.ts";

/** What a cut leaves on one side of the ruler. */
export type CutPart =
  | { readonly kind: "piece"; readonly box: CutBox; readonly piece: number }
  | { readonly kind: "offcut"; readonly box: CutBox }
  /** To be cut further. Named by its place: B is the second length, B3 the third strip of it. */
  | { readonly kind: "cloth"; readonly box: CutBox; readonly name: string };

/** One cut at the table, from edge to edge of the cloth named. */
export interface CutStep {
  /** From 1. */
  readonly number: number;
  /** `straighten` squares the end that everything is measured from; nothing is measured for it. */
  readonly kind: "straighten" | CutDirection;
  /** The piece of cloth under the ruler. */
  readonly cloth: CutPart;
  /** Where the cut runs: x of a crosscut, y of a rip, mm on the lay. */
  readonly at: number;
  /** Distance from the last fresh edge to the cut, mm; what the ruler is set to. 0 when straightening. */
  readonly setting: number;
  /** The ruler still stands at the setting of the cut before. */
  readonly sameSetting: boolean;
  /** What comes off on the measured side; null when straightening. */
  readonly off: CutPart | null;
  readonly rest: CutPart;
}

/** The cuts in the order they are made. */
export interface CutSequence {
  readonly steps: readonly CutStep[];
  /** Cuts, the straightening one included. */
  readonly cuts: number;
  /** How often the ruler is set: equal distances one after another are one setting. */
  readonly settings: number;
}

/** mm within which two settings are one. */
const SAME_SETTING = 0.05;

/**
 * The cuts of a tree as a maker makes them: straighten the end, take all lengths off, then for each length its
 * rips and after them the crosscuts of its strips. Among strips that could come next the one that needs the ruler
 * as it stands is taken first.
 *
 * `goesOn` says that the cloth is longer than the tree's box (a roll), so that the last length is cut off, too.
 * Cost: O(nodes²).
 */
export function cutSequence(tree: CutTree, goesOn: boolean): CutSequence {
  const steps: CutStep[] = [];
  const whole: CutPart = { kind: "cloth", box: tree.box, name: "" };
  steps.push({
    number: 1,
    kind: "straighten",
    cloth: whole,
    at: tree.box.x,
    setting: 0,
    sameSetting: false,
    off: null,
    rest: whole,
  });
  let setting = 0;
  let settings = 0;
  const add = (step: Omit<CutStep, "number" | "sameSetting">): void => {
    const sameSetting = Math.abs(step.setting - setting) <= SAME_SETTING;
    if (!sameSetting) settings++;
    setting = step.setting;
    steps.push({ ...step, number: steps.length + 1, sameSetting });
  };
  const lengths: CutTree =
    tree.kind === "parts" && tree.direction === "crosscut"
      ? tree
      : { kind: "parts", box: tree.box, direction: "crosscut", parts: [tree] };
  cutNode(lengths, "", goesOn, add);
  const walk = (nodes: readonly Named[]): void => {
    const waiting = [...nodes];
    while (waiting.length > 0) {
      const next = Math.max(
        0,
        waiting.findIndex(({ tree: node }) => Math.abs(firstSetting(node) - setting) <= SAME_SETTING),
      );
      const [node] = waiting.splice(next, 1) as [Named];
      cutNode(node.tree, node.name, false, add);
      walk(namedNodes(node.tree, node.name));
    }
  };
  walk(namedNodes(lengths, ""));
  return { steps, cuts: steps.length, settings };
}

type PartsNode = Extract<CutTree, { kind: "parts" }>;

interface Named {
  readonly tree: PartsNode;
  readonly name: string;
}

/** Parts of a node that are cut further. */
function namedNodes(node: PartsNode, name: string): Named[] {
  return node.parts.flatMap((part, i) => (part.kind === "parts" ? [{ tree: part, name: partName(name, i) }] : []));
}

/** Letters for lengths, numbers for their strips, letters again below. */
function partName(parent: string, index: number): string {
  const letters = parent === "" || /\d$/u.test(parent);
  return parent + (letters ? letterName(index) : String(index + 1));
}

function letterName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : letterName(Math.floor(index / 26) - 1) + letter;
}

function extent(node: PartsNode, part: CutTree): number {
  return node.direction === "crosscut" ? part.box.dx : part.box.dy;
}

function firstSetting(node: PartsNode): number {
  return extent(node, node.parts[0]!);
}

/** The parallel cuts of one node, each measured from the one before. */
function cutNode(
  node: PartsNode,
  name: string,
  goesOn: boolean,
  add: (step: Omit<CutStep, "number" | "sameSetting">) => void,
): void {
  const { box, direction, parts } = node;
  const crosscut = direction === "crosscut";
  let cloth: CutPart = { kind: "cloth", box, name };
  const last = goesOn && parts.at(-1)!.kind !== "offcut" ? parts.length : parts.length - 1;
  for (let i = 0; i < last; i++) {
    const part = parts[i]!;
    const at = crosscut ? part.box.x + part.box.dx : part.box.y + part.box.dy;
    const restBox = crosscut
      ? { ...box, x: at, dx: box.x + box.dx - at }
      : { ...box, y: at, dy: box.y + box.dy - at };
    const beyond = i + 1 === parts.length - 1 ? asPart(parts[i + 1]!, partName(name, i + 1)) : null;
    const rest: CutPart = beyond ?? { kind: "cloth", box: restBox, name };
    add({ kind: direction, cloth, at, setting: extent(node, part), off: asPart(part, partName(name, i)), rest });
    cloth = rest;
  }
}

function asPart(tree: CutTree, name: string): CutPart {
  if (tree.kind === "parts") return { kind: "cloth", box: tree.box, name };
  return tree.kind === "piece"
    ? { kind: "piece", box: tree.box, piece: tree.piece }
    : { kind: "offcut", box: tree.box };
}

/** Everything on the table after the first `count` steps, for a drawing of that state. O(count²). */
export function tableAfter(sequence: CutSequence, count: number): readonly CutPart[] {
  let table: CutPart[] = [sequence.steps[0]!.cloth];
  for (const { cloth, off, rest } of sequence.steps.slice(0, count)) {
    if (off === null) continue;
    table = table.filter((part) => !sameBox(part.box, cloth.box));
    table.push(off);
    if (rest.box.dx > 0 && rest.box.dy > 0) table.push(rest);
  }
  return table;
}

function sameBox(a: CutBox, b: CutBox): boolean {
  return a.x === b.x && a.y === b.y && a.dx === b.dx && a.dy === b.dy;
}
