/** Strips cut at 45° to the grain and sewn into one: their ends lie along the grain and are joined there. */
export interface BiasStrips {
  /** Length along the middle of each strip, mm, longest first. */
  readonly strips: readonly number[];
  /** Length along the middle of what they make, mm. */
  readonly joined: number;
}

/**
 * What one join at 45° takes from the length, mm: a seam `seam` from both ends, which slant by 45°.
 */
export function joinLoss(seam: number): number {
  return 2 * Math.SQRT2 * seam;
}

/** The fewest equal strips that make a length, each join taking `lost`; null when a join takes all of a strip. */
export function equalStrips(
  length: number,
  longest: number,
  lost: number,
): { readonly count: number; readonly length: number } | null {
  if (length <= longest) return { count: 1, length };
  if (longest <= lost) return null;
  const count = Math.ceil((length - lost) / (longest - lost) - 1e-12);
  return { count, length: (length + (count - 1) * lost) / count };
}

/**
 * True bias out of a square: strips on both sides of its diagonal, as many as fit.
 *
 * The middle of strip k from the diagonal lies (k + ½) widths from it and is √2 · side − (2k + 1) · width long, so that
 * 2n strips come to 2n (√2 · side − n · width): side² ÷ width when they use the square up.
 */
export function biasOfSquare(side: number, width: number, seam: number): BiasStrips {
  const each = Math.floor(side / (Math.SQRT2 * width) + 1e-9);
  const lengths = Array.from({ length: each }, (_, k) => Math.SQRT2 * side - (2 * k + 1) * width);
  // A strip that adds less than its join takes is left out.
  const strips = lengths.filter((length) => length > joinLoss(seam)).flatMap((length) => [length, length]);
  return joinedStrips(strips, seam);
}

/**
 * True bias out of a length of cloth, selvedge to selvedge: every strip crosses the whole usable width and is √2 times
 * as long; it takes √2 times its width of the length, and the first corner as much as the cloth is wide.
 */
export function biasOfLength(clothLength: number, clothWidth: number, width: number, seam: number): BiasStrips {
  const count = Math.max(0, Math.floor((clothLength - clothWidth) / (Math.SQRT2 * width) + 1e-9));
  return joinedStrips(
    Array.from({ length: count }, () => Math.SQRT2 * clothWidth),
    seam,
  );
}

/** The smallest square that gives a length of true bias, mm a side. RangeError unless length and width are above 0. */
export function squareForBias(length: number, width: number, seam: number): number {
  if (!(length > 0 && length < Infinity && width > 0 && seam >= 0))
    throw new RangeError("squareForBias: expected lengths above 0, not endless");
  let least = Infinity;
  for (let n = 1; ; n++) {
    const room = n * width * Math.SQRT2;
    if (room >= least) return least;
    // 2n strips, 2n − 1 joins: 2n (√2 · side − n · width) − (2n − 1) · loss = length.
    const side = (length + (2 * n - 1) * joinLoss(seam) + 2 * n * n * width) / (2 * n * Math.SQRT2);
    least = Math.min(least, Math.max(room, side));
  }
}

/** The least length of cloth that gives a length of true bias, mm; null when a join takes as much as a strip is long. */
export function clothForBias(length: number, clothWidth: number, width: number, seam: number): number | null {
  const strip = Math.SQRT2 * clothWidth;
  const lost = joinLoss(seam);
  if (strip <= lost && length > strip) return null;
  const count = Math.max(1, Math.ceil((length - lost) / (strip - lost) - 1e-12));
  return clothWidth + count * Math.SQRT2 * width;
}

function joinedStrips(strips: readonly number[], seam: number): BiasStrips {
  const sum = strips.reduce((all, one) => all + one, 0);
  return { strips, joined: Math.max(0, sum - Math.max(0, strips.length - 1) * joinLoss(seam)) };
}
