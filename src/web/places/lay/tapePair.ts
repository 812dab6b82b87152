import type { Language } from "../../../core/units/language.ts";
import { withDecimalSign } from "../../../core/units/numberWords.ts";
import { type Frame, toTable } from "./frame.ts";
import { tapeTicks } from "./tapeTicks.ts";

/** How wide a tape is, px: the upright one has room for three figures beside its short marks. */
const WIDE = { level: 26, upright: 30 } as const;
/** More figures than these stand smaller on the upright tape. */
const FIGURES = 3;
/** Height of the letters, px. */
const LETTERS = { usual: 11, small: 9 } as const;
/** Room for the unit at the end of the tape, px. */
const UNIT = 64;
/** Length of the marks, px. */
const LONG = { long: 14, middle: 9, short: 5 } as const;

/** What the tapes are divided in, and the language of their numbers. */
export interface TapeUnits {
  readonly system: "metric" | "inches";
  readonly language: Language;
}

/**
 * Two tape measures along the edges of a view: one along its foot, one along its left side. They are canvases: marks
 * that are elements come and go with each step of a zoom and have the browser lay out, paint and sort the page anew.
 */
export class TapePair {
  private readonly level = document.createElement("canvas");
  private readonly upright = document.createElement("canvas");
  private readonly theme = new MutationObserver(() => this.ask());
  private units: TapeUnits;
  private frame: Frame | null = null;
  private size = { width: 0, height: 0 };
  private asked = 0;

  constructor(host: HTMLElement, units: TapeUnits) {
    this.units = units;
    this.level.className = "tape level";
    this.upright.className = "tape upright";
    host.append(this.level, this.upright);
    this.theme.observe(document.documentElement, { attributeFilter: ["data-theme"] });
    // The page's own letters may come after the first drawing.
    void document.fonts.ready.then(() => this.ask());
  }

  /** Shows the table from another place. */
  look(frame: Frame): void {
    this.frame = frame;
    this.ask();
  }

  /** Divides the tapes in other units. */
  divide(units: TapeUnits): void {
    this.units = units;
    this.ask();
  }

  /** Another size of the view beside the tapes, px. */
  fit(width: number, height: number): void {
    this.size = { width, height };
    cut(this.level, WIDE.upright + width, WIDE.level);
    cut(this.upright, WIDE.upright, height);
    // A canvas that takes another size is empty.
    this.draw();
  }

  /** Takes the tapes off the page. */
  remove(): void {
    cancelAnimationFrame(this.asked);
    this.theme.disconnect();
    this.level.remove();
    this.upright.remove();
  }

  private ask(): void {
    cancelAnimationFrame(this.asked);
    this.asked = requestAnimationFrame(() => this.draw());
  }

  private draw(): void {
    cancelAnimationFrame(this.asked);
    const { frame } = this;
    if (frame === null || this.size.width === 0) return;
    const { color, fontFamily } = getComputedStyle(this.level);
    const [x0, y0] = toTable(frame, 0, 0);
    const [x1, y1] = toTable(frame, this.size.width, this.size.height);
    const [level, side] = frame.upright
      ? [[y0, y1] as const, [x0, x1] as const]
      : [[x0, x1] as const, [y1, y0] as const];
    this.drawLevel(frame, level, pen(this.level, color), fontFamily);
    this.drawSide(frame, side, pen(this.upright, color), fontFamily);
  }

  private drawLevel(frame: Frame, [from, to]: readonly [number, number], ink: Ink, family: string): void {
    const { system, language } = this.units;
    const end = WIDE.upright + this.size.width;
    ink.font = letters(LETTERS.usual, family);
    for (const { mm, rank, text } of tapeTicks(system, from, to, frame.scale)) {
      // The tape begins under the one at the side.
      const x = WIDE.upright + frame.originX + mm * frame.scale;
      ink.fillRect(x - 0.5, 0, 1, LONG[rank]);
      if (text !== null && x < end - UNIT) ink.fillText(withDecimalSign(text, language), x + 3, WIDE.level - 5);
    }
    ink.textAlign = "right";
    ink.fillText(system === "metric" ? "cm" : "in", end - 6, WIDE.level - 5);
  }

  private drawSide(frame: Frame, [from, to]: readonly [number, number], ink: Ink, family: string): void {
    const { system, language } = this.units;
    const down = frame.upright ? frame.scale : -frame.scale;
    for (const { mm, rank, text } of tapeTicks(system, from, to, frame.scale)) {
      const y = frame.originY + mm * down;
      ink.fillRect(WIDE.upright - LONG[rank], y - 0.5, LONG[rank], 1);
      if (text === null) continue;
      ink.font = letters(text.length > FIGURES ? LETTERS.small : LETTERS.usual, family);
      ink.fillText(withDecimalSign(text, language), 2, y - 5);
    }
  }
}

type Ink = CanvasRenderingContext2D;

/** A clean canvas to draw on in px of the page. */
function pen(canvas: HTMLCanvasElement, color: string): Ink {
  const ink = canvas.getContext("2d")!;
  const ratio = devicePixelRatio;
  ink.setTransform(1, 0, 0, 1, 0, 0);
  ink.clearRect(0, 0, canvas.width, canvas.height);
  ink.setTransform(ratio, 0, 0, ratio, 0, 0);
  ink.fillStyle = color;
  ink.textAlign = "left";
  return ink;
}

function letters(height: number, family: string): string {
  return `600 ${height}px ${family}`;
}

/** Gives a canvas a size on the page, sharp on its screen. */
function cut(canvas: HTMLCanvasElement, width: number, height: number): void {
  canvas.width = Math.round(width * devicePixelRatio);
  canvas.height = Math.round(height * devicePixelRatio);
  canvas.style.width = `${width}px`;
  canvas.style.height = `${height}px`;
}
