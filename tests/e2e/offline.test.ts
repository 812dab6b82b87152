// After the first visit the page needs no network any more; the one-file page never needed any.
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { pdfWords } from "../tools/pdfReaders.ts";
import { sizeFaults } from "../tools/release.ts";
import { notices } from "../tools/thirdParty.ts";
import { builderEnv, demoText, goTo, openFile, openPage, openStage } from "./browser.ts";

/** Runs the documented command; gives the address that it prints, and what ends it and its children. */
async function started(): Promise<{ url: string; stop(): Promise<void> }> {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  // Colours of a terminal would stand inside the address.
  const env = { ...builderEnv(), NO_COLOR: "1", FORCE_COLOR: "0" };
  const server: ChildProcess = spawn("npm", ["start"], { cwd: root, env, detached: true });
  let said = "";
  const url = await new Promise<string>((resolve, reject) => {
    const hear = (words: Buffer) => {
      said += String(words);
      const address = /http:\/\/\S+:\d+\//u.exec(said);
      if (address !== null) resolve(address[0]);
    };
    server.stdout?.on("data", hear);
    server.stderr?.on("data", hear);
    server.once("exit", () => reject(new Error(`npm start ended: ${said}`)));
  });
  const ended = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  return {
    url,
    stop: async () => {
      process.kill(-server.pid!, "SIGKILL");
      await ended;
    },
  };
}

test("with the network cut after the first visit, everything still works as npm start serves it", async () => {
  const stage = await openStage();
  const served = await started();
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, served.url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.click("text=Open the example");
  await page.waitForSelector(".card-name:has-text('Gusset')");
  // Export code and fonts are stored by themselves once the page is idle.
  await page.waitForSelector("html[data-offline=whole]", { state: "attached", timeout: 60_000 });
  await served.stop();
  await page.reload();
  await page.waitForSelector(".card-name:has-text('Gusset')");
  await goTo(page, "#/lay");
  await page.waitForSelector(".piece");
  // Nothing of the export was ever asked for while there was a network.
  await goTo(page, "#/table/sheet");
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    page.click('button:has-text("Save the cut sheet")'),
  ]);
  expect(download.suggestedFilename()).toMatch(/cut-sheet\.pdf$/);
  await stage.close();
});

test("the one-file page works from disk", async () => {
  // First, because it may build the other page into the same folder.
  const stage = await openStage();
  const root = fileURLToPath(new URL("../../", import.meta.url));
  execFileSync("npx", ["vite", "build", "--config", "src/web/vite.config.ts", "--logLevel", "error"], {
    cwd: root,
    env: { ...builderEnv(), ONE_FILE: "1" },
  });
  const built = join(root, "dist/web/laywright.html");
  const text = readFileSync(built, "utf8");
  expect(sizeFaults({ "laywright.html": statSync(built).size })).toEqual([]);
  for (const { name, version } of notices()) expect(text).toContain(`${name} ${version}`);
  const context = await stage.person({ acceptDownloads: true });
  const page = await openPage(context, pathToFileURL(built).href);
  await page.click('button:has-text("Strap")');
  await goTo(page, "#/lay");
  await page.waitForSelector(".piece");
  // Files come from the page's own packed fonts: Chinese, Thai and a picture, read back by PDFium.
  const name = "包带 สายสะพาย 🧵";
  await openFile(page, "own.json", demoText().replace(/"name": "[^"]+"/u, `"name": "${name}"`));
  await goTo(page, "#/table/sheet");
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    page.click('button:has-text("Save the cut sheet")'),
  ]);
  const words = await pdfWords(await download.path());
  expect(words.replaceAll(/\s+/gu, " ")).toContain(name);
  // The helpers beside the search are parts of the page, too.
  await goTo(page, "#/cloth/sailcloth");
  await page.click("button:has-text('Compare widths and ways')");
  await page.waitForSelector(".shop-table tbody tr", { timeout: 60_000 });
  await stage.close();
});
