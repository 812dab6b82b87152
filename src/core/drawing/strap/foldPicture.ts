import type { Contour } from "../../geometry/contour.ts";
import { straightContour } from "../../geometry/contourShapes.ts";
import type { InchStep } from "../../materials/material.ts";
import type { DrawnStrap } from "../../straps/build/strapResult.ts";
import { CONSTRUCTIONS } from "../../straps/constructions/catalogue.ts";
import type { StrapWords } from "../../words/strapWords.ts";
import type { Drawing, DrawingItem } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { textWidth, wrapText } from "../list/textWidth.ts";
import { lengthLabel, levelDimension, thicknessLabel, uprightDimension } from "./dimensionLine.ts";
import { layeredArt } from "./layeredArt.ts";
import type { ArtLayer, SectionArt } from "./sectionArt.ts";
import { wrappedArt } from "./wrappedArt.ts";

const TEXT = 3.2;
const SMALL = 2.8;
const HEAD = 4;
const MARGIN = 6;
const LEGEND_ROW = 5;
/** Width the section is magnified to at most, mm. */
const WIDE = 120;
const SCALES = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20];

function magnified(contour: Contour, scale: number, x: number, y: number): Contour {
  const vertices = Float64Array.from(contour.vertices, (value, i) =>
    i % 3 === 2 ? value : value * scale + (i % 3 === 0 ? x : y),
  );
  return { vertices, closed: contour.closed };
}

function layerText({ word, thickness, skivedTo }: ArtLayer, inches: InchStep | null, words: StrapWords): string {
  const { picture } = words;
  const say = (mm: number): string => thicknessLabel(mm, inches, words.language);
  const whole = `${picture.layers[word]}, ${say(thickness)}`;
  return skivedTo === undefined ? whole : `${whole}, ${picture.edgesSkived(say(skivedTo))}`;
}

/** Colours and lines explained, in rows no wider than `width`. Returns the rows' items and how high they are. */
function legend(
  art: SectionArt,
  width: number,
  inches: InchStep | null,
  words: StrapWords,
): { readonly items: DrawingItem[]; readonly height: number } {
  const entries: { text: string; mark: (x: number, y: number) => DrawingItem[]; room: number }[] = art.layers.map(
    (layer) => ({
      text: layerText(layer, inches, words),
      room: 5.5,
      mark: (x, y) => {
        const square = straightContour([x, y, x + 4, y, x + 4, y + 2.6, x, y + 2.6], true);
        return [drawArea(layer.tone, [square]), drawLine("mark", square)];
      },
    }),
  );
  const line = (text: string, role: "cut" | "stitch", length: number): void => {
    const mark = (x: number, y: number) => [drawLine(role, straightContour([x, y + 1.3, x + length, y + 1.3]))];
    entries.push({ text, room: length + 1.5, mark });
  };
  if (art.rawEdges.length > 0) line(words.picture.rawEdge, "cut", 5);
  if (art.stitches.length > 0) line(words.picture.stitch, "stitch", 7);
  const rows: (typeof entries)[] = [[]];
  let used = 0;
  for (const entry of entries) {
    const takes = entry.room + textWidth(entry.text, SMALL) + 5;
    if (used + takes > width && rows.at(-1)!.length > 0) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)!.push(entry);
    used += takes;
  }
  const items: DrawingItem[] = [];
  rows.forEach((row, i) => {
    const y = MARGIN + (rows.length - 1 - i) * LEGEND_ROW;
    let x = MARGIN;
    for (const entry of row) {
      items.push(...entry.mark(x, y), drawText(entry.text, x + entry.room, y + 0.2, SMALL));
      x += entry.room + textWidth(entry.text, SMALL) + 5;
    }
  });
  return { items, height: rows.length * LEGEND_ROW };
}

/** A raw edge is told from a fold by a heavy bar across the layer, a little longer than it is thick. */
function rawEdge(
  edge: readonly [number, number, number, number],
  scale: number,
  x: number,
  y: number,
): DrawingItem {
  return drawLine(
    "cut",
    straightContour([edge[0] * scale + x, edge[1] * scale + y, edge[2] * scale + x, edge[3] * scale + y]),
  );
}

