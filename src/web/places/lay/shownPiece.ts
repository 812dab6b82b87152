import type { G } from "@svgdotjs/svg.js";
import type { StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { type BriefLabel, briefLabel, LINE } from "./briefLabel.ts";
import { DETAIL, labelSize, type PieceKind } from "./pieceKind.ts";
import { grainArrow } from "./planPaths.ts";

/** Letters lower than this on the screen are not drawn, px. */
const LEAST_LETTERS = 7.5;

type Grain = "both" | "one-way" | "none";

/** A piece as it is drawn. */
export interface Shown {
  readonly group: G;
  readonly label: G;
  /** Name and size, in the label. */
  readonly words: G;
  readonly look: string;
  readonly labelSize: number;
  readonly brief: BriefLabel;
  /** The name alone, drawn once it is wanted. */
  briefWords: G | null;
  readonly grain: Grain;
  placement: StockPlacement;
  pose: string;
  /** Name, pinned and selected as they were drawn last. */
  state: string;
  isSmall: boolean;
  isBrief: boolean;
}

/** Draws a piece with its lines, label, grain arrow and pin; where it lies is not said yet. */
export function putPiece(
  pieces: G,
  key: string,
  placement: StockPlacement,
  kind: PieceKind,
  grain: Grain,
  look: string,
): Shown {
  const group = pieces.group().addClass("piece");
  const { node } = group;
  node.dataset["key"] = key;
  node.setAttribute("role", "button");
  group.path(kind.cutPath).addClass("outline");
  for (const { role, path } of kind.lines) group.path(path).addClass(`ink-${role}`);
  const label = group.group().addClass("label");
  // The piece is named by its own label for screen readers, with what else there is to say of it.
  label.node.setAttribute("aria-hidden", "true");
  const text = kind.count > 1 ? `${kind.name} ${placement.copy + 1}/${kind.count}` : kind.name;
  const size = labelSize(kind, text);
  const words = label.group();
  // The space keeps the two lines apart for whoever reads them as one.
  words.plain(`${text} `).attr({ "font-size": size, "text-anchor": "middle", x: 0, y: -size * 0.15 });
  const detail = { "font-size": size * DETAIL, "text-anchor": "middle", x: 0, y: size * 0.75 };
  words.plain(kind.detail).attr(detail);
  if (grain !== "none") group.path(grainArrow(kind, size, grain)).addClass("grain");
  const pin = group.group().addClass("pin-head");
  pin.node.setAttribute("transform", `translate(${kind.middleX} ${kind.middleY})`);
  pin.circle(2).center(0, 0);
  return {
    ...{ group, label, words, look, labelSize: size, brief: briefLabel(kind, text), briefWords: null, grain },
    ...{ placement, pose: "", state: "", isSmall: false, isBrief: false },
  };
}

/** Shows what can be read at `scale` px per mm: name and size, the name alone in larger letters, or nothing. */
export function fitLabel(shown: Shown, scale: number, kind: PieceKind | undefined): void {
  const isSmall = shown.labelSize * scale < LEAST_LETTERS;
  const isBrief = isSmall && shown.brief.size * scale >= LEAST_LETTERS;
  if (isSmall === shown.isSmall && isBrief === shown.isBrief) return;
  shown.isSmall = isSmall;
  shown.isBrief = isBrief;
  shown.words.node.classList.toggle("too-small", isSmall);
  if (isBrief) shown.briefWords ??= putBrief(shown.label, shown.brief);
  shown.briefWords?.node.classList.toggle("too-small", !isBrief);
  if (shown.grain === "none" || kind === undefined) return;
  // Half the lines, and a little air: the arrow lies beside what is written.
  const { size, lines } = shown.brief;
  const letters = isBrief ? (size * ((LINE * lines.length) / 2 + 0.35)) / 1.25 : shown.labelSize;
  shown.group.findOne(".grain")?.attr("d", grainArrow(kind, letters, shown.grain));
}

/** The name alone in its lines, in the middle of a label. */
function putBrief(label: G, { lines, size }: BriefLabel): G {
  const words = label.group();
  for (const [i, line] of lines.entries()) {
    // A letter's middle lies about a third of its height over its foot.
    const y = (i - (lines.length - 1) / 2) * size * LINE + size * 0.35;
    words.plain(`${line} `).attr({ "font-size": size, "text-anchor": "middle", x: 0, y });
  }
  return words;
}
