// Makes the pictures of the page for the README: `npx tsx tests/tools/pictures.ts`.
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoText, goTo, openFile, openPage, openStage } from "../e2e/browser.ts";

const folder = fileURLToPath(new URL("../../docs/images/", import.meta.url));
mkdirSync(folder, { recursive: true });
const stage = await openStage();
const context = await stage.person({ viewport: { width: 1280, height: 820 }, colorScheme: "light" });
const page = await openPage(context, stage.url);
await openFile(page, "demo.json", demoText());
await page.waitForSelector(".card-name:has-text('Gusset')");
await goTo(page, "#/lay/sailcloth");
await page.waitForSelector(".piece");
await page.waitForTimeout(15_000);
await page.screenshot({ path: `${folder}lay.png` });
await goTo(page, "#/bag/shoulder");
await page.locator(".spread").scrollIntoViewIfNeeded();
await page.click("summary:has-text('Compare')");
await page.evaluate(() => document.querySelector(".spread")?.scrollIntoView());
await page.screenshot({ path: `${folder}bag.png` });
await goTo(page, "#/table/cutting");
await page.waitForSelector(".cutting-heading");
await page.click('.cutting-moves button:has-text("Next")');
await page.screenshot({ path: `${folder}cutting.png` });
await stage.close();