/** What the picture says below its title. */
function subtitle(result: DrawnStrap, scale: number, { picture, language }: StrapWords): string {
  const magnified = picture.magnified(scale, lengthLabel(result.cutWidth, result.inches, language));
  if (result.setback <= 0) return magnified;
  const held = CONSTRUCTIONS[result.wish.construction].heldEdge === "hem" ? picture.hemHeld : picture.rawEdgeHeld;
  return `${magnified}, ${held(lengthLabel(result.setback, result.inches, language))}`;
}

/**
 * Cross-section of a strap, magnified by a whole factor that it names: layers by material, folds as true arcs, raw
 * edges, stitches, width and thickness. At most `room` mm wide, unless the strap itself is wider.
 */
export function foldPicture(result: DrawnStrap, title: string, words: StrapWords, room: number): Drawing {
  const { language } = words;
  const art = strapSectionArt(result);
  const thickness = thicknessLabel(art.height, result.inches, language);
  const beside = 2 * MARGIN + 6 + textWidth(thickness, TEXT);
  const scale = SCALES.filter((factor) => factor * art.width <= Math.min(WIDE, room - beside)).at(-1) ?? 1;
  const dimensions = beside + art.width * scale;
  const inner = Math.max(room, dimensions) - 2 * MARGIN;
  const about = wrapText(subtitle(result, scale, words), SMALL, inner);
  const heads = wrapText(title, HEAD, inner, true);
  const wide = [
    ...about.map((line) => textWidth(line, SMALL)),
    ...heads.map((line) => textWidth(line, HEAD, true)),
  ];
  const width = Math.max(dimensions, 2 * MARGIN + Math.max(...wide));
  const key = legend(art, width - 2 * MARGIN, result.inches, words);
  const dimensionY = MARGIN + key.height + 5;
  const baseY = dimensionY + 7;
  const x = MARGIN;
  const top = baseY + art.height * scale;
  const right = x + art.width * scale;
  const items: DrawingItem[] = [];
  for (const area of art.areas) {
    const contour = magnified(area.contour, scale, x, baseY);
    items.push(drawArea(area.tone, [contour]), drawLine("mark", contour));
  }
  for (const seam of art.seams) items.push(drawLine("mark", magnified(seam, scale, x, baseY)));
  for (const edge of art.rawEdges) items.push(rawEdge(edge, scale, x, baseY));
  for (const [at, low, high] of art.stitches) {
    const sx = at * scale + x;
    items.push(drawLine("stitch", straightContour([sx, low * scale + baseY - 2, sx, high * scale + baseY + 2])));
  }
  items.push(
    ...levelDimension(x, right, baseY - 1, dimensionY, lengthLabel(art.width, result.inches, language), TEXT),
  );
  items.push(...uprightDimension(right + 4, baseY, top, thickness, TEXT));
  let heading = top + 6;
  if (art.setback !== null && art.setback * scale > 0.5) {
    items.push(
      ...levelDimension(
        x,
        x + art.setback * scale,
        top + 1,
        top + 4,
        lengthLabel(art.setback, result.inches, language),
        SMALL,
      ),
    );
    heading += 6;
  }
  items.push(...key.items);
  for (const line of about.toReversed()) {
    items.push(drawText(line, x, heading, SMALL));
    heading += 4;
  }
  heading += 1;
  for (const line of heads.toReversed()) {
    items.push(drawText(line, x, heading, HEAD, { bold: true }));
    heading += 5;
  }
  return { box: { minX: 0, minY: 0, maxX: width, maxY: heading - 1 + MARGIN }, items };
}

/** The art of a strap's section in its own mm, for a picture on paper or a screen's own drawing. */
export function strapSectionArt(result: DrawnStrap): SectionArt {
  const { section } = result;
  return section.kind === "layered" ? layeredArt(result, section) : wrappedArt(section);
}
