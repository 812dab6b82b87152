import { DRAWING_ROLES, type DrawingRole, type LineWishes } from "../../project/outputSettings.ts";
import type { AreaTone } from "./drawing.ts";

/** How the lines of a role look. */
export interface RoleStyle {
  /** `#rrggbb`. */
  readonly color: string;
  /** Line width, mm. */
  readonly width: number;
  /** Dash pattern in mm, dash and space in turn; empty for a solid line. */
  readonly dash: readonly number[];
}

export type RoleStyles = Readonly<Record<DrawingRole, RoleStyle>>;

/**
 * Our own look: black cuts as on a paper pattern, folds and stitches told apart by their dashes as well as by
 * colour (a print may be grey), everything that is not to be cut lighter than what is.
 */
export const ROLE_STYLES: RoleStyles = {
  cut: { color: "#000000", width: 0.35, dash: [] },
  fold: { color: "#8a4b12", width: 0.25, dash: [8, 2, 1.5, 2] },
  stitch: { color: "#1f5f6b", width: 0.25, dash: [3, 1.8] },
  tape: { color: "#7a6a55", width: 0.25, dash: [0.8, 1.4] },
  mark: { color: "#333333", width: 0.25, dash: [] },
  grain: { color: "#6b6257", width: 0.25, dash: [] },
  flaw: { color: "#a8332a", width: 0.3, dash: [1.5, 1.2] },
  cloth: { color: "#9a8f80", width: 0.3, dash: [12, 3] },
  label: { color: "#1d1a16", width: 0.2, dash: [] },
  sheet: { color: "#8b857c", width: 0.2, dash: [] },
};

/** Our look with what the maker wants otherwise. */
export function styledAs(wishes: LineWishes): RoleStyles {
  const entries = DRAWING_ROLES.map((role) => {
    const { color, width, dash } = wishes[role] ?? {};
    const own = ROLE_STYLES[role];
    return [role, { color: color ?? own.color, width: width ?? own.width, dash: dash ?? own.dash }] as const;
  });
  return Object.fromEntries(entries) as Record<DrawingRole, RoleStyle>;
}

/** Roles that the maker has not left out. */
export function drawnRoles(wishes: LineWishes): DrawingRole[] {
  return DRAWING_ROLES.filter((role) => wishes[role]?.draw !== false);
}

/** What a machine's mat has unless the maker asks for more: the cuts, and the square to check them by. */
const ON_MATS: ReadonlySet<DrawingRole> = new Set<DrawingRole>(["cut", "sheet"]);

/** Whether lines of a role go into the files, by the maker's wish or by what is usual for whole plans and for mats. */
export function isDrawn(role: DrawingRole, wishes: LineWishes, onMats: boolean): boolean {
  return wishes[role]?.draw ?? (!onMats || ON_MATS.has(role));
}

/** The wishes for a mat: stitch lines, folds and names are left out where nothing was said of them. */
export function matWishes(wishes: LineWishes): LineWishes {
  return Object.fromEntries(
    DRAWING_ROLES.map((role) => [role, { ...wishes[role], draw: isDrawn(role, wishes, true) }]),
  );
}

/** Fill colours of areas on paper and in files; screens may use textures instead. */
export const TONE_COLORS: Readonly<Record<AreaTone, string>> = {
  cloth: "#f1ebe0",
  piece: "#fffdf8",
  flaw: "#ecc9c1",
  face: "#d9b58c",
  back: "#efe0ca",
  facing: "#7fa7a5",
  interfacing: "#f4f1ea",
  webbing: "#b9b3a6",
  ink: "#1d1a16",
  pattern: "#cfdbe3",
  shade: "#ece8e1",
};
