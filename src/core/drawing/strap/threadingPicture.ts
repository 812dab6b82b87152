import { circleContour, straightContour } from "../../geometry/contourShapes.ts";
import type { DrawnStrap } from "../../straps/build/strapResult.ts";
import type { StrapWords } from "../../words/strapWords.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { wrapText } from "../list/textWidth.ts";
import { lengthLabel } from "./dimensionLine.ts";

const TEXT = 3.2;
const HEAD = 4;
const MARGIN = 6;
/** Room of one step: its picture above its words. Drawing mm. */
const FRAME = 34;
/** Height of the strap's line of rest above the words. */
const REST = 15;
/** The strap as it is drawn from the side. */
const THICK = 1.3;
const BAR = 1.2;

/** Where things stand from left to right; the strap's own hardware, the slider's middle bar, the ring. */
const AT = { own: 12, slider: 66, ring: 122, other: 164 } as const;
const SLIDER_REACH = 8;
const RING_REACH = 4.5;
/** A run beside its bar. */
const BESIDE = BAR + THICK / 2 + 0.2;
/** A run that passes the loop round the middle bar. */
const PAST_LOOP = BESIDE + THICK + 0.4;

type Point = readonly [x: number, y: number];

/** From point to point in gentle waves: level at every point. */
function wave(points: readonly Point[]): Point[] {
  const out: Point[] = [points[0]!];
  for (let i = 1; i < points.length; i++) {
    const [[x0, y0], [x1, y1]] = [points[i - 1]!, points[i]!];
    for (let k = 1; k <= 12; k++) {
      const t = k / 12;
      out.push([x0 + (x1 - x0) * t, y0 + ((y1 - y0) * (1 - Math.cos(Math.PI * t))) / 2]);
    }
  }
  return out;
}

/** Half round a bar at (x, y), from below it to above it or the other way; `side` 1 round its right, -1 round its left. */
function round(x: number, y: number, side: 1 | -1, up: boolean): Point[] {
  return Array.from({ length: 13 }, (_, k): Point => {
    const angle = (Math.PI * k) / 12 - Math.PI / 2;
    const turned = up ? angle : -angle;
    return [x + side * BESIDE * Math.cos(turned), y + BESIDE * Math.sin(turned)];
  });
}

/** A line of the strap's thickness along a path. */
function band(path: readonly Point[]): DrawingItem[] {
  const left: number[] = [];
  const right: number[] = [];
  for (const [i, [x, y]] of path.entries()) {
    const [[ax, ay], [bx, by]] = [path[Math.max(0, i - 1)]!, path[Math.min(path.length - 1, i + 1)]!];
    const length = Math.hypot(bx - ax, by - ay) || 1;
    const [nx, ny] = [(-(by - ay) / length) * (THICK / 2), ((bx - ax) / length) * (THICK / 2)];
    left.push(x + nx, y + ny);
    right.unshift(x - nx, y - ny);
  }
  const contour = straightContour([...left, ...right], true);
  return [drawArea("face", [contour]), drawLine("mark", contour)];
}

const bar = (x: number, y: number): DrawingItem => drawArea("ink", [circleContour(x, y, BAR)]);

function stitches(x: number, y: number, high: number): DrawingItem[] {
  return [0, 2].map((dx) => drawLine("stitch", straightContour([x + dx, y - high, x + dx, y + high])));
}

/**
 * The strap's way by step: each has what the steps before it have, and goes on from there. Over the slider's right bar
 * lie, from below: the strap on its way back, the end of its loop, and its run to the ring; so nothing crosses.
 */
function ways(y: number): readonly (readonly Point[])[] {
  const { own, slider, ring } = AT;
  const ringBar = ring - RING_REACH;
  const right = slider + SLIDER_REACH;
  const [back, end, out] = [0, 1, 2].map((layer) => y + BESIDE + layer * (THICK + 0.25)) as [
    number,
    number,
    number,
  ];
  const loop: Point[] = [
    ...wave([
      [right + 13, end],
      [right, end],
      [slider, y - BESIDE],
    ]),
    ...round(slider, y, -1, true),
    ...wave([
      [slider, y + BESIDE],
      [right, out],
      [right + 14, out],
    ]),
  ];
  const toRing: Point[] = [
    ...wave([
      [right + 14, out],
      [ringBar - 6, y + BESIDE],
      [ringBar, y + BESIDE],
    ]),
    ...round(ringBar, y, 1, false),
  ];
  const through = wave([
    [ringBar, y - BESIDE],
    [right + 12, y - BESIDE],
    [right, back],
    [slider, y - PAST_LOOP],
    [slider - SLIDER_REACH, y + BESIDE],
    [own + 30, y + BESIDE],
  ]);
  const home: Point[] = [
    [own, y + BESIDE],
    ...round(own, y, -1, false),
    ...wave([
      [own, y - BESIDE],
      [own + 6, y - BESIDE],
      [own + 20, y + BESIDE - THICK - 0.3],
    ]),
  ];
  const one: Point[] = [...loop, [slider + 36, out]];
  const two: Point[] = [...loop, ...toRing, [slider + 30, y - BESIDE]];
  const three: Point[] = [...loop, ...toRing, ...through];
  return [one, two, three, [...three, ...home]];
}

