import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig, type Plugin } from "vite";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
/** `ONE_FILE=1` builds the page that opens from a disk without any server: everything inside one HTML file. */
const oneFile = process.env["ONE_FILE"] === "1";

const NOTICES = "THIRD-PARTY.txt";

/** What only exports and patterns that come in need: stored once the page is idle. */
const LATER = /exportWorker|DejaVu|unifontex|patternWorker|pdf|read(?:Svg|Dxf|Pdf|Image)-|jpeg-js|lib-/u;

/** Writes the list of built files and a name for this build into the service worker. */
function offlineList(): Plugin {
  return {
    name: "offline-list",
    apply: "build",
    generateBundle(_options, bundle) {
      const worker = bundle["serviceWorker.js"];
      if (worker?.type !== "chunk") return;
      const built = Object.keys(bundle).filter((name) => name !== "serviceWorker.js" && name !== NOTICES);
      const isLater = (name: string) => LATER.test(name);
      const first = built.filter((name) => name !== "index.html" && !isLater(name));
      const files = ["./", ...first, "manifest.webmanifest", "icon.svg"];
      const name = hashOf(built.sort().join(" "));
      worker.code = worker.code
        .replace(/["'`]BUILT_FILES["'`]/u, JSON.stringify(files))
        .replace(/["'`]LATER_FILES["'`]/u, JSON.stringify(built.filter(isLater)))
        .replace("BUILD_NAME", name);
    },
  };
}

/** Short name of a build: its file names carry content hashes, so alike builds get alike names. */
function hashOf(text: string): string {
  let hash = 5381;
  for (let i = 0; i < text.length; i++) hash = (Math.imul(hash, 33) ^ text.charCodeAt(i)) >>> 0;
  return hash.toString(36);
}

/** Workers of the build by file name, as text that may stand in a page. */
function workersIn(bundle: Bundle): [string, string][] {
  return Object.entries(bundle).flatMap(([name, item]): [string, string][] =>
    item.type === "asset" && name.endsWith(".js")
      ? [[name.slice(name.lastIndexOf("/") + 1), String(item.source).replaceAll("</script", "<\\/script")]]
      : [],
  );
}

/** The page's code with its workers read from the page itself, because a page on disk may not open other files. */
function withOwnWorkers(code: string, workers: readonly (readonly [string, string])[]): string {
  // Nothing is loaded later, so there is nothing to load ahead either.
  const whole = code
    .replaceAll("__VITE_PRELOAD__", "void 0")
    // A page on disk may start plain workers only; they are bundled whole anyway.
    .replaceAll(/\{\s*type:\s*["'`]module["'`]\s*\}/gu, "{}");
  return workers.reduce(
    (text, [name]) =>
      text.replace(
        new RegExp(`new URL\\(["'\`]${name}["'\`],\\s*import\\.meta\\.url\\)\\.href`, "u"),
        () =>
          `URL.createObjectURL(new Blob([document.getElementById("${name}").textContent],{type:"text/javascript"}))`,
      ),
    whole,
  );
}

type Bundle = Parameters<Extract<NonNullable<Plugin["generateBundle"]>, (...args: never[]) => unknown>>[1];

/** Puts scripts, styles and the icon into the page itself. */
function intoOneFile(): Plugin {
  return {
    name: "into-one-file",
    apply: "build",
    enforce: "post",
    generateBundle(_options, bundle) {
      const page = bundle["index.html"];
      if (page?.type !== "asset") return;
      let html = String(page.source);
      for (const [name, item] of Object.entries(bundle)) {
        if (item.type === "chunk") {
          const code = withOwnWorkers(item.code, workersIn(bundle)).replaceAll("</script", "<\\/script");
          html = html.replace(new RegExp(`<script[^>]*src="[^"]*${name}"[^>]*></script>`), "");
          html = html.replace("</body>", () => `<script type="module">${code}</script></body>`);
        } else if (name.endsWith(".css"))
          html = html.replace(
            new RegExp(`<link[^>]*href="[^"]*${name}"[^>]*>`),
            () => `<style>${item.source}</style>`,
          );
      }
      for (const [name, source] of workersIn(bundle))
        html = html.replace("<script", () => `<script type="text/plain" id="${name}">${source}</script><script`);
      for (const name of Object.keys(bundle)) if (name !== "index.html") delete bundle[name];
      const icon = readFileSync(here("public/icon.svg")).toString("base64");
      html = html
        .replace(/<link rel="manifest"[^>]*>/, "")
        .replace("./icon.svg", `data:image/svg+xml;base64,${icon}`);
      page.source = html;
      page.fileName = "laywright.html";
    },
  };
}

/** The notices of the libraries and fonts in the page: a file beside it, or a comment at the end of the one file. */
function thirdParty(): Plugin {
  const text = () => {
    execFileSync(process.execPath, ["--import", "tsx", here("../../tests/tools/thirdParty.ts")]);
    return readFileSync(here(`../../dist/${NOTICES}`), "utf8");
  };
  return {
    name: "third-party",
    apply: "build",
    enforce: "post",
    generateBundle(_options, bundle) {
      if (!oneFile) this.emitFile({ type: "asset", fileName: NOTICES, source: text() });
      const page = bundle["index.html"];
      if (!oneFile || page?.type !== "asset") return;
      // Two hyphens would end a comment.
      const notices = text().replaceAll("--", "- -");
      page.source = String(page.source).replace("</html>", () => `</html>\n<!-- ${NOTICES}\n${notices}\n-->`);
    },
  };
}

export default defineConfig({
  root: here("."),
  base: "./",
  publicDir: oneFile ? false : here("public"),
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [thirdParty(), oneFile ? intoOneFile() : offlineList()],
  define: { __ONE_FILE__: JSON.stringify(oneFile) },
  worker: { format: oneFile ? "iife" : "es" },
  build: {
    outDir: here("../../dist/web"),
    emptyOutDir: !oneFile,
    target: "es2022",
    modulePreload: false,
    assetsInlineLimit: oneFile ? Number.MAX_SAFE_INTEGER : 0,
    cssCodeSplit: !oneFile,
    rolldownOptions: oneFile
      ? { output: { codeSplitting: false } }
      : {
          input: { index: here("index.html"), serviceWorker: here("offline/serviceWorker.ts") },
          output: {
            entryFileNames: (chunk) =>
              chunk.name === "serviceWorker" ? "serviceWorker.js" : "assets/[name]-[hash].js",
          },
        },
  },
});
