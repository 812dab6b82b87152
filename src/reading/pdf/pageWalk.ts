import { type Affine, areaFactor, mapPoint, SAME, thenAffine } from "../../core/geometry/affine.ts";
import { type Box, boxesMeet, boxHolds, boxOfAll } from "../../core/geometry/box.ts";
import { type Curve, type CurvePart, mapCurve, quadraticPart } from "../../core/patterns/curve.ts";
import { curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternLine } from "../../core/patterns/patternDrawing.ts";
import type { LeftOutThing } from "../../core/problems/patternProblems.ts";
import { tooMuch } from "../readingEnds.ts";

/** What a page draws, one operation after another. */
export interface PageOperations {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly (readonly unknown[] | null)[];
}

/** Tells whether a layer (optional content) is on, and its name. */
export interface LayerBook {
  isVisible(group: unknown): boolean;
  nameOf(group: unknown): string;
}

/** What holds while an operation draws. */
interface State {
  readonly map: Affine;
  readonly stroke: string | null;
  readonly fill: string | null;
  readonly strokeAlpha: number;
  readonly fillAlpha: number;
  readonly dash: readonly number[];
  /** What may be seen: the page, less what clipping paths take away, by their boxes; mm. */
  readonly clip: Box;
}

const MOST_DRAWN = 50_000;
const MOST_DEPTH = 512;
/** What ends this close to the edge of the page still reaches it, mm. */
const COVER_SLACK = 0.5;

/** Goes through a page's operations and collects the lines that can be seen, in mm. */
export class PageWalk {
  readonly lines: PatternLine[] = [];
  readonly leftOut = new Map<LeftOutThing, number>();
  readonly #ops: ReadonlyMap<number, string>;
  readonly #layers: LayerBook;
  readonly #page: Box;
  #state: State;
  #saved: State[] = [];
  /** Names and switches of the layers that are open. */
  #open: { readonly name: string; readonly isOn: boolean }[] = [];
  #clips = false;

