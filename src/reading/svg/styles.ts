import { selects } from "./cssSelector.ts";
import { type CssRule, type Declaration, readDeclarations, readSheet } from "./cssSheet.ts";
import type { XmlElement } from "./xmlTree.ts";

/** What of a style decides whether and how a line is seen, handed down from element to element. */
export interface SeenStyle {
  readonly isVisible: boolean;
  readonly fill: string;
  readonly stroke: string;
  readonly strokeWidth: string;
  readonly dashes: string;
  readonly fillOpacity: number;
  readonly strokeOpacity: number;
  /** `color`, which `currentColor` means. */
  readonly color: string;
}

/** What is so before any element says otherwise. Source: SVG 2, 13.3 to 13.5 (initial values). */
export const FIRST_STYLE: SeenStyle = {
  isVisible: true,
  fill: "black",
  stroke: "none",
  strokeWidth: "1",
  dashes: "none",
  fillOpacity: 1,
  strokeOpacity: 1,
  color: "black",
};

/** Looks up what an element's attributes, the sheets and its `style` say, in that order of strength. */
export class StyleBook {
  /** Rules by the kind of element they name, "" for those that name none, each with its place among all. */
  readonly #rules = new Map<string, { readonly rule: CssRule; readonly order: number }[]>();
  #count = 0;
  readonly #found = new Map<XmlElement, ReadonlyMap<string, string>>();
  imports = 0;

  add(sheet: string): void {
    const { rules, imports } = readSheet(sheet);
    for (const rule of rules) {
      const kind = rule.selector.compounds.at(-1)!.type ?? "";
      const own = this.#rules.get(kind) ?? [];
      own.push({ rule, order: this.#count++ });
      this.#rules.set(kind, own);
    }
    this.imports += imports;
  }

  /** The value of a property or presentation attribute; undefined when nothing sets it. */
  value(element: XmlElement, name: string): string | undefined {
    return this.#styled(element).get(name) ?? element.attributes.get(name);
  }

  #styled(element: XmlElement): ReadonlyMap<string, string> {
    const known = this.#found.get(element);
    if (known) return known;
    const hits = [element.name, ""]
      .flatMap((kind) => this.#rules.get(kind) ?? [])
      .filter(({ rule }) => selects(rule.selector, element))
      .sort((a, b) => a.rule.selector.weight - b.rule.selector.weight || a.order - b.order);
    const own = readDeclarations(element.attributes.get("style") ?? "");
    const groups: (readonly Declaration[])[] = [...hits.map(({ rule }) => rule.declarations), own];
    const values = new Map<string, string>();
    for (const insisting of [false, true])
      for (const declarations of groups)
        for (const { name, value, isImportant } of declarations)
          if (isImportant === insisting) values.set(name, value);
    this.#found.set(element, values);
    return values;
  }
}

/** An element's style from its parent's. */
export function seenStyle(book: StyleBook, element: XmlElement, above: SeenStyle): SeenStyle {
  const get = (name: string, inherited: string): string => {
    const value = book.value(element, name)?.trim();
    return value === undefined || value === "" || value === "inherit" ? inherited : value;
  };
  const visibility = get("visibility", "");
  return {
    isVisible: visibility === "" ? above.isVisible : visibility === "visible",
    fill: get("fill", above.fill),
    stroke: get("stroke", above.stroke),
    strokeWidth: get("stroke-width", above.strokeWidth),
    dashes: get("stroke-dasharray", above.dashes),
    fillOpacity: share(get("fill-opacity", ""), above.fillOpacity),
    strokeOpacity: share(get("stroke-opacity", ""), above.strokeOpacity),
    color: get("color", above.color),
  };
}

/** A share written as `0.5` or `50%`. */
export function share(text: string | undefined, otherwise: number): number {
  const value = Number.parseFloat(text ?? "");
  if (Number.isNaN(value)) return otherwise;
  return text!.trim().endsWith("%") ? value / 100 : value;
}
