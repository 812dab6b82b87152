import { type Affine, areaFactor, mapPoint, shift, thenAffine } from "../../core/geometry/affine.ts";
import { type Curve, mapCurve } from "../../core/patterns/curve.ts";
import { curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternLine, PatternMark } from "../../core/patterns/patternDrawing.ts";
import type { LeftOutThing, PatternProblem } from "../../core/problems/patternProblems.ts";
import { tooMuch } from "../readingEnds.ts";
import { colorOf } from "./colors.ts";
import { lengthPx } from "./lengths.ts";
import { SHAPES, shapeLines, type Viewport } from "./shapes.ts";
import { FIRST_STYLE, type SeenStyle, type StyleBook, seenStyle, share } from "./styles.ts";
import { transformOf } from "./transforms.ts";
import { readViewBox, viewBoxMap } from "./viewBoxMap.ts";
import type { XmlElement } from "./xmlTree.ts";

/** Elements that are only there to be referred to, or say nothing that is drawn. */
const NOT_DRAWN = new Set(
  "defs symbol clipPath mask pattern marker linearGradient radialGradient filter style title desc metadata script view cursor font animate animateTransform animateMotion set".split(
    " ",
  ),
);
const LEFT_OUT: Readonly<Record<string, LeftOutThing>> = {
  image: "picture",
  foreignObject: "frame-of-text",
  script: "script",
};
const MOST_DRAWN = 50_000;
const MOST_USES = 32;

/** Where the walk stands: what holds the element. */
interface Place {
  readonly map: Affine;
  readonly viewport: Viewport;
  readonly style: SeenStyle;
  /** Names from the inside out. */
  readonly names: readonly string[];
  readonly layer: string;
  /** `use` elements that are open, so that none refers to itself. */
  readonly uses: readonly XmlElement[];
  /** Size that a `use` gives to the `svg` or `symbol` it shows. */
  readonly given?: { readonly width: string | undefined; readonly height: string | undefined };
}

/** Goes through an SVG tree and collects what can be seen. */
export class SvgWalk {
  readonly lines: PatternLine[] = [];
  readonly marks: PatternMark[] = [];
  readonly leftOut: Map<LeftOutThing, number>;
  readonly #book: StyleBook;
  readonly #ids: ReadonlyMap<string, XmlElement>;
  readonly #broken: PatternProblem[] = [];
  #visited = 0;
  /** Width and height of the page, mm. */
  #pageSize: readonly [number, number] = [0, 0];

  constructor(book: StyleBook, ids: ReadonlyMap<string, XmlElement>, leftOut: Map<LeftOutThing, number>) {
    this.#book = book;
    this.#ids = ids;
    this.leftOut = leftOut;
  }

  draw(root: XmlElement, map: Affine, viewport: Viewport): void {
    const style = seenStyle(this.#book, root, FIRST_STYLE);
    if (this.#isGone(root)) {
      this.leaveOut("hidden", 1);
      return;
    }
    const [x, y] = mapPoint(map, viewport.width, viewport.height);
    this.#pageSize = [x, Math.max(mapPoint(map, 0, 0)[1], y)];
    const place = { map, viewport, style, names: [], layer: "", uses: [] };
    for (const child of root.children) this.#visit(child, place);
  }

  leaveOut(thing: LeftOutThing, count: number): void {
    this.leftOut.set(thing, (this.leftOut.get(thing) ?? 0) + count);
  }

  problems(): readonly PatternProblem[] {
    return this.#broken;
  }

  /** `display: none` and full transparency take what they hold with them. */
  #isGone(element: XmlElement): boolean {
    return (
      this.#book.value(element, "display")?.trim() === "none" || share(this.#book.value(element, "opacity"), 1) <= 0
    );
  }

