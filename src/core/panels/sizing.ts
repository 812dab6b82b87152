import { contourBox } from "../geometry/contourArcs.ts";
import { contourLength } from "../geometry/contourEdgeLengths.ts";
import { nearestWord } from "../problems/nearestWord.ts";
import type { Problem } from "../problems/problem.ts";
import { edgeRun, runLength } from "./edgeRun.ts";
import type { BagMeasure, Measure, MeasureOf } from "./measure.ts";
import type { Panel } from "./panel.ts";
import { SHAPES } from "./shapes/registry.ts";
import type { Dimension, ShapeOutline, ShapeRecord, Sizes } from "./shapes/shapeRecord.ts";

/** Measures of any panel that no dimension is called by. */
const OF_ANY_PANEL = ["along", "across", "round"] as const;

/**
 * Works out measures that follow each other, each once, in whatever order they are asked for. What cannot be worked
 * out is null, and why is told once, where it begins.
 */
export class Sizing {
  readonly problems: Problem[] = [];
  private readonly sizes = new Map<string, number | null>();
  private readonly outlines = new Map<Panel, ShapeOutline | null>();
  /** What is being worked out now, outermost first: meeting one of these again is a circle. */
  private readonly open: { readonly key: string; readonly name: string }[] = [];

  private readonly panels: readonly Panel[];
  private readonly measures: readonly BagMeasure[];
  private readonly pathOf: (panel: number) => string;

  /** `pathOf` says where panel `i` stands in the file. */
  constructor(panels: readonly Panel[], measures: readonly BagMeasure[], pathOf: (panel: number) => string) {
    this.panels = panels;
    this.measures = measures;
    this.pathOf = pathOf;
  }

  /** Length in mm of a measure that stands at `path`. */
  lengthOf(measure: Measure, path: string): number | null {
    if (typeof measure === "number") return measure;
    let sum = 0;
    for (const term of measure) {
      const value = typeof term === "number" ? term : this.followed(term, path);
      if (value === null) return null;
      sum += value;
    }
    return sum;
  }

  /** The outline of a panel as it is drawn, on its stitch line or its cut line. */
  outlineOf(panel: Panel): ShapeOutline | null {
    const known = this.outlines.get(panel);
    if (known !== undefined) return known;
    const outline = this.madeOutline(panel);
    this.outlines.set(panel, outline);
    return outline;
  }

  private madeOutline({ shape, grainArrow, ...panel }: Panel): ShapeOutline | null {
    const arrowDeg = (usual: number): number =>
      grainArrow === undefined
        ? usual
        : (Math.atan2(grainArrow[3] - grainArrow[1], grainArrow[2] - grainArrow[0]) * 180) / Math.PI;
    const lines = panel.lines ?? [];
    if (shape.kind === "outline")
      return { contour: shape.contour, edges: shape.edges ?? [], lines, arrowDeg: arrowDeg(0) };
    const i = this.panels.findIndex(({ id }) => id === panel.id);
    const record: ShapeRecord = SHAPES[shape.shape];
    const sizes: Record<string, number> = {};
    let whole = true;
    for (const dimension of record.dimensions) {
      const size = this.dimensionOf(i, dimension);
      if (size === null) whole = false;
      else sizes[dimension.id] = size;
    }
    if (!whole) return null;
    const made = record.outline(sizes as Sizes);
    if ("contour" in made) return { ...made, lines: [...made.lines, ...lines], arrowDeg: arrowDeg(made.arrowDeg) };
    const { dimension, mm: sizeMm, leastMm, mostMm } = made;
    const path = `${this.pathOf(i)}shape.${dimension}`;
    this.problems.push({ code: "size-does-not-fit", path, sizeMm, leastMm, mostMm });
    return null;
  }

