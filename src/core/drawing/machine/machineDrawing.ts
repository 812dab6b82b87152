import { offsetOf } from "../../geometry/clipper.ts";
import type { Contour } from "../../geometry/contour.ts";
import { contourBox, flattenContour, poseContour } from "../../geometry/contourArcs.ts";
import { rectangleContour, ringContour } from "../../geometry/contourShapes.ts";
import { kerfContour } from "../../geometry/kerfContour.ts";
import { reversedRing, signedArea } from "../../geometry/ring.ts";
import type { Language } from "../../units/language.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import type { Drawing, DrawingItem, DrawnLine } from "../list/drawing.ts";
import { drawLine, drawText } from "../list/items.ts";
import { bladePath } from "./bladePath.ts";
import { type CutPath, cutOrder } from "./cutOrder.ts";
import { cornerOvercuts, overcutPath } from "./overcut.ts";
import { singleCuts } from "./singleCuts.ts";

/** How a machine cuts. Lengths in mm. */
export interface MachineWish {
  /** Bed or mat it takes at once, and the edge of it that it grips or cannot reach. */
  readonly bedWidth: number;
  readonly bedHeight: number;
  readonly grip: number;
  /** Width of material the cut takes: cut lines are moved out by half of it. */
  readonly kerf: number;
  /** How far a drag knife's tip trails behind its holder; 0 when the machine makes it good itself. */
  readonly bladeOffset: number;
  /** How far cuts run on past outside corners, and a closed cut past its start; 0 for none. */
  readonly overcut: number;
  /** Whether an edge that two pieces share is cut once; only where the kerf is 0. */
  readonly sharedOnce: boolean;
  /** The nearest cut next over the whole bed, or all cuts of one piece before the next piece. */
  readonly order: "nearest" | "piece";
}

/** Side of the square that is drawn, not cut, to check the machine's scale with, mm. */
const CHECK_SIDE = 100;

/**
 * One mat for a cutting machine: what was laid on it moved in by the gripped edge, cut lines made good for kerf and
 * blade and put in cutting order, a check square on a layer that is not cut. The box is the whole bed.
 */
export function machineDrawing(sheet: LaySheet, wish: MachineWish, language: Language = "en"): Drawing {
  const { bedWidth, bedHeight, grip } = wish;
  const move = { x: grip, y: grip, turnDeg: 0, mirrored: false };
  const moved = sheet.drawing.items.flatMap((item): DrawingItem[] => {
    if (item.kind === "area" || item.role === "cloth" || item.role === "flaw") return [];
    if (item.kind === "text") return [{ ...item, x: item.x + grip, y: item.y + grip }];
    return [{ ...item, contour: poseContour(item.contour, move) }];
  });
  const isCut = (item: DrawingItem): item is DrawnLine => item.kind === "line" && item.role === "cut";
  const box = { minX: 0, minY: 0, maxX: bedWidth, maxY: bedHeight };
  const cuts = cutPaths(moved.filter(isCut), wish);
  const { x, y, side } = freeSquare(moved.filter(isCut), wish);
  const check: DrawingItem[] = [
    drawLine("sheet", rectangleContour(x, y, side, side)),
    drawText(
      PAPER_TEXTS[language].mats.check(withDecimalSign(`${Math.round(side * 10) / 10} mm`, language)),
      x + 3,
      y + 3,
      4,
      {
        role: "sheet",
      },
    ),
  ];
  return {
    box,
    items: [
      ...check,
      ...moved.filter((item) => !isCut(item)),
      ...cuts.map(({ contour, owner }) => drawLine("cut", contour, owner)),
    ],
  };
}

/** Steps in which a free place is looked for, and what the square keeps from the pieces, mm. */
const SQUARE_STEP = 5;
const SQUARE_GAP = 2;

/**
 * Where the check square goes: beside the pieces, as large as there is room for; in the corner where there is none at
 * all. Pieces count as their boxes.
 */
