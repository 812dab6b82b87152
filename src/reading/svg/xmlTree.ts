import { SaxesParser } from "saxes";
import type { LeftOutThing } from "../../core/problems/patternProblems.ts";
import { tooMuch, unreadable } from "../readingEnds.ts";

/** An element of an SVG file: names without prefix, attributes as they are written. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: XmlElement | null;
  readonly children: XmlElement[];
  /** Its own text, without that of its children. */
  text: string;
}

/** What an SVG file holds, as a tree. */
export interface XmlTree {
  readonly root: XmlElement;
  readonly leftOut: ReadonlyMap<LeftOutThing, number>;
}

const MOST_ELEMENTS = 100_000;
const MOST_DEPTH = 256;
const MOST_ENTITIES = 100;
const SVG_SPACE = "http://www.w3.org/2000/svg";

/**
 * The tree of an SVG file. Entities of the file are taken at their word when they are plain text (drawing programs
 * write namespaces so) and never looked up or expanded in one another; nothing outside the file is read.
 * Errors: `ReadingEnds` when the text is no whole XML, too deep or too much.
 */
export function xmlTree(text: string): XmlTree {
  const parser = new SaxesParser({ xmlns: false, position: true });
  const open: XmlElement[] = [];
  const leftOut = new Map<LeftOutThing, number>();
  let root: XmlElement | null = null;
  let elements = 0;
  parser.on("error", (error) => unreadable(/entity/u.test(error.message) ? "entities" : "not-xml", parser.line));
  parser.on("doctype", (doctype) => takeEntities(doctype, parser, leftOut));
  parser.on("opentag", ({ name, attributes }) => {
    if (++elements > MOST_ELEMENTS) tooMuch("lines", MOST_ELEMENTS);
    if (open.length >= MOST_DEPTH) tooMuch("nesting", MOST_DEPTH);
    const parent = open.at(-1) ?? null;
    const own = new Map(Object.entries(attributes));
    const element: XmlElement = {
      name: plainName(name, own, open),
      attributes: own,
      parent,
      children: [],
      text: "",
    };
    if (parent) parent.children.push(element);
    else root ??= element;
    open.push(element);
  });
  parser.on("closetag", () => open.pop());
  const addText = (part: string): void => {
    const at = open.at(-1);
    if (at) at.text += part;
  };
  parser.on("text", addText);
  parser.on("cdata", addText);
  parser.write(text).close();
  const tree = root as XmlElement | null;
  if (tree === null || tree.name !== "svg") return unreadable("not-svg");
  return { root: tree, leftOut };
}

/**
 * A name without its prefix when it belongs to SVG, else with it: `svg:rect` → `rect`, `other:rect` stays. Files
 * without any namespace are taken as if they stated it.
 */
function plainName(name: string, own: ReadonlyMap<string, string>, open: readonly XmlElement[]): string {
  const colon = name.indexOf(":");
  const key = colon < 0 ? "xmlns" : `xmlns:${name.slice(0, colon)}`;
  let space = own.get(key);
  for (let i = open.length - 1; i >= 0 && space === undefined; i--) space = open[i]!.attributes.get(key);
  if (colon < 0) return space === undefined || space === "" || space === SVG_SPACE ? name : `other:${name}`;
  if (space === SVG_SPACE || (space === undefined && name.startsWith("svg:"))) return name.slice(colon + 1);
  return name;
}

/** Entities that stand for plain text; any that names another or a file is left out, and then cannot be used. */
function takeEntities(doctype: string, parser: SaxesParser, leftOut: Map<LeftOutThing, number>): void {
  const known = parser.ENTITIES as Record<string, string>;
  let taken = 0;
  for (const [, name, , value] of doctype.matchAll(/<!ENTITY\s+([\w.-]+)\s+(["'])([^"'&%<]{0,500})\2\s*>/gu)) {
    if (++taken > MOST_ENTITIES) break;
    known[name!] = value!;
  }
  const declared = doctype.split("<!ENTITY").length - 1;
  if (declared > taken) leftOut.set("entity", declared - taken);
}
