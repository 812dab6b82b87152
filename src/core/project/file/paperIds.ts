/** Papers a project can ask for: ISO 216, ASME Y14.1 and the office sheets by their usual names. */
export const PAPER_IDS = [
  "A0",
  "A1",
  "A2",
  "A3",
  "A4",
  "A5",
  "Letter",
  "Legal",
  "Tabloid",
  "ASME A",
  "ASME B",
  "ASME C",
  "ASME D",
  "ASME E",
] as const;
