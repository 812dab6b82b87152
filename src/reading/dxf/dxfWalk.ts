import {
  type Affine,
  areaFactor,
  mapPoint,
  SAME,
  scaling,
  shift,
  thenAffine,
  turning,
} from "../../core/geometry/affine.ts";
import { mapCurve } from "../../core/patterns/curve.ts";
import type { PatternLine, PatternMark } from "../../core/patterns/patternDrawing.ts";
import type { LeftOutThing } from "../../core/problems/patternProblems.ts";
import { tooMuch } from "../readingEnds.ts";
import { type DxfDrawing, type DxfEntity, nameOf } from "./dxfDrawing.ts";
import { entityCurve } from "./entityCurve.ts";
import { numberOf, textOf } from "./groups.ts";
import { indexedColor, trueColor } from "./lineColors.ts";
import { ownPlane } from "./ownPlane.ts";

const MOST_DRAWN = 50_000;
const MOST_DEPTH = 32;
const MOST_COPIES = 10_000;
const BY_BLOCK = 0;
const BY_LAYER = 256;

const LEFT_OUT: Readonly<Record<string, LeftOutThing>> = {
  IMAGE: "picture",
  OLE2FRAME: "picture",
  OLEFRAME: "picture",
  SOLID: "solid",
  TRACE: "solid",
  "3DFACE": "solid",
  "3DSOLID": "solid",
  REGION: "solid",
  BODY: "solid",
  SURFACE: "solid",
  HATCH: "solid",
  DIMENSION: "dimension",
  LEADER: "dimension",
  MULTILEADER: "dimension",
  TOLERANCE: "dimension",
};
/** Of no account to a pattern, and nothing that is seen. */
const SILENT = new Set(["VIEWPORT", "ATTDEF", "ACAD_PROXY_ENTITY", "LIGHT", "SUN"]);

/** What an entity takes over from the insert that shows its block. */
interface Place {
  readonly map: Affine;
  /** Layer, colour and line type of the insert; null outside of one. */
  readonly insert: {
    readonly layer: string;
    readonly color: string | null;
    readonly dash: readonly number[];
  } | null;
  readonly names: readonly string[];
  readonly depth: number;
}

/** Goes through the entities of a DXF drawing and collects what can be seen, in the file's units. */
export class DxfWalk {
  readonly lines: PatternLine[] = [];
  readonly marks: PatternMark[] = [];
  readonly leftOut = new Map<LeftOutThing, number>();
  readonly #drawing: DxfDrawing;
  readonly #lineScale: number;
  #visited = 0;

  constructor(drawing: DxfDrawing) {
    this.#drawing = drawing;
    const scale = drawing.header.get("$LTSCALE");
    this.#lineScale = (scale && numberOf(scale, 40, 1)) || 1;
  }

  draw(): void {
    for (const entity of this.#drawing.entities)
      this.#visit(entity, { map: SAME, insert: null, names: [], depth: 0 });
  }

  #leaveOut(thing: LeftOutThing): void {
    this.leftOut.set(thing, (this.leftOut.get(thing) ?? 0) + 1);
  }

  #visit(entity: DxfEntity, place: Place): void {
    if (++this.#visited > 4 * MOST_DRAWN || this.lines.length > MOST_DRAWN) tooMuch("lines", MOST_DRAWN);
    if (SILENT.has(entity.kind) || numberOf(entity, 67) === 1) return;
    if (numberOf(entity, 60) === 1) {
      this.#leaveOut("hidden");
      return;
    }
    const own = (textOf(entity, 8) ?? "0").trim();
    // What lies on layer 0 in a block lies on the layer of the insert.
    const layer = own === "0" && place.insert ? place.insert.layer : own;
    const state = this.#drawing.layers.get(layer.toUpperCase());
    if (state?.isFrozen || (state?.isOff && entity.kind !== "INSERT")) {
      this.#leaveOut("off-layer");
      return;
    }
    if (entity.kind === "INSERT") this.#insert(entity, layer, place);
    else if (entity.kind === "TEXT" || entity.kind === "MTEXT") this.#text(entity, layer, place);
    else if (entity.kind === "POINT") this.#point(entity, layer, place);
    else this.#line(entity, layer, place);
  }

