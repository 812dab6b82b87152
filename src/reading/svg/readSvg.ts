import type { PatternDrawing } from "../../core/patterns/patternDrawing.ts";
import type { LeftOutThing, PatternProblem } from "../../core/problems/patternProblems.ts";
import { ReadingEnds } from "../readingEnds.ts";
import { rootFrame } from "./rootFrame.ts";
import { StyleBook } from "./styles.ts";
import { SvgWalk } from "./svgWalk.ts";
import { type XmlElement, xmlTree } from "./xmlTree.ts";

/**
 * The lines of an SVG file that are drawn and can be seen, in mm, y up, from the lower edge of its page. Nothing
 * outside the file is read and no script is run.
 *
 * Errors: `ReadingEnds` when the text is no SVG or has too much in it.
 * Source: SVG 2; CSS Values (96 px to the inch).
 */
export function readSvg(text: string): PatternDrawing {
  const { root, leftOut } = xmlTree(text);
  const frame = rootFrame(root);
  if (frame === null) throw new ReadingEnds({ code: "pattern-empty", path: "" });
  const book = new StyleBook();
  const ids = new Map<string, XmlElement>();
  takeSheets(root, book, ids);
  const walk = new SvgWalk(book, ids, new Map(leftOut));
  walk.draw(root, frame.map, frame.viewport);
  const problems: PatternProblem[] = [];
  const unit = { name: "px96", ofMm: 25.4 / 96 };
  if (!frame.isTrue) problems.push({ code: "pattern-unit-assumed", path: "", unit: unit.name, ofMm: unit.ofMm });
  if (book.imports > 0) walk.leaveOut("outside-reference", book.imports);
  problems.push(...walk.problems(), ...leftOutProblems(walk.leftOut));
  return { kind: "svg", unit, lines: walk.lines, marks: walk.marks, problems };
}

function leftOutProblems(leftOut: ReadonlyMap<LeftOutThing, number>): PatternProblem[] {
  return [...leftOut].map(([thing, count]) => ({ code: "pattern-left-out", path: "", thing, count }));
}

/** Style sheets count wherever they stand; the first element of an id is the one that is meant. */
function takeSheets(root: XmlElement, book: StyleBook, ids: Map<string, XmlElement>): void {
  const left = [root];
  for (let element = left.pop(); element !== undefined; element = left.pop()) {
    const id = element.attributes.get("id");
    if (id !== undefined && !ids.has(id)) ids.set(id, element);
    if (element.name === "style") book.add(element.text);
    for (let i = element.children.length - 1; i >= 0; i--) left.push(element.children[i]!);
  }
}
