/** CSS pixels in one of each unit. Source: CSS Values and Units 4, 5.2 (1 in = 96 px = 2.54 cm = 72 pt = 6 pc). */
const PX: Readonly<Record<string, number>> = {
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
  em: 16,
  rem: 16,
  ex: 8,
  ch: 8,
};

/** Units that say how large a thing is in the hand. */
const TRUE_UNITS = new Set(["in", "cm", "mm", "q", "pt", "pc"]);

const LENGTH = /^\s*([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?)\s*(?:(%|[a-z]+)\s*)?$/iu;

/** A length in user units (px); a percentage is of `whole`. Null when the text is none. */
export function lengthPx(text: string | undefined, whole: number): number | null {
  const found = text === undefined ? null : LENGTH.exec(text);
  if (!found) return null;
  const value = Number(found[1]);
  const unit = (found[2] ?? "px").toLowerCase();
  if (unit === "%") return (value / 100) * whole;
  const px = PX[unit];
  return px === undefined ? null : value * px;
}

/** Whether a length is given in a unit that can be laid a ruler on. */
export function isTrueLength(text: string | undefined): boolean {
  const unit = text === undefined ? undefined : LENGTH.exec(text)?.[2];
  return unit !== undefined && TRUE_UNITS.has(unit.toLowerCase());
}

/** Whether a length is a share of something else, or not given. */
export function isRelativeLength(text: string | undefined): boolean {
  return text === undefined || /%\s*$/u.test(text) || LENGTH.exec(text) === null;
}
