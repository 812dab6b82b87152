/** Small line drawings for buttons that also carry a name. */
const SHAPES = {
  undo: "M9 5 4 10l5 5M4 10h10a5 5 0 0 1 0 10h-3",
  redo: "m15 5 5 5-5 5M20 10H10a5 5 0 0 0 0 10h3",
  close: "M6 6l12 12M18 6 6 18",
  more: "m6 9 6 6 6-6",
  light:
    "M12 3v3M12 18v3M3 12h3M18 12h3M6 6l2 2M16 16l2 2M6 18l2-2M16 8l2-2M12 8.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z",
  plus: "M12 5v14M5 12h14",
  minus: "M5 12h14",
  whole: "M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5",
  pin: "M12 13v8M8 4h8l-1 6 3 3H6l3-3z",
  turn: "M20 12a8 8 0 1 1-3-6.2M20 3v4h-4",
  bin: "M5 7h14M10 7V4h4v3M7 7l1 13h8l1-13M10 11v5M14 11v5",
  copy: "M9 9h11v11H9zM15 9V4H4v11h5",
} as const;

/** Name of a drawing. */
export type IconName = keyof typeof SHAPES;

/** A drawing of 24 × 24 px in the colour of the text around it; never the only sign. */
export function Icon({ name }: { name: IconName }) {
  return (
    <svg
      width="24"
      height="24"
      viewBox="0 0 24 24"
      aria-hidden="true"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
    >
      <path d={SHAPES[name]} stroke-linecap="round" stroke-linejoin="round" />
    </svg>
  );
}
