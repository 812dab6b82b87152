// The page loads and runs nothing but itself: what comes from outside or is put in later is refused by the browser, and a
// whole job never meets that refusal. Source: Content Security Policy Level 3 (W3C), as Chromium keeps it.
import { execFileSync } from "node:child_process";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { builderEnv, demoText, goTo, openFile, openPage, openStage, type Stage } from "./browser.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
let stage: Stage;
let outside: Server;
let asked: string[];
let oneFile: string;

beforeAll(async () => {
  stage = await openStage();
  execFileSync("npx", ["vite", "build", "--config", "src/web/vite.config.ts", "--logLevel", "error"], {
    cwd: root,
    env: { ...builderEnv(), ONE_FILE: "1" },
  });
  oneFile = pathToFileURL(join(root, "dist/web/laywright.html")).href;
  asked = [];
  outside = createServer((request, response) => {
    asked.push(request.url ?? "");
    response.writeHead(200, { "access-control-allow-origin": "*" }).end("window.cameIn = true");
  });
  await new Promise<void>((resolve) => outside.listen(0, "127.0.0.1", resolve));
});
afterAll(async () => {
  await stage.close();
  outside.closeAllConnections();
  outside.close();
});

type Violations = { violations: string[] };

/** A page that keeps a list of what its policy refused, on the page itself and in its workers. */
async function watched(
  address: string,
): Promise<{ page: Page; refused(): Promise<string[]>; close(): Promise<void> }> {
  const context = await stage.person({ acceptDownloads: true });
  const told: string[] = [];
  await context.addInitScript(() => {
    const list: string[] = [];
    Object.assign(window, { violations: list });
    addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
      list.push(`${effectiveDirective} ${blockedURI}`),
    );
  });
  context.on("console", (message) => {
    if (/content security policy/iu.test(message.text())) told.push(message.text());
  });
  const page = await openPage(context, address);
  return {
    page,
    refused: async () => [...(await page.evaluate(() => (window as unknown as Violations).violations)), ...told],
    close: () => context.close(),
  };
}

const BUILDS = [
  ["as a server gives it", () => stage.url],
  ["in one file", () => oneFile],
] as const;

test.each(BUILDS)("the page %s: nothing from outside, no script put in, no eval", async (_, address) => {
  const { page, refused, close } = await watched(address());
  const port = (outside.address() as AddressInfo).port;
  expect(await refused()).toEqual([]);
  const outcome = await page.evaluate(async (far) => {
    const fetched = await fetch(`${far}fetch`).then(
      () => "let through",
      () => "refused",
    );
    const put = (name: string, more: Record<string, string>): Promise<string> =>
      new Promise((resolve) => {
        const element = Object.assign(document.createElement(name), more);
        element.addEventListener("load", () => resolve("let through"));
        element.addEventListener("error", () => resolve("refused"));
        document.body.append(element);
      });
    const script = await put("script", { src: `${far}script` });
    const image = await put("img", { src: `${far}image` });
    document.body.append(Object.assign(document.createElement("script"), { textContent: "window.putIn = true" }));
    // In a task of the page's own: what a driver runs is let off.
    const evaluated = await new Promise((resolve) => {
      setTimeout(() => {
        try {
          resolve(Reflect.get(globalThis, "eval")("'let through'"));
        } catch (error) {
          resolve((error as Error).name);
        }
      });
    });
    const { cameIn, putIn } = window as unknown as { cameIn?: true; putIn?: true };
    return { fetched, script, image, evaluated, cameIn, putIn };
  }, `http://127.0.0.1:${port}/`);
  expect(outcome).toEqual({ fetched: "refused", script: "refused", image: "refused", evaluated: "EvalError" });
  expect(asked).toEqual([]);
  const kinds = (await refused()).map((line) => line.split(" ")[0]);
  expect(kinds).toEqual(expect.arrayContaining(["connect-src", "script-src-elem", "img-src", "script-src"]));
  await close();
});

test.each(BUILDS)("the page %s: a whole job meets no refusal", async (_, address) => {
  const { page, refused, close } = await watched(address());
  await openFile(page, "harbour.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  // A photograph: read on a thread of its own, shown out of memory.
  await page.setInputFiles("input[data-picker=pattern]", "fixtures/paper-pattern.jpg");
  await page.waitForSelector('.found-line button:has-text("Put right by hand")');
  await goTo(page, "#/lay");
  await page.waitForSelector(".piece");
  await goTo(page, "#/table/sheet");
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    page.click('button:has-text("Save the cut sheet")'),
  ]);
  expect(download.suggestedFilename()).toMatch(/cut-sheet\.pdf$/u);
  await goTo(page, "#/bag");
  expect(await refused()).toEqual([]);
  await close();
});