function freeSquare(cuts: readonly DrawnLine[], { bedWidth, bedHeight, grip }: MachineWish) {
  const boxes = cuts.map(({ contour }) => contourBox(contour));
  const largest = Math.min(CHECK_SIDE, bedWidth - 2 * grip, bedHeight - 2 * grip);
  const isFree = (x: number, y: number, side: number) =>
    boxes.every(
      ({ minX, minY, maxX, maxY }) =>
        x + side + SQUARE_GAP <= minX ||
        maxX + SQUARE_GAP <= x ||
        y + side + SQUARE_GAP <= minY ||
        maxY + SQUARE_GAP <= y,
    );
  for (const share of [1, 0.8, 0.6, 0.5, 0.4]) {
    const side = largest * share;
    // From the far corner of the bed: pieces are laid from the near one.
    for (let x = bedWidth - grip - side; x >= grip - 1e-9; x -= SQUARE_STEP)
      for (let y = bedHeight - grip - side; y >= grip - 1e-9; y -= SQUARE_STEP)
        if (isFree(x, y, side)) return { x, y, side };
  }
  return { x: grip, y: grip, side: largest };
}

/** Cut lines for a machine, in order. */
export function cutPaths(cuts: readonly DrawnLine[], wish: MachineWish): CutPath[] {
  const box = { minX: 0, minY: 0, maxX: wish.bedWidth, maxY: wish.bedHeight };
  const holes = holeLines(cuts);
  const widened = cuts.flatMap((cut) =>
    kerfed(cut.contour, (holes.has(cut) ? -wish.kerf : wish.kerf) / 2).flatMap((contour) => [
      { ...cut, contour },
      ...cornerOvercuts(contour, wish.overcut, holes.has(cut)).map((mark) => ({ ...cut, contour: mark })),
    ]),
  );
  const once =
    wish.sharedOnce && wish.kerf === 0 ? singleCuts({ box, items: widened }).items.filter(isLine) : widened;
  const ordered = cutOrder(
    once.map(({ contour, owner }) => ({ contour, owner })),
    wish.order,
  );
  return ordered.map((path) => ({
    ...path,
    contour: bladePath(overcutPath(path.contour, wish.overcut), wish.bladeOffset),
  }));
}

const isLine = (item: DrawingItem): item is DrawnLine => item.kind === "line";

/** Cut lines that are holes of their piece: all of an owner's but its largest. */
function holeLines(cuts: readonly DrawnLine[]): Set<DrawnLine> {
  const largest = new Map<string | undefined, { cut: DrawnLine; area: number }>();
  for (const cut of cuts) {
    const area = Math.abs(signedArea(flattenContour(cut.contour)));
    const known = largest.get(cut.owner);
    if (!known || area > known.area) largest.set(cut.owner, { cut, area });
  }
  return new Set(cuts.filter((cut) => cut.owner !== undefined && largest.get(cut.owner)!.cut !== cut));
}

/** A closed contour moved out by `distance`; where its arcs cannot be kept, flattened to within a hundredth. */
function kerfed(contour: Contour, distance: number): Contour[] {
  if (distance === 0 || !contour.closed) return [contour];
  const ccw = signedArea(flattenContour(contour)) >= 0 ? contour : reversedContour(contour);
  const kept = kerfContour(ccw, distance);
  if (kept) return [kept];
  const ring = flattenContour(ccw);
  return offsetOf([ring], distance, { kind: "miter", limit: 4 }).flatMap(({ outer, holes }) =>
    [outer, ...holes.map(reversedRing)].map(ringContour),
  );
}

/** A closed contour walked the other way. */
function reversedContour({ vertices, closed }: Contour): Contour {
  const count = vertices.length / 3;
  const out = new Float64Array(vertices.length);
  for (let i = 0; i < count; i++) {
    const from = count - 1 - i;
    out[3 * i] = vertices[3 * from]!;
    out[3 * i + 1] = vertices[3 * from + 1]!;
    // The edge that left the vertex before now leaves this one, bent the other way.
    out[3 * i + 2] = -vertices[3 * ((from - 1 + count) % count) + 2]!;
  }
  return { vertices: out, closed };
}