  #visit(element: XmlElement, above: Place): void {
    const { name } = element;
    if (LEFT_OUT[name]) this.leaveOut(LEFT_OUT[name], 1);
    if (NOT_DRAWN.has(name) || LEFT_OUT[name] || name.includes(":")) return;
    if (++this.#visited > MOST_DRAWN * 4 || this.lines.length > MOST_DRAWN) tooMuch("lines", MOST_DRAWN);
    if (this.#isGone(element)) {
      this.leaveOut("hidden", 1);
      return;
    }
    const own = transformOf(this.#transformText(element));
    const place: Place = {
      ...above,
      ...named(element, above),
      map: own === null ? above.map : thenAffine(own, above.map),
      style: seenStyle(this.#book, element, above.style),
    };
    if (SHAPES.has(name)) this.#shape(element, place);
    else if (name === "use") this.#use(element, place);
    else if (name === "svg") this.#frame(element, place);
    else if (name === "text") this.#text(element, place);
    else if (name === "switch") this.#chosen(element, place);
    else if (name === "g" || name === "a") for (const child of element.children) this.#visit(child, place);
    else this.leaveOut("unknown-shape", 1);
  }

  /** A white filling of the whole page is its ground, no piece. */
  #coversPage(curve: Curve): boolean {
    const { minX, minY, maxX, maxY } = curveBox(curve);
    const [width, height] = this.#pageSize;
    return width > 0 && minX <= 0.5 && minY <= 0.5 && maxX >= width - 0.5 && maxY >= height - 0.5;
  }

  #transformText(element: XmlElement): string | undefined {
    return this.#book.value(element, "transform");
  }

  #shape(element: XmlElement, place: Place): void {
    const { style } = place;
    const get = (name: string): string | undefined => this.#book.value(element, name);
    const { curves, brokenAt } = shapeLines(element.name, get, place.viewport);
    const path = place.names[0] ?? element.name;
    if (brokenAt !== null) this.#broken.push({ code: "pattern-path-broken", path, at: brokenAt });
    if (curves.length === 0) return;
    const line = colorOf(style.stroke, style.color);
    const fill = element.name === "line" ? null : colorOf(style.fill, style.color);
    const isDrawn = line !== null && style.strokeOpacity > 0 && (lengthPx(style.strokeWidth, 1) ?? 1) > 0;
    const isFilled = fill !== null && style.fillOpacity > 0;
    if (!style.isVisible || !(isDrawn || isFilled)) {
      this.leaveOut("hidden", 1);
      return;
    }
    const color = (isDrawn ? line : fill) || null;
    const look = { name: place.names[0] ?? "", layer: place.layer, names: place.names, color };
    const dash = isDrawn ? this.#dashes(style, place) : [];
    for (const curve of curves) {
      const onPage = mapCurve(curve, place.map);
      if (isDrawn || color !== "#ffffff" || !this.#coversPage(onPage))
        this.lines.push({ ...look, dash, curve: onPage });
    }
  }

