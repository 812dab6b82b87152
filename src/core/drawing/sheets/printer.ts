import type { Paper } from "../../project/papers.ts";
import type { Language } from "../../units/language.ts";
import { withDecimalSign } from "../../units/numberWords.ts";
import { PAPER_TEXTS } from "../../words/words.ts";

/** What the measured test square says about the printer. */
export interface PrinterFinding {
  /** `true` within what a ruler shows; `fit-to-page`: shrunk or grown alike both ways, as a print window does it. */
  readonly kind: "true" | "fit-to-page" | "uneven" | "off";
  /** Drawn ÷ measured, to scale the next print by; 1 when true. */
  readonly correction: { readonly x: number; readonly y: number };
  /** The two papers whose sizes explain a fit: drawn for the first, printed on the second. */
  readonly papers: readonly [string, string] | null;
}

/** A tenth of a millimetre on 100 mm cannot be read off a ruler. */
const READABLE = 0.0015;
/** Measured squares this near a paper's factor are taken to be it. */
const NEAR = 0.004;

/**
 * Names what is wrong with a printer from a `side` mm test square that measures `x` across and `y` down the sheet.
 * A print window that fits a page to another paper, or inside a printer's own margins, scales both ways alike; a
 * printer's mechanics are off by little and differently each way. RangeError unless all lengths are positive.
 */
export function diagnosePrinter(side: number, x: number, y: number, papers: readonly Paper[]): PrinterFinding {
  if (!(side > 0 && x > 0 && y > 0)) {
    throw new RangeError(`diagnosePrinter: positive lengths expected, got ${side}, ${x}, ${y}`);
  }
  const factor = { x: x / side, y: y / side };
  const correction = { x: side / x, y: side / y };
  const offX = Math.abs(factor.x - 1);
  const offY = Math.abs(factor.y - 1);
  if (offX <= READABLE && offY <= READABLE) {
    return { kind: "true", correction: { x: 1, y: 1 }, papers: null };
  }
  const alike = Math.abs(factor.x - factor.y) <= 0.004;
  const mean = (factor.x + factor.y) / 2;
  // Mechanics stretch paper by a few tenths of a per cent; one per cent alike both ways was done on purpose.
  if (!alike) return { kind: "uneven", correction, papers: null };
  if (Math.abs(mean - 1) < 0.01) return { kind: "off", correction, papers: null };
  return { kind: "fit-to-page", correction, papers: fittedPapers(mean, papers) };
}

/** The pair of papers whose fit comes nearest to a factor, if one is near at all. */
function fittedPapers(factor: number, papers: readonly Paper[]): readonly [string, string] | null {
  let best: readonly [string, string] | null = null;
  let least = NEAR;
  for (const drawn of papers) {
    for (const printed of papers) {
      const fit = Math.min(printed.width / drawn.width, printed.height / drawn.height);
      const off = Math.abs(fit - factor);
      if (fit !== 1 && off < least) {
        best = [drawn.id, printed.id];
        least = off;
      }
    }
  }
  return best;
}

/** A finding in a sentence with what to do next. */
export function describePrinter({ kind, papers, correction }: PrinterFinding, language: Language = "en"): string {
  const words = PAPER_TEXTS[language].printer;
  if (kind === "true") return words.isTrue;
  const off = `${withDecimalSign((Math.abs(1 / correction.x - 1) * 100).toFixed(1), language)} %`;
  if (kind === "fit-to-page") return words.fitted(off, papers);
  const factor = (value: number): string => withDecimalSign(value.toFixed(4), language);
  const [x, y] = [factor(correction.x), factor(correction.y)] as const;
  return kind === "off" ? words.off(off, x, y) : words.uneven(x, y);
}
