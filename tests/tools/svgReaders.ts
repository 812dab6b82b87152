// SVG read by programs that we did not write: resvg and libxml2 as WebAssembly on every machine, librsvg where it is.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { XmlDocument } from "libxml2-wasm";
import { freshFolder, type Grey, readPng, run } from "./programs.ts";
import { ifInstalled } from "./systemPrograms.ts";

/** Draws a file over white. */
export interface SvgDrawer {
  readonly name: string;
  draw(path: string, dpi: number): Promise<Grey>;
}

let ready: Promise<void> | null = null;

const RESVG: SvgDrawer = {
  name: "resvg",
  draw: async (path, dpi) => {
    const wasm = createRequire(import.meta.url).resolve("@resvg/resvg-wasm/index_bg.wasm");
    ready ??= initWasm(readFileSync(wasm));
    await ready;
    // It takes millimetres as 96 to the inch whatever it is told, so the drawing is zoomed instead.
    const drawn = new Resvg(readFileSync(path, "utf8"), {
      background: "white",
      fitTo: { mode: "zoom", value: dpi / 96 },
    }).render();
    const { width, height, pixels } = drawn;
    return { width, height, data: Uint8Array.from({ length: width * height }, (_, i) => pixels[4 * i]!) };
  },
};

const RSVG: SvgDrawer = {
  name: "librsvg",
  draw: async (path, dpi) => {
    const out = join(freshFolder(), "drawing.png");
    const resolution = ["--dpi-x", String(dpi), "--dpi-y", String(dpi)];
    run("rsvg-convert", [...resolution, "--background-color", "white", "-o", out, path]);
    return readPng(out);
  },
};

/** The drawers of this machine. */
export const SVG_DRAWERS: readonly SvgDrawer[] = [RESVG, ...ifInstalled("rsvg-convert").map(() => RSVG)];

/** What an XPath expression is in a text that libxml2 has to find well formed; throws when it does not. */
export function xpathOf(text: string, expression: string): unknown {
  const document = XmlDocument.fromString(text);
  try {
    return document.eval(expression);
  } finally {
    document.dispose();
  }
}