  constructor(ops: Readonly<Record<string, number>>, layers: LayerBook, toPaper: Affine, page: Box) {
    this.#ops = new Map(Object.entries(ops).map(([name, code]) => [code, name]));
    this.#layers = layers;
    this.#page = page;
    this.#state = {
      map: toPaper,
      stroke: "#000000",
      fill: "#000000",
      strokeAlpha: 1,
      fillAlpha: 1,
      dash: [],
      clip: page,
    };
  }

  draw({ fnArray, argsArray }: PageOperations): void {
    for (const [i, code] of fnArray.entries()) this.#one(this.#ops.get(code) ?? "", argsArray[i] ?? []);
  }

  /** What each operation that matters to lines does. */
  readonly #doing: Readonly<Record<string, (args: readonly unknown[]) => void>> = {
    save: () => this.#save(),
    restore: () => this.#restore(),
    transform: (args) => this.#move(args as unknown as Affine),
    paintFormXObjectBegin: ([matrix, box]) => {
      this.#save();
      this.#move((matrix as Affine | null) ?? SAME);
      this.#clipTo(box as readonly number[] | null);
    },
    paintFormXObjectEnd: () => this.#restore(),
    setStrokeRGBColor: (args) => this.#set({ stroke: colorOf(args) }),
    setFillRGBColor: (args) => this.#set({ fill: colorOf(args) }),
    setStrokeColorN: () => this.#set({ stroke: "" }),
    setFillColorN: () => this.#set({ fill: "" }),
    setStrokeTransparent: () => this.#set({ stroke: null }),
    setFillTransparent: () => this.#set({ fill: null }),
    setDash: ([dash]) => this.#set({ dash: dash as readonly number[] }),
    setGState: ([entries]) => this.#look(entries as readonly (readonly [string, unknown])[]),
    beginMarkedContent: () => void this.#open.push({ name: "", isOn: true }),
    beginMarkedContentProps: (args) => this.#openLayer(args),
    endMarkedContent: () => void this.#open.pop(),
    clip: () => this.#clipByNext(),
    eoClip: () => this.#clipByNext(),
    constructPath: ([painting, data]) =>
      this.#path(this.#ops.get(painting as number) ?? "", data as readonly unknown[]),
  };

  #one(name: string, args: readonly unknown[]): void {
    const does = this.#doing[name];
    if (does) does(args);
    else if (/^paint.*Image/u.test(name)) this.#leaveOut("picture");
  }

  /** The path that comes next takes away what lies outside of it. */
  #clipByNext(): void {
    this.#clips = true;
  }

  #set(part: Partial<State>): void {
    this.#state = { ...this.#state, ...part };
  }

  #save(): void {
    if (this.#saved.length >= MOST_DEPTH) tooMuch("nesting", MOST_DEPTH);
    this.#saved.push(this.#state);
  }

  #restore(): void {
    this.#state = this.#saved.pop() ?? this.#state;
  }

  #move(map: Affine): void {
    this.#set({ map: thenAffine(map, this.#state.map) });
  }

  #look(entries: readonly (readonly [string, unknown])[]): void {
    for (const [key, value] of entries) {
      if (key === "CA") this.#set({ strokeAlpha: Number(value) });
      if (key === "ca") this.#set({ fillAlpha: Number(value) });
      if (key === "D") this.#set({ dash: (value as readonly [readonly number[]])[0] });
    }
  }

  #openLayer(args: readonly unknown[]): void {
    const group = args[1];
    const isLayer = args[0] === "OC";
    this.#open.push({
      name: isLayer ? this.#layers.nameOf(group) : "",
      isOn: !isLayer || this.#layers.isVisible(group),
    });
  }

  #leaveOut(thing: LeftOutThing): void {
    this.leftOut.set(thing, (this.leftOut.get(thing) ?? 0) + 1);
  }

  #path(painting: string, [data]: readonly unknown[]): void {
    const isClip = this.#clips;
    this.#clips = false;
    const curves = data ? pathCurves(data as ArrayLike<number>) : [];
    if (curves.length === 0) return;
    const drawn = curves.map((curve) => mapCurve(curve, this.#state.map));
    this.#paint(painting, drawn);
    if (isClip) this.#set({ clip: overlap(this.#state.clip, boxOfAll(drawn.map(curveBox))) });
  }

  #paint(painting: string, curves: readonly Curve[]): void {
    const { stroke, fill, strokeAlpha, fillAlpha, clip } = this.#state;
    const strokes = /stroke/iu.test(painting) && stroke !== null && strokeAlpha > 0;
    const fills = /fill/iu.test(painting) && fill !== null && fillAlpha > 0;
    if (!strokes && !fills) return;
    if (this.#open.some(({ isOn }) => !isOn)) {
      this.#leaveOut("off-layer");
      return;
    }
    const closes = /^(?:close|fill|eoFill)/u.test(painting);
    const layer = this.#open.findLast(({ name }) => name !== "")?.name ?? "";
    for (const curve of curves) {
      const box = curveBox(curve);
      // A filling that covers the page is its ground; what lies outside of what can be seen is not there.
      if (!boxesMeet(box, clip) || (!strokes && boxHolds(box, this.#page, COVER_SLACK))) continue;
      if (this.lines.length >= MOST_DRAWN) tooMuch("lines", MOST_DRAWN);
      this.lines.push({
        name: "",
        layer,
        names: layer === "" ? [] : [layer],
        color: (strokes ? stroke : fill) || null,
        dash: strokes ? this.#dash() : [],
        curve: closes || fills ? { ...curve, closed: true } : curve,
      });
    }
  }

  #dash(): readonly number[] {
    const scale = Math.sqrt(Math.abs(areaFactor(this.#state.map)));
    const dash = this.#state.dash.map((length) => length * scale);
    if (dash.every((length) => length === 0)) return [];
    return dash.length % 2 === 0 ? dash : [...dash, ...dash];
  }

  #clipTo(box: readonly number[] | null): void {
    if (!box) return;
    const [x0, y0, x1, y1] = box as readonly [number, number, number, number];
    const corners = [
      mapPoint(this.#state.map, x0, y0),
      mapPoint(this.#state.map, x1, y0),
      mapPoint(this.#state.map, x1, y1),
      mapPoint(this.#state.map, x0, y1),
    ];
    const xs = corners.map(([x]) => x);
    const ys = corners.map(([, y]) => y);
    const mapped = { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
    this.#set({ clip: overlap(this.#state.clip, mapped) });
  }
}

/** `"#rrggbb"`, or three numbers of 0 to 255. */
function colorOf(args: readonly unknown[]): string {
  if (typeof args[0] === "string") return args[0];
  return `#${args
    .slice(0, 3)
    .map((value) => Math.round(Number(value)).toString(16).padStart(2, "0"))
    .join("")}`;
}

/** Steps of a path as pdf.js hands them over: 0 move, 1 line, 2 cubic, 3 quadratic, 4 close, each with its numbers. */
function pathCurves(data: ArrayLike<number>): Curve[] {
  const curves: Curve[] = [];
  let parts: CurvePart[] = [];
  let startX = 0;
  let startY = 0;
  let x = 0;
  let y = 0;
  const finish = (closed: boolean): void => {
    if (parts.length > 0) curves.push({ x: startX, y: startY, parts, closed });
    parts = [];
  };
  for (let i = 0; i < data.length; ) {
    const step = data[i++]!;
    const n = (k: number): number => data[i + k]!;
    if (step === 0) {
      finish(false);
      [startX, startY] = [n(0), n(1)];
      [x, y] = [startX, startY];
      i += 2;
    } else if (step === 4) {
      finish(true);
      [x, y] = [startX, startY];
    } else {
      const count = step === 1 ? 2 : step === 2 ? 6 : 4;
      const [endX, endY] = [n(count - 2), n(count - 1)];
      if (step === 1) parts.push({ kind: "straight", x: endX, y: endY });
      else if (step === 2) parts.push({ kind: "bezier", x1: n(0), y1: n(1), x2: n(2), y2: n(3), x: endX, y: endY });
      else parts.push(quadraticPart(x, y, n(0), n(1), endX, endY));
      [x, y] = [endX, endY];
      i += count;
    }
  }
  finish(false);
  return curves;
}

function overlap(a: Box, b: Box): Box {
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
}