/** The short half of a two-part strap, between the ring and its own hardware. */
function shortPart(y: number): DrawingItem[] {
  const [from, to] = [AT.ring + RING_REACH, AT.other];
  const path: Point[] = [
    ...wave([
      [from + 14, y - BESIDE + THICK + 0.3],
      [from + 5, y + BESIDE],
      [from, y + BESIDE],
    ]),
    ...round(from, y, -1, false),
    [to, y - BESIDE],
    ...round(to, y, 1, true),
    ...wave([
      [to, y + BESIDE],
      [to - 5, y + BESIDE],
      [to - 14, y - BESIDE + THICK + 0.3],
    ]),
  ];
  return [...band(path), bar(to, y), ...stitches(from + 9, y, 3), ...stitches(to - 11, y, 3)];
}

/**
 * How an adjustable strap is threaded, step by step, from the side; null for a strap without a slider. Below stands
 * how long it is worn and what its hardware adds. Not to scale. Drawing mm.
 */
export function threadingPicture(result: DrawnStrap, words: StrapWords, room: number): Drawing | null {
  const { longest, shortest } = result.lengths;
  if (longest === null || shortest === null) return null;
  const { threading } = words.picture;
  const twoPart = result.lengths.shortPart !== null;
  const own = result.hardware.find(({ kind }) => kind === "clasp") ? "clasp" : "ring";
  const width = Math.max(room, AT.other + 2 * MARGIN);
  const inner = width - 2 * MARGIN;
  const say = (mm: number): string => lengthLabel(mm, result.inches, words.language);
  const worn = wrapText(threading.worn(say(longest), say(shortest)), TEXT, inner);
  const steps = threading.steps.map((step, i) => wrapText(`${i + 1}. ${step}`, TEXT, inner));
  const items: DrawingItem[] = [];
  let y = MARGIN;
  for (const line of worn.toReversed()) {
    items.push(drawText(line, MARGIN, y, TEXT));
    y += 4.5;
  }
  for (const [i, lines] of [...steps.entries()].toReversed()) {
    for (const line of lines.toReversed()) {
      items.push(drawText(line, MARGIN, y, TEXT));
      y += 4.5;
    }
    const rest = y + REST - 3;
    const { slider, ring } = AT;
    items.push(...band(ways(rest)[i]!));
    items.push(
      drawLine("mark", straightContour([slider - SLIDER_REACH, rest, slider + SLIDER_REACH, rest])),
      ...[-SLIDER_REACH, 0, SLIDER_REACH].map((dx) => bar(slider + dx, rest)),
      drawText(threading.slider, slider, rest + 9, TEXT, { anchor: "middle" }),
      ...stitches(slider + SLIDER_REACH + 8, rest + BESIDE + 1.5 * THICK + 0.4, 2),
    );
    if (i >= 1)
      items.push(
        drawLine("mark", straightContour([ring - RING_REACH, rest, ring + RING_REACH, rest])),
        bar(ring - RING_REACH, rest),
        bar(ring + RING_REACH, rest),
        drawText(threading.ring, ring, rest + 8, TEXT, { anchor: "middle" }),
        ...(twoPart ? shortPart(rest) : []),
      );
    if (i >= 1 && twoPart)
      items.push(drawText(words.parts.shortPart, (ring + AT.other) / 2 + 4, rest - 8, TEXT, { anchor: "middle" }));
    if (i === 3)
      items.push(
        bar(AT.own, rest),
        drawText(threading[own], AT.own, rest + 8, TEXT, { anchor: "middle" }),
        ...stitches(AT.own + 12, rest, 3),
      );
    y = rest + FRAME - REST - 3;
  }
  items.push(drawText(threading.title, MARGIN, y, HEAD, { bold: true }));
  return { box: { minX: 0, minY: 0, maxX: width, maxY: y + HEAD + MARGIN - 1 }, items };
}
