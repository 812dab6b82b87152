import type { DrawnText } from "../../core/drawing/list/drawing.ts";
import type { Page, PagePart } from "../../core/drawing/list/page.ts";
import { type RoleStyle, type RoleStyles, TONE_COLORS } from "../../core/drawing/list/roleStyles.ts";
import { turnCosSin } from "../../core/geometry/pose.ts";
import { pathOperators, pdfNumber } from "./paths.ts";
import type { Typesetter } from "./typesetter.ts";

/** What a page's content depends on besides its items. */
export interface ContentSettings {
  readonly styles: RoleStyles;
  /** The page's user unit in mm. */
  readonly unit: number;
  readonly type: Typesetter;
  readonly background: string | undefined;
}

/** Operators of one page's content stream. Source: ISO 32000-1, clauses 8 and 9. */
export function pageContent(page: Page, settings: ContentSettings): string {
  const { styles, unit, type, background } = settings;
  // One millimetre is 1 / unit user units; nine decimals keep 10 m within a hundredth of a micrometre.
  const k = pdfNumber(1 / unit, 9);
  const ground =
    background === undefined
      ? ""
      : `${fillColor(background)}0 0 ${pdfNumber(page.width)} ${pdfNumber(page.height)} re f\n`;
  const out = [`${k} 0 0 ${k} 0 0 cm\n1 j\n${ground}`];
  for (const part of page.parts) putPart(part, styles, type, out);
  return out.join("");
}

function putPart(part: PagePart, styles: RoleStyles, type: Typesetter, out: string[]): void {
  const { x, y, scaleX, scaleY, clip } = part;
  const toPaper = Math.sqrt(scaleX * scaleY);
  out.push("q\n");
  if (clip) {
    out.push(
      `${[clip.minX, clip.minY, clip.maxX - clip.minX, clip.maxY - clip.minY].map((n) => pdfNumber(n)).join(" ")} re W n\n`,
    );
  }
  const matrix = [scaleX, 0, 0, scaleY].map((n) => pdfNumber(n, 9)).join(" ");
  out.push(`${matrix} ${pdfNumber(x, 6)} ${pdfNumber(y, 6)} cm\n`);
  const strokes = new Map<RoleStyle, string>();
  let last = "";
  for (const item of part.items) {
    if (item.kind === "area") {
      out.push(fillColor(TONE_COLORS[item.tone]));
      for (const contour of item.contours) out.push(pathOperators(contour));
      out.push("f*\n");
      continue;
    }
    const style = styles[item.role];
    if (item.kind === "text") {
      out.push(textContent(item, item.tone ? TONE_COLORS[item.tone] : style.color, type));
      continue;
    }
    const set = strokes.get(style) ?? strokeState(style, toPaper);
    strokes.set(style, set);
    if (set !== last) out.push(set);
    last = set;
    out.push(pathOperators(item.contour), "S\n");
  }
  out.push("Q\n");
}

/** Colour, width and dashes of a role; widths are on paper, so a scaled part takes them the other way. */
function strokeState(style: RoleStyle, toPaper: number): string {
  const dash = style.dash.map((length) => pdfNumber(length / toPaper)).join(" ");
  return `${rgb(style.color)} RG ${pdfNumber(style.width / toPaper)} w [${dash}] 0 d\n`;
}

const fillColor = (color: string): string => `${rgb(color)} rg\n`;

/** The few colours of styles and tones as they are written. */
const colors = new Map<string, string>();

function rgb(color: string): string {
  const known = colors.get(color);
  if (known !== undefined) return known;
  const value = Number.parseInt(color.slice(1), 16);
  const parts = [value >> 16, (value >> 8) & 255, value & 255];
  const written = parts.map((part) => pdfNumber(part / 255, 3)).join(" ");
  colors.set(color, written);
  return written;
}

function textContent(item: DrawnText, color: string, type: Typesetter): string {
  const runs = type.runs(item.text, item.bold ?? false);
  const width = runs.reduce((sum, run) => sum + run.width, 0) * item.size;
  const back = item.anchor === "start" ? 0 : item.anchor === "middle" ? width / 2 : width;
  const [c, s] = turnCosSin(item.turnDeg);
  const matrix = [c, s, -s, c, item.x - c * back, item.y - s * back].map((n) => pdfNumber(n)).join(" ");
  const shown = runs.map((run) => `/${run.font} ${pdfNumber(item.size)} Tf ${run.codes} Tj\n`).join("");
  return `${fillColor(color)}BT ${matrix} Tm\n${shown}ET\n`;
}
