// Pictures of each place and of the cutting mode, at three widths, light and dark, in two languages, and contact sheets
// of them: `npx tsx tests/tools/screenshots.ts [FOLDER] [--docs] [--wide 1024]`. With --docs those of README and docs are
// made anew; --wide takes one of the widths.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { demoText, goTo, openFile, openPage, openStage, type Stage } from "../e2e/browser.ts";

const PLACES = [
  ["bag", "#/bag", ".card"],
  ["strap", "#/bag/shoulder", ".spread"],
  ["desk", "#/bag/flap", ".outline-desk"],
  ["cloth", "#/cloth/sailcloth", ".stock"],
  ["lay", "#/lay/sailcloth", ".piece"],
  ["paper", "#/table/paper", ".page-miniature"],
  ["machine", "#/table/machine", ".caution"],
  ["ruler", "#/table/ruler", ".cut-steps"],
  ["sheet", "#/table/sheet", "table"],
  ["cutting", "#/table/cutting", ".cutting-heading"],
] as const;
const SIZES = [
  [360, 740],
  [1024, 768],
  [1920, 1080],
] as const;
const LOOKS = ["light", "dark"] as const;
const LOCALES = ["en-GB", "de-DE"] as const;
/** What README and docs show, from the middle size, in English and light. */
const DOCS: Readonly<Record<string, string>> = { bag: "bag.png", lay: "lay.png", cutting: "cutting.png" };

async function openDemo(stage: Stage, options: Parameters<Stage["person"]>[0]): Promise<Page> {
  const context = await stage.person(options);
  const page = await openPage(context, stage.url);
  await openFile(page, "demo.json", demoText());
  await page.waitForSelector(".card-name:has-text('Gusset')");
  return page;
}

/** Pictures side by side on one page, each under its name. */
async function contactSheet(stage: Stage, folder: string, name: string, files: readonly string[], wide: number) {
  const context = await stage.person({ viewport: { width: wide * 4 + 60, height: 400 } });
  const page = await context.newPage();
  const cells = files.map(
    (file) =>
      `<figure><img src="file://${file}" width="${wide}"><figcaption>${file.split("/").at(-1)}</figcaption></figure>`,
  );
  const sheet = join(folder, `${name}.html`);
  writeFileSync(sheet, `<style>body{display:flex;flex-wrap:wrap;gap:8px}figure{margin:0}</style>${cells.join("")}`);
  await page.goto(`file://${sheet}`);
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  await context.close();
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { docs: { type: "boolean", default: false }, wide: { type: "string" } },
});
const [target = "out/screens"] = positionals;
const isDocs = values.docs;
const folder = join(process.cwd(), target);
mkdirSync(folder, { recursive: true });
const stage = await openStage();
for (const [width, height] of isDocs
  ? [[1280, 860] as const]
  : SIZES.filter(([wide]) => values.wide === undefined || wide === Number(values.wide)))
  for (const locale of isDocs ? (["en-GB"] as const) : LOCALES)
    for (const colorScheme of isDocs ? (["light"] as const) : LOOKS) {
      const page = await openDemo(stage, {
        viewport: { width, height },
        colorScheme,
        locale,
        hasTouch: width < 500,
      });
      const files: string[] = [];
      for (const [name, hash, sign] of PLACES) {
        if (isDocs && DOCS[name] === undefined) continue;
        await goTo(page, hash);
        await page.waitForSelector(sign, { timeout: 90_000 });
        await page.waitForTimeout(isDocs ? 8000 : 900);
        const file = isDocs
          ? join(process.cwd(), "docs/images", DOCS[name]!)
          : join(folder, `${name}-${width}-${locale.slice(0, 2)}-${colorScheme}.png`);
        await page.screenshot({ path: file });
        files.push(file);
      }
      await page.context().close();
      if (!isDocs)
        await contactSheet(
          stage,
          folder,
          `all-${width}-${locale.slice(0, 2)}-${colorScheme}`,
          files,
          width < 500 ? 270 : 480,
        );
    }
await stage.close();
