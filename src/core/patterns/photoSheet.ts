/**
 * Our photo sheet: seven ring marks at known places. It lies in a photograph beside a pattern, or under it, and says
 * where the camera stood. No ring is at the top, which tells the ways up apart; it fits A4 and Letter alike.
 */

/** A mark: a black ring with a black dot in it, mm. */
export const RING = { outer: 10, inner: 6.5, dot: 3.5 } as const;

/** Middles of the rings from the middle of the sheet, mm, y up: corners clockwise from the upper left, then the rest. */
export const RING_CORNERS = [
  [-75, 105],
  [75, 105],
  [75, -105],
  [-75, -105],
] as const;
export const RING_OTHERS = [
  [-75, 0],
  [75, 0],
  [0, -105],
] as const;

/** Half of what is kept free for a pattern drawn on the sheet, mm. */
export const PHOTO_WINDOW = { x: 62, y: 90 } as const;

/** Half of the largest paper the sheet is printed on, mm: Letter is wider, A4 is higher. */
export const PHOTO_PAPER = { x: 108, y: 148.5 } as const;

/** The line to hold a ruler to, mm. */
export const CHECK_LINE = 100;
