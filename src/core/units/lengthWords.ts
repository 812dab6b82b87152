/** Every spelling a unit may be written in, lower case. */
const SPELLINGS: Readonly<Record<LengthUnit, readonly string[]>> = {
  mm: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
  cm: ["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
  m: ["m", "metre", "metres", "meter", "meters"],
  in: ["in", "in.", "ins", "inch", "inches", '"'],
  ft: ["ft", "ft.", "foot", "feet", "'"],
  yd: ["yd", "yd.", "yds", "yard", "yards"],
};

/** Spelling → unit. */
export const UNIT_OF_WORD: ReadonlyMap<string, LengthUnit> = new Map(
  (Object.keys(SPELLINGS) as LengthUnit[]).flatMap((unit) => SPELLINGS[unit].map((word) => [word, unit] as const)),
);

/** Units that may follow one another in one length, largest first. */
const FAMILIES: readonly (readonly LengthUnit[])[] = [
  ["m", "cm", "mm"],
  ["yd", "ft", "in"],
];

/** Whether `second` may follow `first` in one length: a smaller unit of the same kind ("1 yd 4 in"). */
export function mayFollow(first: LengthUnit, second: LengthUnit): boolean {
  return FAMILIES.some((family) => family.includes(first) && family.indexOf(second) > family.indexOf(first));
}

/** What a bare number after a unit counts, as people write it: `1 m 20` is 1 m 20 cm, `5' 6` is 5 ft 6 in. */
export const BARE_AFTER: Readonly<Partial<Record<LengthUnit, LengthUnit>>> = { m: "cm", ft: "in" };

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
};

/**
 * Text with one spelling for each sign: single-character fractions written out, all quotes and primes as `'` and
 * `"`, all dashes as `-`, all spaces as one plain space, lower case.
 */
export function plainSigns(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/gu, (sign) => ` ${FRACTIONS[sign]} `)
    .replace(/[′’‘ʹ`´]/gu, "'")
    .replace(/[″”“„ʺ]|''/gu, '"')
    .replace(/[⁄∕]/gu, "/")
    .replace(/[‐‑‒–—−]/gu, "-")
    .replace(/\s+/gu, " ")
    .trim()
    .toLowerCase();
}

/** Units a maker may write a length in. Exact: 1 in = 25.4 mm (1959 yard and pound agreement). */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft" | "yd";

/** Millimetres in one unit. */
export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  ft: 304.8,
  yd: 914.4,
};
