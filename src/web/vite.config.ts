import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig, type Plugin } from "vite";
import { SERVED_POLICY, servedPolicy } from "./build/contentPolicy.ts";
import { intoOneFile } from "./build/oneFile.ts";
import { packedFonts } from "./build/packedFonts.ts";

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

export default defineConfig(async () => ({
  root: here("."),
  base: "./",
  publicDir: oneFile ? false : here("public"),
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [thirdParty(), ...(oneFile ? [intoOneFile(here("public/icon.svg"))] : [offlineList(), servedPolicy()])],
  resolve: { alias: await packedFonts(mkdtempSync(join(tmpdir(), "laywright-fonts-"))) },
  define: { __ONE_FILE__: JSON.stringify(oneFile) },
  // As a header it holds for workers too, which a page's own words do not reach.
  preview: { headers: { "Content-Security-Policy": SERVED_POLICY } },
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
}));
