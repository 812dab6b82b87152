import type { Shape } from "../../geometry/shape.ts";
import { type ClothRepeat, type Material, PLAIN_REPEAT } from "../../materials/material.ts";
import type { Price } from "../../materials/price.ts";
import type { Spread } from "../../materials/spread.ts";
import type { Flaw, MaterialStock } from "../../materials/stock.ts";
import type { LengthWish, SewingMachine, StrapWish, WidthWish } from "../../straps/wish/strapWish.ts";
import { writeLength } from "../../units/formatLength.ts";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { readLength } from "../../units/parseLength.ts";
import type { KeptPlan } from "../keptPlan.ts";
import type { LineWish, OutputSettings } from "../outputSettings.ts";
import { DRAWING_ROLES } from "../outputSettings.ts";
import type { Pin, Project } from "../project.ts";
import { writeArea, writeBasis } from "./priceText.ts";
import { FILE_VERSION } from "./projectSchema.ts";
import { type Json, pointsJson, type Say } from "./writeJson.ts";
import { panelJson } from "./writePanel.ts";

/**
 * The project as the text of a file that `readProject` reads back to the same project. Lengths stand in the
 * project's unit where that is exact: bare numbers in metric files, text such as `4 7/8 in` in inch files.
 */
export function writeProject(project: Project): string {
  const say = lengthWriter(project.unit);
  const file: Json = {
    laywright: FILE_VERSION,
    name: project.name,
    unit: project.unit,
    bags: project.bags,
    currency: project.currency,
    gap: say(project.gap),
    margin: say(project.margin),
    leastStrip: project.leastStrip === undefined ? undefined : say(project.leastStrip),
    measures: project.measures?.map(({ id, name, length }) => ({ id, name, length: say(length) })),
    materials: project.materials.map((material) => materialJson(material, say, project.unit)),
    straps: project.straps.map((strap) => strapJson(strap, say)),
    panels: project.panels.map((panel) => panelJson(panel, say)),
    seams: project.seams?.map(({ first, second, ease }) => ({
      first: first.map((edge) => ({ ...edge })),
      second: second.map((edge) => ({ ...edge })),
      ease: ease === undefined ? undefined : say(ease),
    })),
    matches: project.matches?.map(({ first, second, at, axes }) => ({
      first: { ...first },
      second: { ...second },
      at,
      axes,
    })),
    centred: project.centred?.map((one) => ({ ...one })),
    ...(project.pins.length > 0 ? { pins: project.pins.map((pin) => pinJson(pin, say)) } : {}),
    output: outputJson(project.output, say),
    sewingMachine: project.sewingMachine && machineJson(project.sewingMachine, say),
    workshop: project.workshop,
    pricing: project.pricing && { ...project.pricing },
    tax: project.tax && { ...project.tax },
    supplies: project.supplies?.map(({ price, ...supply }) => ({ ...supply, price: price ?? undefined })),
    plans: project.plans?.map(keptPlanJson),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Lengths as they stand in a file of this unit. */
export function lengthWriter(unit: LengthUnit): Say {
  if (unit === "in" || unit === "ft" || unit === "yd") return (mm) => writeLength(mm, unit);
  return (mm) => {
    const text = writeLength(mm, unit);
    if (!text.endsWith(` ${unit}`)) return text;
    const bare = Number(text.slice(0, -unit.length));
    const read = readLength(bare, unit, "", { minMm: -Infinity, maxMm: Infinity });
    return read.ok && read.value === mm ? bare : text;
  };
}

function machineJson({ needles, ...machine }: SewingMachine, say: Say): Json {
  const all = { ...(lengths(machine, say, ["maxLayers"]) as { readonly [key: string]: Json }) };
  return needles === undefined ? all : { ...all, needles: needles.map((one) => ({ ...one })) };
}

/** A material as it stands in a file of this unit. */
export function materialJson(material: Material, say: Say, unit: LengthUnit): Json {
  const { fold, shrinkage } = material;
  const length = (mm: number | null | undefined): string | number | undefined =>
    mm === null || mm === undefined ? undefined : say(mm);
  return {
    id: material.id,
    name: material.name,
    kind: material.kind,
    thickness: say(material.thickness),
    backing: material.backing,
    coating: material.coating,
    polymer: material.polymer,
    grain: material.grain,
    oneWay: material.oneWay === "up" ? true : material.oneWay,
    shadeBand: length(material.shadeBand),
    tilt: material.tilt,
    facesAlike: material.facesAlike,
    fold: {
      neutral: fold.neutral,
      leastRadius: length(fold.leastRadius),
      clearance: fold.clearance,
      tests: fold.tests?.map((test) => lengths(test, say, ["construction"])),
    },
    shrinkage: { ...shrinkage },
    repeat: material.repeat ? repeatJson(material.repeat, say) : undefined,
    price: material.price ? priceJson(material.price, say, unit) : undefined,
    source: material.source,
    gap: length(material.gap),
    margin: length(material.margin),
    spread: spreadJson(material.spread ?? null),
    stock: material.stock.map((stock) => stockJson(stock, say, unit)),
  };
}

function spreadJson(spread: Spread | null): Json | undefined {
  if (spread === null) return undefined;
  return spread.kind === "folded" ? spread.kind : { layers: spread.layers, faces: spread.faces };
}

function repeatJson(
  { along, across, firstAlong, firstAcross, symmetric, halfDrop, tolerance }: ClothRepeat,
  say: Say,
): Json {
  const isPlain = across === null && firstAlong === 0 && firstAcross === 0 && !symmetric && !halfDrop;
  if (along !== null && isPlain && tolerance === PLAIN_REPEAT.tolerance) return say(along);
  return {
    along: along === null ? undefined : say(along),
    across: across === null ? undefined : say(across),
    firstAlong: say(firstAlong),
    firstAcross: say(firstAcross),
    symmetric,
    halfDrop,
    tolerance: say(tolerance),
  };
}

function firstLineJson({ firstLine }: MaterialStock, say: Say): { readonly [key: string]: Json } {
  return firstLine ? { firstLine: { along: say(firstLine.along), across: say(firstLine.across) } } : {};
}

function priceJson({ amount, basis, step, least, steps }: Price, say: Say, unit: LengthUnit): Json {
  const per = writeBasis(basis, unit);
  if (basis.kind === "each") return { amount, per };
  const quantity = (many: number): Json => (basis.kind === "area" && many > 0 ? writeArea(many) : say(many));
  return {
    amount,
    per,
    step: quantity(step),
    least: least === undefined ? undefined : quantity(least),
    steps: steps?.map((one) => ({ from: quantity(one.from), amount: one.amount })),
  };
}

function pricedJson({ toBuy, price }: MaterialStock, say: Say, unit: LengthUnit): { readonly [key: string]: Json } {
  return {
    ...(toBuy === true ? { toBuy } : {}),
    ...(price === undefined ? {} : { price: priceJson(price, say, unit) }),
  };
}

/** A stock as it stands in a file. */
export function stockJson(stock: MaterialStock, say: Say, unit: LengthUnit): Json {
  const priced = pricedJson(stock, say, unit);
  const flaws = stock.flaws.length > 0 ? { flaws: stock.flaws.map((flaw) => flawJson(flaw, say)) } : {};
  if (stock.kind !== "roll") {
    const kept = stock.keptBack === true ? { keptBack: true } : {};
    const { kind, id, count, label } = stock;
    return {
      kind,
      id,
      count,
      label,
      ...kept,
      ...priced,
      shape: shapeJson(stock.shape, say),
      ...flaws,
      ...firstLineJson(stock, say),
    };
  }
  const { kind, id, width, selvedge, length, squaring, label } = stock;
  return {
    kind,
    id,
    label,
    width: say(width),
    selvedge: say(selvedge),
    length: length === null ? "open" : say(length),
    squaring: say(squaring),
    ...priced,
    ...flaws,
    ...firstLineJson(stock, say),
  };
}

function flawJson({ x, y, shape }: Flaw, say: Say): Json {
  return { at: [say(x), say(y)], shape: shapeJson(shape, say) };
}

function shapeJson(shape: Shape, say: Say): Json {
  if (shape.kind === "outline") return { kind: shape.kind, points: pointsJson(shape.contour, say) };
  const { kind, along, across } = shape;
  if (kind === "rectangle") return { kind, along: say(along), across: say(across) };
  return { kind, along: say(along), across: say(across), radius: say(shape.radius) };
}

function strapJson(strap: StrapWish, say: Say): Json {
  const { width, ends, core, hardware, machine, folds, stitch, joins } = strap;
  const { outer, facing, interfacing, padding, webbing, cord } = strap.materials;
  return {
    id: strap.id,
    name: strap.name,
    construction: strap.construction,
    count: strap.count,
    width: width && wishJson(width, say),
    length: wishJson(strap.length, say),
    // In the order of the schema, whichever was chosen first.
    materials: { outer, facing, interfacing, padding, webbing, cord },
    grain: strap.grain,
    adjustment: strap.adjustment,
    shortPart: strap.shortPart === undefined ? undefined : say(strap.shortPart),
    ends: ends?.map((end) => lengths(end, say)),
    endThickness: strap.endThickness === undefined ? undefined : say(strap.endThickness),
    interfacing: strap.interfacing,
    core: core && lengths(core, say),
    hardware: hardware?.map((part) => lengths(part, say)),
    machine: machine && machineJson(machine, say),
    folds: folds && lengths(folds, say, ["clearance", "layers", "paddingPressed"]),
    stitch: stitch && lengths(stitch, say, ["extraRows", "type"]),
    joins: joins && lengths(joins, say),
    edgeFinish: strap.edgeFinish,
    cutBy: strap.cutBy,
  } satisfies Readonly<Record<keyof StrapWish, Json | undefined>>;
}

function wishJson(wish: WidthWish | LengthWish, say: Say): Json {
  return wish.kind === "finished" ? say(wish.mm) : { [wish.kind]: say(wish.mm) };
}

/** A group whose numbers are lengths, but for those named. */
function lengths(group: object, say: Say, numbers: readonly string[] = []): Json {
  return Object.fromEntries(
    Object.entries(group).map(([key, value]: [string, Json]) => [
      key,
      typeof value === "number" && !numbers.includes(key) ? say(value) : value,
    ]),
  );
}

function pinJson({ materialId, stockId, pieceId, copy, x, y, turnDeg, mirrored }: Pin, say: Say): Json {
  return {
    material: materialId,
    stock: stockId,
    piece: pieceId,
    copy,
    x: say(x),
    y: say(y),
    turn: turnDeg,
    mirrored,
  };
}

function keptPlanJson({ materialId, placements, uses, unplaced, ...plan }: KeptPlan): Json {
  return {
    ...plan,
    material: materialId,
    placements: placements.map(({ stockId, pieceId, copy, x, y, turnDeg, mirrored }) => ({
      ...{ stock: stockId, piece: pieceId, copy, x, y },
      ...{ turn: turnDeg, mirrored },
    })),
    uses: uses.map(({ stockId, usedLength, bound }) => ({ stock: stockId, length: usedLength, bound })),
    unplaced: unplaced.map(({ pieceId, count, reason }) => ({ piece: pieceId, count, reason })),
  };
}

function outputJson({ machine, testSquare, paper, lines, ...output }: OutputSettings, say: Say): Json {
  const styled = DRAWING_ROLES.flatMap((role) => {
    const line = lines[role];
    return line === undefined ? [] : [[role, lineJson(line, say)] as const];
  });
  return {
    paper: typeof paper === "string" ? paper : lengths(paper, say),
    orientation: output.orientation,
    pageMargin: say(output.pageMargin),
    overlap: say(output.overlap),
    sheets: output.sheets,
    rollWidth: say(output.rollWidth),
    testSquare: lengths(testSquare, say),
    lengths: output.lengths,
    letters: output.letters,
    sharedEdges: output.sharedEdges,
    lines: styled.length > 0 ? Object.fromEntries(styled) : undefined,
    machine: machine ? lengths(machine, say) : undefined,
  } satisfies Readonly<Record<keyof OutputSettings, Json | undefined>>;
}

function lineJson({ width, dash, ...line }: LineWish, say: Say): Json {
  return { ...line, width: width === undefined ? undefined : say(width), dash: dash?.map(say) };
}
