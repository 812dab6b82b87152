import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { browserPath } from "../tools/systemPrograms.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const built = join(root, "dist/web");
const config = "src/web/vite.config.ts";

export const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".ttf": "font/ttf",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
};

/** Newest change of any file under a folder, ms. */
function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/** Surroundings for a build as people get it: the test runner's own NODE_ENV would make a development page. */
export function builderEnv(): NodeJS.ProcessEnv {
  return { ...process.env, NODE_ENV: "production" };
}

/** Builds the page when the sources are newer than what is there. */
export function buildPage(): string {
  const page = join(built, "index.html");
  const sources = Math.max(...["src", "fixtures", "package.json"].map((name) => newest(join(root, name))));
  if (!existsSync(page) || statSync(page).mtimeMs < sources)
    execFileSync("npx", ["vite", "build", "--config", config, "--logLevel", "error"], {
      cwd: root,
      stdio: "inherit",
      env: builderEnv(),
    });
  return built;
}

/** The page served as any web server would, and a browser to open it in. */
export interface Stage {
  readonly url: string;
  readonly browser: Browser;
  /** A fresh person: no storage, no caches. */
  person(options?: Parameters<Browser["newContext"]>[0]): Promise<BrowserContext>;
  /** Stops answering requests, as when the network is cut. */
  cutNetwork(): Promise<void>;
  close(): Promise<void>;
}

/** Builds, serves and launches. */
export async function openStage(): Promise<Stage> {
  const folder = buildPage();
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    const file = join(folder, path === "/" ? "index.html" : path);
    if (!file.startsWith(folder) || !existsSync(file)) response.writeHead(404).end();
    else
      response
        .writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" })
        .end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  const executablePath = browserPath();
  if (executablePath === null)
    throw new Error("No browser was found: install Chromium, or name one in the variable CHROMIUM.");
  const browser = await chromium.launch({ executablePath, args: FLAGS });
  return {
    url: `http://127.0.0.1:${port}/`,
    browser,
    person: async (options = {}) => {
      const context = await browser.newContext({
        locale: "en-GB",
        viewport: { width: 1280, height: 900 },
        ...options,
      });
      // One machine runs everything here at once.
      context.setDefaultTimeout(30_000);
      return context;
    },
    cutNetwork: () => stopServer(server),
    close: async () => {
      await browser.close();
      await stopServer(server);
    },
  };
}

async function stopServer(server: Server): Promise<void> {
  if (!server.listening) return;
  const closed = new Promise<void>((resolve) => server.close(() => resolve()));
  // Only once no new ones are let in: a connection made in between would keep the server open.
  server.closeAllConnections();
  await closed;
}

/** Opens the page at an address such as `#/lay` and waits until it stands. Errors on the page fail the test. */
export async function openPage(context: BrowserContext, url: string, hash = ""): Promise<Page> {
  const page = await context.newPage();
  page.on("pageerror", (error) => {
    throw error;
  });
  await page.goto(url + hash);
  await page.waitForSelector(".shell");
  return page;
}

/** Goes to another place of an open page. */
export async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((next) => {
    location.hash = next;
  }, hash);
}

/** Opens a project file through the project sheet. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  await page.click(".headline .project > button");
  await page.setInputFiles("input[data-picker=project]", {
    name,
    mimeType: "application/json",
    buffer: Buffer.from(text),
  });
}

/** The demo project's file. */
export function demoText(): string {
  return readFileSync(join(root, "fixtures/harbour-bags.json"), "utf8");
}

/** Waits until every change is kept on the device. */
export async function kept(page: Page): Promise<void> {
  await page.waitForSelector('[data-keeping="kept"]', { state: "attached" });
}

/** The open project's file as the page saves it. */
export async function savedText(page: Page): Promise<string> {
  // Playwright sees downloads, not the browser's own dialog for saving.
  await page.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
  await page.click(".headline .project > button");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.click('dialog[open] button:has-text("Save to a file")'),
  ]);
  const text = readFileSync(await download.path(), "utf8");
  await page.keyboard.press("Escape");
  return text;
}
