import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { FLAGS, openStage, type Stage } from "../e2e/browser.ts";
import { browserPath } from "../tools/systemPrograms.ts";
import type { Draw, Kind } from "./kind.ts";

const BAGS = '[data-path="bags"]';
/** A kill comes at the latest so long after the first edit, ms. */
const LATEST = 2_500;
const WAIT = 120_000;

/** What the page took, and what it told as kept on the device: numbers of bags, which go up. */
interface Seen {
  typed: number;
  kept: number;
}

/** One number after the other until the page is gone. */
async function editOn(page: Page, seen: Seen): Promise<void> {
  try {
    for (;;) {
      seen.typed++;
      await page.fill(BAGS, String(seen.typed));
      await page.press(BAGS, "Enter");
      const [keeping, value] = await page.evaluate(async (field) => {
        // What is read has to be what is drawn: two frames after the key.
        for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
        const said = document.querySelector("[data-keeping]")!.getAttribute("data-keeping");
        return [said, document.querySelector<HTMLInputElement>(field)!.value] as const;
      }, BAGS);
      if (keeping === "kept") seen.kept = Number(value);
    }
  } catch {
    // The page is gone, which is the point.
  }
}

async function opened(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector(".shell", { timeout: WAIT });
  return page;
}

/** A project with a strap, kept on the device. */
async function begin(context: BrowserContext, url: string): Promise<Page> {
  context.setDefaultTimeout(WAIT);
  // Every thread of the page, so that they can be ended from outside.
  await context.addInitScript(() => {
    const threads: Worker[] = [];
    Object.assign(window, { threads });
    globalThis.Worker = class extends globalThis.Worker {
      constructor(...args: ConstructorParameters<typeof Worker>) {
        super(...args);
        threads.push(this);
      }
    };
  });
  const page = await opened(context, url);
  await page.click('button:has-text("Strap")');
  await page.waitForSelector(".card");
  await page.waitForSelector('[data-keeping="kept"]', { state: "attached" });
  return page;
}

/** What stands there when the page is opened again must be what was told as kept, or newer, and whole. */
async function judge(page: Page, { typed, kept }: Seen, how: string): Promise<void> {
  await page.waitForSelector(".card", { timeout: WAIT });
  const found = Number(await page.inputValue(BAGS));
  if (!(found >= kept && found <= typed))
    throw new Error(`${how}: ${found} stands there, ${kept} was told as kept, ${typed} typed last`);
  if ((await page.locator(".told").count()) > 0) throw new Error(`${how}: ${await page.textContent(".told")}`);
}

const later = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The tab breaks down, or its threads end and then it breaks down. */
async function tabKill(stage: Stage, how: string, draw: Draw): Promise<Seen> {
  const context = await stage.person();
  const seen: Seen = { typed: 1, kept: 1 };
  try {
    const page = await begin(context, stage.url);
    const session = await context.newCDPSession(page);
    const edits = editOn(page, seen);
    if (how === "worker") {
      await later(draw.below(LATEST));
      await page.evaluate(() => {
        for (const thread of (window as unknown as { threads: Worker[] }).threads) thread.terminate();
      });
    }
    await later(draw.below(LATEST));
    // No answer comes from a page that has broken down.
    session.send("Page.crash").catch(() => undefined);
    await page.waitForEvent("crash", { timeout: WAIT });
    await page.close();
    await edits;
    await judge(await opened(context, stage.url), seen, how);
    return seen;
  } finally {
    await context.close();
  }
}

interface Running {
  readonly child: ChildProcess;
  readonly browser: Browser;
  kill(): Promise<void>;
}

/** A browser with a place of its own, as a person has one. */
async function start(folder: string): Promise<Running> {
  const port = join(folder, "DevToolsActivePort");
  rmSync(port, { force: true });
  const words = [...FLAGS, "--remote-debugging-port=0", `--user-data-dir=${folder}`, "about:blank"];
  const child = spawn(browserPath()!, words, { stdio: "ignore", detached: true });
  const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  for (let waited = 0; !existsSync(port) || readFileSync(port, "utf8").split("\n").length < 2; waited += 100) {
    if (waited > WAIT) throw new Error("the browser does not start");
    await later(100);
  }
  const [number] = readFileSync(port, "utf8").split("\n");
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${number}`, { timeout: WAIT });
  const kill = async (): Promise<void> => {
    // With all that it started.
    process.kill(-child.pid!, "SIGKILL");
    await gone;
  };
  return { child, browser, kill };
}

async function browserKill(stage: Stage, draw: Draw): Promise<Seen> {
  const folder = mkdtempSync(join(tmpdir(), "laywright-browser-"));
  const seen: Seen = { typed: 1, kept: 1 };
  let running: Running | null = null;
  try {
    running = await start(folder);
    const page = await begin(running.browser.contexts()[0]!, stage.url);
    const edits = editOn(page, seen);
    await later(draw.below(LATEST));
    await running.kill();
    running = null;
    await edits;
    running = await start(folder);
    await judge(await opened(running.browser.contexts()[0]!, stage.url), seen, "browser");
    return seen;
  } finally {
    await running?.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }
}

/** The page's tab, threads and browser killed at random moments while a project is edited and kept. */
export function pageKills(): Kind {
  let stage: Stage | null = null;
  return {
    name: "pageKills",
    about: "tab, threads and browser killed at random moments of edits; then what was told as kept stands there",
    limitMs: 300_000,
    run: async (draw) => {
      // The browser that the tabs share may be gone itself, on a machine without memory for instance.
      if (stage !== null && !stage.browser.isConnected()) await stage.close();
      if (!stage?.browser.isConnected()) stage = await openStage();
      const how = draw.one(["tab", "tab", "worker", "browser", "browser"]);
      const { kept } = how === "browser" ? await browserKill(stage, draw) : await tabKill(stage, how, draw);
      return `${how}, ${kept > 1 ? "after edits were kept" : "before an edit was kept"}`;
    },
    end: async () => {
      await stage?.close();
      stage = null;
    },
  };
}
