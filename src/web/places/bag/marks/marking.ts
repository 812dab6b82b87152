import type { EdgeRef, Panel } from "../../../../core/panels/panel.ts";

/** What is marked in the picture: an edge, or the corner where it starts. */
export interface Marked {
  readonly kind: "edge" | "corner";
  readonly edge: EdgeRef;
}

/** What the fields of an opened panel need. */
export interface MarkProps {
  readonly panel: Panel;
  readonly path: (field: string) => string;
  readonly set: (part: Partial<Panel>, label: string, key?: string) => void;
  /** Marks an edge or a corner in the picture. */
  readonly onMark: (marked: Marked) => void;
}
