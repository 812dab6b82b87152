/** A DXF text without its control codes: `%%c`, `\P`, `{\fArial;…}`, `\U+00E4`. Source: DXF reference, TEXT and MTEXT. */
export function plainText(text: string): string {
  return text
    .replace(/\\U\+([\da-f]{4})/giu, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/%%([cdpou%])/giu, (_, code: string) => CODES[code.toLowerCase()] ?? "")
    .replace(/\\[ACFHQTWacfhqtwp][^;\\{}]*;/gu, "")
    .replace(/\\[PN~]/gu, " ")
    .replace(/\\[LlOoKkS]/gu, "")
    .replace(/[{}]/gu, "")
    .replace(/\s+/gu, " ")
    .trim()
    .slice(0, 500);
}

const CODES: Readonly<Record<string, string>> = { c: "⌀", d: "°", p: "±", "%": "%" };