  private dimensionOf(i: number, dimension: Dimension): number | null {
    const panel = this.panels[i]!;
    const path = `${this.pathOf(i)}shape.${dimension.id}`;
    return this.once(`${panel.id} ${dimension.id}`, `${panel.name}: ${dimension.id}`, path, () => {
      if (panel.shape.kind === "outline") return null;
      const measure = panel.shape.sizes[dimension.id];
      if (measure === undefined) return this.otherwise(i, dimension);
      const mm = this.lengthOf(measure, path);
      if (mm === null) return null;
      const { least: minMm, most: maxMm } = dimension;
      if (mm >= minMm && mm <= maxMm) return mm;
      this.problems.push({ code: "length-out-of-range", path, mm, minMm, maxMm });
      return null;
    });
  }

  private otherwise(i: number, { otherwise }: Dimension): number | null {
    if (otherwise === undefined)
      throw new RangeError("Sizing: a shape lacks a dimension that it cannot do without");
    if (typeof otherwise === "number") return otherwise;
    const { shape } = this.panels[i]!;
    const record: ShapeRecord | null = shape.kind === "measured" ? SHAPES[shape.shape] : null;
    return this.dimensionOf(i, record!.dimensions.find(({ id }) => id === otherwise)!);
  }

  private followed({ of, measure: name, times }: MeasureOf, path: string): number | null {
    const value = of === undefined ? this.bagMeasure(name, path) : this.panelMeasure(of, name, path);
    return value === null ? null : times * value;
  }

  private bagMeasure(name: string, path: string): number | null {
    const found = this.measures.find(({ id }) => id === name);
    if (found !== undefined) return found.length;
    return this.unknown(
      null,
      name,
      this.measures.map(({ id }) => id),
      path,
    );
  }

  private panelMeasure(of: string, name: string, path: string): number | null {
    const i = this.panels.findIndex(({ id }) => id === of);
    if (i < 0) {
      const ids = this.panels.map(({ id }) => id);
      this.problems.push({ code: "unknown-panel", path, id: of, nearest: nearestWord(of, ids), known: ids });
      return null;
    }
    const panel = this.panels[i]!;
    const dimensions = panel.shape.kind === "measured" ? (SHAPES[panel.shape.shape] as ShapeRecord).dimensions : [];
    const dimension = dimensions.find(({ id }) => id === name);
    if (dimension !== undefined) return this.dimensionOf(i, dimension);
    const outline = this.once(`${of} ${name}`, `${panel.name}: ${name}`, path, () => this.measured(panel, name));
    if (outline !== undefined) return outline;
    const edges = this.outlineOf(panel)?.edges.map((edge) => edge.name) ?? [];
    return this.unknown(
      panel.name,
      name,
      [...new Set([...dimensions.map(({ id }) => id), ...OF_ANY_PANEL, ...edges])],
      path,
    );
  }

  /** A measure of a panel's outline; null when there is no outline, undefined when there is nothing of that name. */
  private measured(panel: Panel, name: string): number | null | undefined {
    const outline = this.outlineOf(panel);
    if (outline === null) return null;
    const box = contourBox(outline.contour);
    if (name === "along") return box.maxX - box.minX;
    if (name === "across") return box.maxY - box.minY;
    if (name === "round") return contourLength(outline.contour);
    const run = edgeRun(outline, /^\d{1,4}$/u.test(name) ? Number(name) : name);
    return run === null ? undefined : runLength(outline.contour, run);
  }

  private once<T extends number | null | undefined>(
    key: string,
    name: string,
    path: string,
    work: () => T,
  ): T | null {
    const known = this.sizes.get(key);
    if (known !== undefined) return known as T;
    const at = this.open.findIndex((one) => one.key === key);
    if (at >= 0) {
      const names = this.open.slice(at).map((one) => one.name);
      this.problems.push({ code: "measures-in-circle", path, names });
      return null;
    }
    this.open.push({ key, name });
    const value = work();
    this.open.pop();
    if (value !== undefined) this.sizes.set(key, value);
    return value;
  }

  private unknown(of: string | null, name: string, known: readonly string[], path: string): null {
    this.problems.push({ code: "unknown-measure", path, of, name, nearest: nearestWord(name, known), known });
    return null;
  }
}
