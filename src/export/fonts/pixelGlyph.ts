/** A letter of squares: `width` × `height` of them, its lower left corner at (`left`, `bottom`), in squares. */
export interface PixelGlyph {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  /** 1 where a square is filled, lowest row first; longer than needed is as good. */
  readonly filled: Uint8Array;
}

// Ways to go, each a turn to the right from the one before.
const STEP_X = [1, 0, -1, 0] as const;
const STEP_Y = [0, -1, 0, 1] as const;

/**
 * The lines round the filled squares, each closed, as corners (x and y in turn, in squares): filled to the right of
 * the way, so that outlines run clockwise and holes the other way. Squares that meet in a corner alone stay apart.
 * Cost: the squares and their edges.
 */
export function pixelContours({ left, bottom, width, height, filled }: PixelGlyph): number[][] {
  const across = width + 1;
  // Edges that leave each corner, a bit a way.
  const leaving = new Uint8Array(across * (height + 1));
  const isFilled = (x: number, y: number): boolean =>
    x >= 0 && x < width && y >= 0 && y < height && filled[y * width + x] === 1;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (!isFilled(x, y)) continue;
      if (!isFilled(x, y + 1)) leaving[(y + 1) * across + x]! |= 1;
      if (!isFilled(x + 1, y)) leaving[(y + 1) * across + x + 1]! |= 2;
      if (!isFilled(x, y - 1)) leaving[y * across + x + 1]! |= 4;
      if (!isFilled(x - 1, y)) leaving[y * across + x]! |= 8;
    }
  const contours: number[][] = [];
  for (let start = 0; start < leaving.length; start++)
    while ((leaving[start]! & 1) !== 0) contours.push(followed(leaving, across, start, left, bottom));
  return contours;
}

/** Follows one line from the corner where it turns to the right, and takes its edges away. */
function followed(leaving: Uint8Array, across: number, start: number, left: number, bottom: number): number[] {
  const corners: number[] = [];
  let at = start;
  let way = 0;
  do {
    corners.push(left + (at % across), bottom + Math.floor(at / across));
    const from = way;
    do {
      at += STEP_X[way]! + STEP_Y[way]! * across;
      way = nextWay(leaving[at]!, from);
      // The first edge goes last: it tells where the line closes.
      leaving[at]! &= ~(1 << way);
    } while (way === from);
  } while (at !== start || way !== 0);
  return corners;
}

/** Right first: it keeps to the square that it goes round. */
function nextWay(edges: number, from: number): number {
  const right = (from + 1) & 3;
  if ((edges >> right) & 1) return right;
  return (edges >> from) & 1 ? from : (from + 3) & 3;
}