  /** Dashes in mm; an odd list is read twice, one of zeros is a whole line. */
  #dashes(style: SeenStyle, place: Place): readonly number[] {
    if (style.dashes === "none") return [];
    const scale = Math.sqrt(Math.abs(areaFactor(place.map)));
    const given = style.dashes.split(/[\s,]+/u).map((text) => (lengthPx(text, place.viewport.width) ?? 0) * scale);
    if (given.some((length) => !(length >= 0)) || given.every((length) => length === 0)) return [];
    return given.length % 2 === 0 ? given : [...given, ...given];
  }

  #use(element: XmlElement, place: Place): void {
    const href = element.attributes.get("href") ?? element.attributes.get("xlink:href") ?? "";
    if (!href.startsWith("#")) {
      this.leaveOut("outside-reference", 1);
      return;
    }
    const target = this.#ids.get(decoded(href.slice(1)));
    if (target === undefined || place.uses.includes(target)) return;
    if (place.uses.length >= MOST_USES) tooMuch("nesting", MOST_USES);
    const get = (name: string): string | undefined => this.#book.value(element, name);
    const x = lengthPx(get("x"), place.viewport.width) ?? 0;
    const y = lengthPx(get("y"), place.viewport.height) ?? 0;
    const inside: Place = {
      ...place,
      map: thenAffine(shift(x, y), place.map),
      uses: [...place.uses, target],
      given: { width: get("width"), height: get("height") },
    };
    if (target.name !== "symbol") {
      this.#visit(target, inside);
      return;
    }
    if (this.#isGone(target)) {
      this.leaveOut("hidden", 1);
      return;
    }
    const own = transformOf(this.#transformText(target));
    this.#frame(target, {
      ...inside,
      ...named(target, inside),
      map: own === null ? inside.map : thenAffine(own, inside.map),
      style: seenStyle(this.#book, target, inside.style),
    });
  }

  /** A nested `svg`, or a `symbol` that is used. */
  #frame(element: XmlElement, place: Place): void {
    const get = (name: string): string | undefined => this.#book.value(element, name);
    const { viewport, given } = place;
    const isSvg = element.name === "svg";
    const size = (name: "width" | "height", whole: number): number =>
      lengthPx(given?.[name], whole) ?? lengthPx(get(name), whole) ?? whole;
    const frame = {
      x: isSvg ? (lengthPx(get("x"), viewport.width) ?? 0) : 0,
      y: isSvg ? (lengthPx(get("y"), viewport.height) ?? 0) : 0,
      width: size("width", viewport.width),
      height: size("height", viewport.height),
    };
    const box = readViewBox(get("viewBox"));
    if (frame.width <= 0 || frame.height <= 0 || (box && (box.width === 0 || box.height === 0))) return;
    const inner = box ? viewBoxMap(box, frame, get("preserveAspectRatio")) : shift(frame.x, frame.y);
    const { given: _, ...rest } = place;
    const inside = { ...rest, map: thenAffine(inner, place.map), viewport: box ?? frame };
    for (const child of element.children) this.#visit(child, inside);
  }

  /** The first child that makes no demands we cannot meet. */
  #chosen(element: XmlElement, place: Place): void {
    const child = element.children.find(
      ({ name, attributes }) => !attributes.has("requiredExtensions") && !LEFT_OUT[name] && !name.includes(":"),
    );
    if (child) this.#visit(child, place);
  }

  #text(element: XmlElement, place: Place): void {
    if (!place.style.isVisible) return;
    const text = wholeText(element).replace(/\s+/gu, " ").trim().slice(0, 500);
    if (text === "") return;
    const first = element.attributes.has("x")
      ? element
      : (element.children.find(({ attributes }) => attributes.has("x")) ?? element);
    const at = (name: string, whole: number): number =>
      lengthPx(
        first.attributes
          .get(name)
          ?.trim()
          .split(/[\s,]+/u)[0],
        whole,
      ) ?? 0;
    const [x, y] = mapPoint(place.map, at("x", place.viewport.width), at("y", place.viewport.height));
    this.marks.push({ kind: "text", x, y, text, layer: place.layer });
  }
}

function wholeText(element: XmlElement): string {
  return element.text + element.children.map((child) => ` ${wholeText(child)}`).join("");
}

/** The names that an element adds, and the layer it makes when it is a group. */
function named(element: XmlElement, above: Place): { readonly names: readonly string[]; readonly layer: string } {
  const { attributes } = element;
  const title = element.children.find((child) => child.name === "title")?.text.trim();
  const own = [attributes.get("inkscape:label") ?? title, attributes.get("id")].filter(
    (name): name is string => name !== undefined && name !== "",
  );
  const isGroup = element.name === "g" || element.name === "svg";
  return {
    names: own.length === 0 ? above.names : [...own, ...above.names].slice(0, 24),
    layer: isGroup && own[0] !== undefined ? own[0] : above.layer,
  };
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}
