import type { LengthStyle } from "../../units/formatLength.ts";

const STYLES: Readonly<Record<string, LengthStyle>> = {
  mm: "mm",
  cm: "cm",
  m: "m",
  in: "in/16",
  yd: "in/16",
  "in/16": "in/16",
  "in/32": "in/32",
  "yd/8": "in/16",
};

/**
 * How the lengths of a project are shown, told from the text of a file that may be wrong: by `output.lengths`, else by
 * `unit`; millimetres where the text does not say. Cost: reads the text once.
 */
export function lengthsOfText(text: string): LengthStyle {
  try {
    const file: unknown = JSON.parse(text);
    return styleAt(groupAt(file, "output"), "lengths") ?? styleAt(file, "unit") ?? "mm";
  } catch {
    return "mm";
  }
}

function groupAt(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>)[key] : undefined;
}

function styleAt(value: unknown, key: string): LengthStyle | undefined {
  const name = groupAt(value, key);
  return typeof name === "string" && Object.hasOwn(STYLES, name) ? STYLES[name] : undefined;
}