  #line(entity: DxfEntity, layer: string, place: Place): void {
    const found = entityCurve(entity);
    if (found === null) {
      this.#leaveOut(LEFT_OUT[entity.kind] ?? "unknown-shape");
      return;
    }
    if (found.curve.parts.length === 0) return;
    const map = found.isOwnPlane ? thenAffine(ownPlane(entity), place.map) : place.map;
    this.lines.push({
      name: place.names[0] ?? "",
      layer,
      names: [...place.names, layer],
      color: this.#color(entity, layer, place),
      dash: this.#dash(entity, layer, place),
      curve: mapCurve(found.curve, map),
    });
  }

  #color(entity: DxfEntity, layer: string, place: Place): string | null {
    const true24 = textOf(entity, 420);
    if (true24 !== undefined) return trueColor(Number(true24));
    const index = numberOf(entity, 62, BY_LAYER);
    if (index === BY_BLOCK && place.insert) return place.insert.color;
    return indexedColor(index === BY_LAYER ? (this.#drawing.layers.get(layer.toUpperCase())?.color ?? 7) : index);
  }

  #dash(entity: DxfEntity, layer: string, place: Place): readonly number[] {
    const named = nameOf(entity, 6) || "BYLAYER";
    if (named === "BYBLOCK" && place.insert) return place.insert.dash;
    const name = named === "BYLAYER" ? (this.#drawing.layers.get(layer.toUpperCase())?.lineType ?? "") : named;
    const scale = this.#lineScale * numberOf(entity, 48, 1) * Math.sqrt(Math.abs(areaFactor(place.map)));
    const dashes = this.#drawing.lineTypes.get(name)?.map((length) => length * scale) ?? [];
    return dashes.length % 2 === 0 ? dashes : [...dashes, ...dashes];
  }

  /** A block at its place: scaled, turned, mirrored, and repeated in columns and rows. */
  #insert(entity: DxfEntity, layer: string, place: Place): void {
    const block = this.#drawing.blocks.get(nameOf(entity));
    if (block === undefined) return;
    if (block.isOutside) {
      this.#leaveOut("outside-reference");
      return;
    }
    if (place.depth >= MOST_DEPTH) tooMuch("nesting", MOST_DEPTH);
    const columns = Math.max(1, numberOf(entity, 70, 1));
    const rows = Math.max(1, numberOf(entity, 71, 1));
    if (!(columns * rows <= MOST_COPIES)) tooMuch("copies", MOST_COPIES);
    const scale = scaling(numberOf(entity, 41, 1), numberOf(entity, 42, 1));
    const atBase = thenAffine(shift(-block.baseX, -block.baseY), scale);
    const turned = turning((numberOf(entity, 50) * Math.PI) / 180);
    const onward = thenAffine(
      shift(numberOf(entity, 10), numberOf(entity, 20)),
      thenAffine(ownPlane(entity), place.map),
    );
    const name = (textOf(entity, 2) ?? "").trim();
    const inside = {
      insert: { layer, color: this.#color(entity, layer, place), dash: this.#dash(entity, layer, place) },
      names: name.startsWith("*") ? place.names : [name, ...place.names].slice(0, 24),
      depth: place.depth + 1,
    };
    for (let column = 0; column < columns; column++)
      for (let row = 0; row < rows; row++) {
        const step = shift(column * numberOf(entity, 44), row * numberOf(entity, 45));
        const map = thenAffine(thenAffine(thenAffine(atBase, step), turned), onward);
        for (const part of block.entities) this.#visit(part, { ...inside, map });
      }
  }

  #text(entity: DxfEntity, layer: string, place: Place): void {
    const parts = entity.groups.filter(({ code }) => code === 1 || code === 3).map(({ value }) => value);
    const text = plainText(parts.join(""));
    if (text === "") return;
    const map = thenAffine(entity.kind === "TEXT" ? ownPlane(entity) : SAME, place.map);
    const [x, y] = mapPoint(map, numberOf(entity, 10), numberOf(entity, 20));
    this.marks.push({ kind: "text", x, y, text, layer });
  }

  #point(entity: DxfEntity, layer: string, place: Place): void {
    const [x, y] = mapPoint(place.map, numberOf(entity, 10), numberOf(entity, 20));
    this.marks.push({ kind: "point", x, y, text: "", layer });
  }
}

/** A DXF text without its control codes: `%%c`, `\P`, `{\fArial;…}`, `\U+00E4`. Source: DXF reference, TEXT and MTEXT. */
function plainText(text: string): string {
  return text
    .replace(/\\U\+([\da-f]{4})/giu, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/%%([cdpou%])/giu, (_, code: string) => CODES[code.toLowerCase()] ?? "")
    .replace(/\\[ACFHQTWacfhqtwp][^;\\{}]*;/gu, "")
    .replace(/\\[PN~]/gu, " ")
    .replace(/\\[LlOoKkS]/gu, "")
    .replace(/[{}]/gu, "")
    .replace(/\s+/gu, " ")
    .trim()
    .slice(0, 500);
}

const CODES: Readonly<Record<string, string>> = { c: "⌀", d: "°", p: "±", "%": "%" };
