import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";
import { oneFilePolicy, withPolicy } from "./contentPolicy.ts";

type Bundle = Parameters<Extract<NonNullable<Plugin["generateBundle"]>, (...args: never[]) => unknown>>[1];

/** Where the page keeps the addresses of its workers once they are unpacked. */
const PARTS = "laywrightParts";
const MAIN = "main";

/** Signs that mean nothing in HTML and in a script; five of 85 hold four bytes, a sixteenth less text than base64. */
const SIGNS = [...Array(127).keys()]
  .slice(33)
  .map((code) => String.fromCharCode(code))
  .filter((sign) => !"<>&\"'`\\".includes(sign))
  .slice(0, 85)
  .join("");

/** Bytes as text, five signs for each four, the last four filled up with zeros. */
function signsOf(data: Uint8Array): string {
  const whole = Buffer.alloc(Math.ceil(data.length / 4) * 4);
  whole.set(data);
  let text = "";
  for (let at = 0; at < whole.length; at += 4) {
    let left = whole.readUInt32BE(at);
    let five = "";
    for (let i = 0; i < 5; i++) {
      five = SIGNS[left % 85]! + five;
      left = Math.floor(left / 85);
    }
    text += five;
  }
  return text;
}

/**
 * Unpacks the page's code: each part is gzip in signs as above, its name the element's. Workers become addresses that any
 * number of them can be started from; the page's own code runs last, when they are there. No part is kept twice.
 */
const START = `(async () => {
  const parts = (globalThis.${PARTS} = {});
  const values = new Uint8Array(127);
  [...${JSON.stringify(SIGNS)}].forEach((sign, i) => (values[sign.charCodeAt(0)] = i));
  const read = (element) => {
    const text = element.textContent;
    const view = new DataView(new ArrayBuffer((text.length / 5) * 4));
    for (let i = 0, at = 0; i < text.length; at += 4) {
      let four = 0;
      for (const end = i + 5; i < end; i++) four = four * 85 + values[text.charCodeAt(i)];
      view.setUint32(at, four);
    }
    const packed = new Blob([view.buffer.slice(0, Number(element.dataset.bytes))]).stream();
    element.remove();
    return new Response(packed.pipeThrough(new DecompressionStream("gzip")));
  };
  const elements = [...document.querySelectorAll("script[data-part]")];
  const main = document.createElement("script");
  main.type = "module";
  await Promise.all(
    elements.map(async (element) => {
      const { part } = element.dataset;
      const code = read(element);
      if (part === "${MAIN}") main.textContent = await code.text();
      else parts[part] = URL.createObjectURL(new Blob([await code.arrayBuffer()], { type: "text/javascript" }));
    }),
  );
  document.body.append(main);
})().catch((error) => {
  console.error(error);
  document.getElementById("page").textContent =
    "This browser cannot open Laywright as one file: it needs one of 2023 or later. / " +
    "Dieser Browser kann Laywright nicht als eine Datei öffnen: Es braucht einen von 2023 oder später.";
});`;

/** Workers of the build by file name. */
function workersIn(bundle: Bundle): [string, string][] {
  return Object.entries(bundle).flatMap(([name, item]): [string, string][] =>
    item.type === "asset" && name.endsWith(".js")
      ? [[name.slice(name.lastIndexOf("/") + 1), String(item.source)]]
      : [],
  );
}

/** The page's code with its workers read from the page itself, because a page on disk may not open other files. */
function withOwnWorkers(code: string, workers: readonly (readonly [string, string])[]): string {
  // Nothing is loaded later, so there is nothing to load ahead either.
  const whole = code
    .replaceAll("__VITE_PRELOAD__", "void 0")
    // A page on disk may start plain workers only; they are bundled whole anyway.
    .replaceAll(/\{\s*type:\s*["'`]module["'`]\s*,?\s*/gu, "{");
  const own = workers.reduce((text, [name]) => {
    const address = new RegExp(`new URL\\(["'\`]${name}["'\`],\\s*import\\.meta\\.url\\)\\.href`, "gu");
    if (text.search(address) < 0) throw new Error(`intoOneFile: the page does not start ${name}`);
    return text.replace(address, () => `globalThis.${PARTS}["${name}"]`);
  }, whole);
  const other = /new URL\(["'`][^"'`]*\.js["'`],\s*import\.meta\.url\)/u.exec(own);
  if (other !== null) throw new Error(`intoOneFile: ${other[0]} is not in the page`);
  return own;
}

function packed(part: string, code: string): string {
  const data = gzipSync(code, { level: 9 });
  return `<script type="application/gzip" data-part="${part}" data-bytes="${data.length}">${signsOf(data)}</script>`;
}

/** Puts scripts, styles and the icon into the page itself, scripts packed. */
export function intoOneFile(icon: string): Plugin {
  return {
    name: "into-one-file",
    apply: "build",
    enforce: "post",
    generateBundle(_options, bundle) {
      const page = bundle["index.html"];
      if (page?.type !== "asset") return;
      const workers = workersIn(bundle);
      const scripts = workers.map(([name, source]) => packed(name, source));
      const styles: string[] = [];
      const codes: string[] = [];
      let html = String(page.source);
      for (const [name, item] of Object.entries(bundle)) {
        if (item.type === "chunk") {
          html = html.replace(new RegExp(`<script[^>]*src="[^"]*${name}"[^>]*></script>`), "");
          const code = withOwnWorkers(item.code, workers);
          codes.push(code);
          scripts.push(packed(MAIN, code));
        } else if (name.endsWith(".css")) {
          styles.push(String(item.source));
          html = html.replace(
            new RegExp(`<link[^>]*href="[^"]*${name}"[^>]*>`),
            () => `<style>${item.source}</style>`,
          );
        }
      }
      html = html.replace("</body>", () => `${scripts.join("\n")}\n<script>${START}</script>\n</body>`);
      for (const name of Object.keys(bundle)) if (name !== "index.html") delete bundle[name];
      const image = readFileSync(icon).toString("base64");
      html = html
        .replace(/<link rel="manifest"[^>]*>/, "")
        .replace("./icon.svg", `data:image/svg+xml;base64,${image}`);
      page.source = withPolicy(html, oneFilePolicy([START, ...codes], styles));
      page.fileName = "laywright.html";
    },
  };
}
