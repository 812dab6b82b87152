import type { XmlElement } from "./xmlTree.ts";

/** One element's worth of a selector: `path.cut#a[fill="none"]`. */
interface Compound {
  readonly type: string | null;
  readonly ids: readonly string[];
  readonly classes: readonly string[];
  readonly attributes: readonly (readonly [name: string, value: string | null])[];
  readonly isFirst: boolean;
}

/** A chain of compounds, the element itself last, with what stands between them: ` ` any depth, `>` a child. */
export interface Selector {
  readonly compounds: readonly Compound[];
  readonly between: readonly (" " | ">")[];
  /** Ids, then classes and attributes, then types, as one number that can be compared. */
  readonly weight: number;
}

const SIMPLE =
  /(?<any>\*)|#(?<id>[\w\u0080-\uffff-]+)|\.(?<class>[\w\u0080-\uffff-]+)|\[\s*(?<attr>[\w:-]+)\s*(?:=(?<value>[^\]]*))?\]|(?<first>:first-child)|(?<type>[\w-]+)/uy;

/** A selector, or null when it uses what is not understood here; its rule is then left out, as CSS wants it. */
export function readSelector(text: string): Selector | null {
  const words = text.trim().replaceAll(">", " > ").trim().split(/\s+/u);
  const compounds: Compound[] = [];
  const between: (" " | ">")[] = [];
  let weight = 0;
  for (const word of words) {
    if (word === ">") {
      if (compounds.length === 0 || between.length === compounds.length) return null;
      between.push(">");
      continue;
    }
    if (between.length < compounds.length) between.push(" ");
    const compound = readCompound(word);
    if (compound === null) return null;
    compounds.push(compound);
    const classes = compound.classes.length + compound.attributes.length + (compound.isFirst ? 1 : 0);
    weight += compound.ids.length * 10_000 + classes * 100 + (compound.type ? 1 : 0);
  }
  return compounds.length === 0 || between.length >= compounds.length ? null : { compounds, between, weight };
}

function readCompound(word: string): Compound | null {
  const ids: string[] = [];
  const classes: string[] = [];
  const attributes: [string, string | null][] = [];
  let type: string | null = null;
  let isFirst = false;
  SIMPLE.lastIndex = 0;
  while (SIMPLE.lastIndex < word.length) {
    const groups = SIMPLE.exec(word)?.groups;
    if (!groups) return null;
    if (groups["id"]) ids.push(groups["id"]);
    else if (groups["class"]) classes.push(groups["class"]);
    else if (groups["attr"]) attributes.push([groups["attr"], unquoted(groups["value"])]);
    else if (groups["first"]) isFirst = true;
    else if (groups["type"]) type = groups["type"];
  }
  return { type, ids, classes, attributes, isFirst };
}

/** An attribute's value without the quotes round it; null where any value will do. */
function unquoted(value: string | undefined): string | null {
  const plain = value?.trim() ?? null;
  return plain !== null && /^(["']).*\1$/su.test(plain) ? plain.slice(1, -1) : plain;
}

/** Whether a selector means this element. Cost: the depth of the element for each compound. */
export function selects(selector: Selector, element: XmlElement): boolean {
  return selectsUpTo(selector, selector.compounds.length - 1, element) === "yes";
}

/**
 * "never": whoever stands above will not do either, for what is asked of the elements above was looked for among all
 * of them. Without it every choice of ancestors would be tried.
 */
function selectsUpTo(selector: Selector, last: number, element: XmlElement): "yes" | "not here" | "never" {
  if (!isMeant(selector.compounds[last]!, element)) return "not here";
  if (last === 0) return "yes";
  const isChild = selector.between[last - 1] === ">";
  for (let above = element.parent; above !== null; above = above.parent) {
    const found = selectsUpTo(selector, last - 1, above);
    if (isChild || found !== "not here") return found;
  }
  return "never";
}

function isMeant(compound: Compound, element: XmlElement): boolean {
  // Most rules of a long sheet name another kind of element: told before anything is looked for.
  if (compound.type !== null && compound.type !== element.name) return false;
  const { attributes } = element;
  if (!compound.ids.every((id) => attributes.get("id") === id)) return false;
  const classes = compound.classes.length > 0 ? (attributes.get("class") ?? "").split(/\s+/u) : [];
  return (
    compound.classes.every((name) => classes.includes(name)) &&
    compound.attributes.every(([name, value]) =>
      value === null ? attributes.has(name) : attributes.get(name) === value,
    ) &&
    (!compound.isFirst || element.parent === null || element.parent.children[0] === element)
  );
}
