import type { LineRole } from "../materials/cutPiece.ts";
import type { LengthStyle } from "../units/formatLength.ts";

/** A sheet of no standard size, mm. */
export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/**
 * What a line or text of a drawing is for. The roles of a piece (`cut fold stitch tape mark`), what lies under it
 * (`cloth` edge, `flaw`, `grain` arrow), `label` for all text and its leaders, and `sheet` for what belongs to the
 * paper alone (match marks, page numbers, test squares).
 */
export type DrawingRole = LineRole | "cloth" | "flaw" | "grain" | "label" | "sheet";

/** How the maker wants one role in SVG and DXF files; what is left out stays as the program has it. Lengths in mm. */
export interface LineWish {
  /** Name of the layer in DXF and of the group in SVG; roles of the same name share it. */
  readonly layer?: string | undefined;
  /** `#rrggbb`. */
  readonly color?: string | undefined;
  readonly width?: number | undefined;
  /** Dash and space in turn; empty for a solid line. */
  readonly dash?: readonly number[] | undefined;
  /** False to leave the role out of the files. */
  readonly draw?: boolean | undefined;
}

export type LineWishes = Readonly<Partial<Record<DrawingRole, LineWish | undefined>>>;

/** What can be chosen where a setting is one of several words: for the file, the command line and the page alike. */
export const OUTPUT_CHOICES = {
  orientation: ["fewest", "portrait", "landscape"],
  sheets: ["everything", "curved"],
  letters: ["text", "outlines"],
  sharedEdges: ["once", "each"],
  tool: ["knife", "laser"],
  order: ["nearest", "piece"],
} as const;

type Choice<K extends keyof typeof OUTPUT_CHOICES> = (typeof OUTPUT_CHOICES)[K][number];

/** How sheets, files and texts are to come out. Lengths in mm. */
export interface OutputSettings {
  /** Paper by name, as `A4` or `Letter`, or a size. */
  readonly paper: string | PaperSize;
  readonly orientation: Choice<"orientation">;
  readonly pageMargin: number;
  readonly overlap: number;
  /** What the sheets to tape together show: the whole lay, or curved pieces alone and rectangles as a list of sizes. */
  readonly sheets: Choice<"sheets">;
  /** Width of the copy shop's paper roll. */
  readonly rollWidth: number;
  /** The 100 mm test square as it was measured on paper, across and down the sheet; 100 when the printer is true. */
  readonly testSquare: { readonly x: number; readonly y: number };
  /** How lengths are written for the maker. */
  readonly lengths: LengthStyle;
  /** Whether SVG files hold letters as text, or as outlines that need no font. Turned text is always outlines. */
  readonly letters: Choice<"letters">;
  /** Whether an edge that two pieces share is in SVG and DXF files once, or with each piece. */
  readonly sharedEdges: Choice<"sharedEdges">;
  readonly lines: LineWishes;
  readonly machine: MachineSettings | null;
}

/** A cutting machine. Lengths in mm. */
export interface MachineSettings {
  /** Bed or mat it takes at once. */
  readonly bedWidth: number;
  readonly bedHeight: number;
  /** Edge it grips or cannot reach. */
  readonly grip: number;
  /** Width of material the cut itself takes. */
  readonly kerf: number;
  readonly tool: Choice<"tool">;
  /** How far a drag knife's tip trails behind its holder; 0 when the machine makes it good itself, as most do. */
  readonly bladeOffset: number;
  /** How far a knife cuts on past each sharp corner and past a cut's start, so that corners come free; 0 for none. */
  readonly overcut: number;
  /** The nearest cut next over the whole bed, or all cuts of one piece before the next piece. */
  readonly order: Choice<"order">;
}

/** Every role, in the order adapters that group by role draw them: what matters most is drawn last. */
export const DRAWING_ROLES: readonly DrawingRole[] = [
  "sheet",
  "cloth",
  "flaw",
  "grain",
  "label",
  "tape",
  "mark",
  "stitch",
  "fold",
  "cut",
];

/** What the program does unless it is told otherwise, but for paper and lengths, which go by the maker's units. */
export const USUAL_OUTPUT: Omit<OutputSettings, "paper" | "lengths"> = {
  orientation: "fewest",
  pageMargin: 10,
  overlap: 10,
  sheets: "everything",
  rollWidth: 914.4,
  testSquare: { x: 100, y: 100 },
  letters: "text",
  sharedEdges: "once",
  lines: {},
  machine: null,
};
