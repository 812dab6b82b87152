import { type DxfRecord, type DxfSection, numberOf, numbersOf, textOf } from "./groups.ts";

/** An entity with the vertices or attributes that follow it. */
export interface DxfEntity extends DxfRecord {
  readonly parts: readonly DxfRecord[];
}

export interface DxfLayer {
  /** Switched off, or frozen. */
  readonly isOff: boolean;
  readonly isFrozen: boolean;
  /** Colour number; 7 when not said. */
  readonly color: number;
  readonly lineType: string;
}

export interface DxfBlock {
  readonly baseX: number;
  readonly baseY: number;
  /** Kept in another file. */
  readonly isOutside: boolean;
  readonly entities: readonly DxfEntity[];
}

/** What of a DXF file a drawing is made of. */
export interface DxfDrawing {
  readonly header: ReadonlyMap<string, DxfRecord>;
  readonly layers: ReadonlyMap<string, DxfLayer>;
  /** Dashes and spaces in turn, in the file's units; empty for a whole line. */
  readonly lineTypes: ReadonlyMap<string, readonly number[]>;
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly entities: readonly DxfEntity[];
}

/** Sections put in order. Names of layers, line types and blocks are the same in capitals. */
export function dxfDrawing(sections: readonly DxfSection[]): DxfDrawing {
  const of = (name: string): readonly DxfRecord[] =>
    sections.flatMap((section) => (section.name.toUpperCase() === name ? section.records : []));
  const tables = of("TABLES");
  return {
    header: new Map(of("HEADER").map((record) => [record.kind.toUpperCase(), record])),
    layers: new Map(
      tables.filter(({ kind }) => kind === "LAYER").map((record) => [nameOf(record), layerOf(record)]),
    ),
    lineTypes: new Map(
      tables.filter(({ kind }) => kind === "LTYPE").map((record) => [nameOf(record), dashesOf(record)]),
    ),
    blocks: blocksOf(of("BLOCKS")),
    entities: entitiesOf(of("ENTITIES")),
  };
}

/** The name of a table entry or block, as it is looked up. */
export function nameOf(record: DxfRecord, code = 2): string {
  return (textOf(record, code) ?? "").trim().toUpperCase();
}

function layerOf(record: DxfRecord): DxfLayer {
  const color = numberOf(record, 62, 7);
  return {
    isOff: color < 0,
    isFrozen: (numberOf(record, 70) & 1) === 1,
    color: Math.abs(color),
    lineType: nameOf(record, 6),
  };
}

/** A line type's elements: positive a dash, negative a space, 0 a dot. */
function dashesOf(record: DxfRecord): readonly number[] {
  const elements = numbersOf(record, 49).filter((value) => Number.isFinite(value));
  const hasSpace = elements.some((value) => value < 0);
  return hasSpace ? elements.map(Math.abs) : [];
}

function blocksOf(records: readonly DxfRecord[]): ReadonlyMap<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>();
  let head: DxfRecord | null = null;
  let inside: DxfRecord[] = [];
  for (const record of records) {
    if (record.kind === "BLOCK") {
      head = record;
      inside = [];
    } else if (record.kind === "ENDBLK" && head !== null) {
      const flags = numberOf(head, 70);
      blocks.set(nameOf(head), {
        baseX: numberOf(head, 10),
        baseY: numberOf(head, 20),
        isOutside: (flags & (4 | 8)) !== 0,
        entities: entitiesOf(inside),
      });
      head = null;
    } else inside.push(record);
  }
  return blocks;
}

/** Vertices and attributes go to the entity they follow, up to its SEQEND. */
function entitiesOf(records: readonly DxfRecord[]): readonly DxfEntity[] {
  const entities: (DxfEntity & { parts: DxfRecord[] })[] = [];
  for (const record of records) {
    if (record.kind === "VERTEX" || record.kind === "ATTRIB") entities.at(-1)?.parts.push(record);
    else if (record.kind !== "SEQEND") entities.push({ ...record, parts: [] });
  }
  return entities;
}
