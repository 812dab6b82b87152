import { expect, test } from "vitest";
import { DRAWING_ROLES } from "../../project/outputSettings.ts";
import { drawnRoles, isDrawn, matWishes, ROLE_STYLES, styledAs, TONE_COLORS } from "./roleStyles.ts";

/** Share of light that a colour gives back. Source: WCAG 2.2, relative luminance. */
function luminance(color: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (color: string): number => 1.05 / (luminance(color) + 0.05);

test("cuts are the strongest of all lines, and every line is seen on paper", () => {
  for (const role of DRAWING_ROLES) {
    const { color, width } = ROLE_STYLES[role];
    expect(color).toMatch(/^#[0-9a-f]{6}$/u);
    // Shapes and lines that mean something: 3 to 1. Source: WCAG 2.2, 1.4.11 (the cloth's edge means nothing to cut).
    expect(contrast(color), role).toBeGreaterThan(role === "cloth" ? 2.5 : 3);
    // Line widths of drawings: 0.18 to 0.35 mm. Source: ISO 128-2, line groups 0.25 and 0.35, from memory.
    expect(width, role).toBeGreaterThanOrEqual(0.18);
    expect(width, role).toBeLessThanOrEqual(0.35);
    if (role !== "cut") {
      expect(contrast(color), role).toBeLessThan(contrast(ROLE_STYLES.cut.color));
      expect(width, role).toBeLessThan(ROLE_STYLES.cut.width);
    }
  }
});

test("folds, stitches, tape, flaws and the cloth's edge are told apart by their dashes on a grey print, what is drawn once is solid", () => {
  const dashed = DRAWING_ROLES.filter((role) => ROLE_STYLES[role].dash.length > 0);
  expect([...dashed].sort()).toEqual(["cloth", "flaw", "fold", "stitch", "tape"]);
  for (const [i, role] of dashed.entries()) {
    const { dash } = ROLE_STYLES[role];
    expect(dash.length % 2).toBe(0);
    const sum = dash.reduce((all, part) => all + part, 0);
    for (const other of dashed.slice(i + 1)) {
      const otherSum = ROLE_STYLES[other].dash.reduce((all, part) => all + part, 0);
      expect(Math.max(sum, otherSum) / Math.min(sum, otherSum), `${role} ${other}`).toBeGreaterThan(1.09);
    }
  }
});

test("areas are paler than the ink on them, but for the ink itself", () => {
  for (const [tone, color] of Object.entries(TONE_COLORS)) {
    const against = (luminance(color) + 0.05) / (luminance(TONE_COLORS.ink) + 0.05);
    if (tone !== "ink") expect(against, tone).toBeGreaterThan(4.5);
  }
  expect(new Set(Object.values(TONE_COLORS)).size).toBe(Object.keys(TONE_COLORS).length);
});

test("what the maker wants otherwise is so, and all else stays", () => {
  const styles = styledAs({ cut: { color: "#ff0000" }, fold: { width: 0.5, dash: [] }, label: {} });
  expect(styles).toEqual({
    ...ROLE_STYLES,
    cut: { ...ROLE_STYLES.cut, color: "#ff0000" },
    fold: { color: ROLE_STYLES.fold.color, width: 0.5, dash: [] },
  });
  expect(styledAs({})).toEqual(ROLE_STYLES);
});

test("lines are drawn unless the maker leaves them out; on mats only cuts and the check square unless she asks for more", () => {
  const wishes = { fold: { draw: false }, stitch: { draw: true, color: "#123456" }, cut: {} };
  expect(drawnRoles(wishes)).toEqual(DRAWING_ROLES.filter((role) => role !== "fold"));
  expect(DRAWING_ROLES.filter((role) => isDrawn(role, wishes, false))).toEqual(drawnRoles(wishes));
  const onMats = DRAWING_ROLES.filter((role) => isDrawn(role, wishes, true));
  expect([...onMats].sort()).toEqual(["cut", "sheet", "stitch"]);
  expect(drawnRoles(matWishes(wishes))).toEqual(onMats);
  expect(matWishes(wishes).stitch).toEqual({ draw: true, color: "#123456" });
});
