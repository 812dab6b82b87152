// What the page's plans come to beside the command line's, cloth by cloth: the demo's, and outlines of many corners.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import type { Instance } from "../../src/cli/bench/dataset.ts";
import { instancesAt } from "../../src/cli/bench/instancesAt.ts";
import { demoText, goTo, openFile } from "../e2e/browser.ts";

/** A cloth laid for so long on both sides: what it takes of its open roll, mm, and by how much the page's is longer. */
interface Beside {
  readonly cloth: string;
  readonly page: number;
  readonly command: number;
  readonly percentLonger: number;
}

/** Width of the roll that an instance is laid on, whatever its own units, mm. */
const WIDTH = 1400;

/** An open instance as a project of one cloth: a panel of each kind, on a roll as wide as the strip, nothing between. */
function projectOf(instance: Instance): string {
  const scale = WIDTH / instance.stripWidth;
  const size = (value: number): number => Math.round(value * scale * 1000) / 1000;
  return JSON.stringify({
    laywright: 1,
    name: instance.name,
    gap: 0,
    margin: 0,
    materials: [
      {
        id: "cloth",
        name: "Cloth",
        kind: "felt",
        thickness: 1,
        grain: instance.turns.length === 4 ? "either" : "lengthwise",
        // Points are rounded, and a piece may be as wide as the strip.
        stock: [{ kind: "roll", id: "roll", width: WIDTH + 0.01, squaring: 0 }],
      },
    ],
    panels: instance.items.map(({ points, count }, i) => ({
      id: `p${i}`,
      name: `Panel ${i}`,
      material: "cloth",
      count,
      seamAllowance: 0,
      shape: { kind: "outline", points: points.map((point) => point.map(size)) },
    })),
  });
}

type Lengths = ReadonlyMap<string, number>;

/** By the command line with two threads, so many seconds for each cloth. */
function byCommand(text: string, seconds: number): Lengths {
  const folder = mkdtempSync(join(tmpdir(), "laywright-page-"));
  try {
    const file = join(folder, "project.json");
    writeFileSync(file, text);
    const cloths = JSON.parse(text).materials.length;
    const words = ["lay", file, "--seconds", String(seconds * cloths), "--threads", "2", "--json"];
    // A plan that leaves something out ends with 1 and is a plan all the same.
    const { stdout } = spawnSync("node", ["dist/cli/main.js", ...words], { maxBuffer: 1e9 });
    const plan = JSON.parse(stdout.toString());
    type Laid = { materialId: string; stock: { kind: string; lengthUsed: number }[] };
    return new Map(
      (plan.materials as Laid[]).map(({ materialId, stock }) => [
        materialId,
        stock.find(({ kind }) => kind === "roll")?.lengthUsed ?? 0,
      ]),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** On the page, which looks for so many seconds at each cloth that is to be laid. */
async function onPage(page: Page, text: string, cloths: Iterable<string>, seconds: number): Promise<Lengths> {
  await goTo(page, "#/bag");
  await openFile(page, "project.json", text);
  const lengths = new Map<string, number>();
  for (const cloth of cloths) {
    await goTo(page, `#/lay/${cloth}`);
    await page.waitForSelector(".piece", { timeout: 60_000 });
    await page.waitForTimeout(seconds * 1000);
    const length = await page.evaluate((id) => {
      type Use = { stockId: string; usedLength: number };
      type Board = { lays: { get(): Map<string, { plan: { uses: Use[] } }> } };
      const { board } = (window as unknown as { laywright: { board: Board } }).laywright;
      return (board.lays.get().get(id)?.plan.uses ?? []).map(({ usedLength }) => usedLength);
    }, cloth);
    lengths.set(cloth, Math.max(0, ...length));
  }
  return lengths;
}

/** The demo, and each instance at `path`, laid for `seconds` a cloth on the page and by the command line. */
export async function plansOnPage(page: Page, path: string, seconds: number): Promise<Beside[]> {
  const projects = [
    ["demo", demoText()] as const,
    ...(await instancesAt(path)).map((each) => [each.name, projectOf(each)] as const),
  ];
  const beside: Beside[] = [];
  for (const [name, text] of projects) {
    const command = byCommand(text, seconds);
    const onRolls = [...command].filter(([, length]) => length > 0);
    const there = await onPage(
      page,
      text,
      onRolls.map(([cloth]) => cloth),
      seconds,
    );
    for (const [cloth, length] of onRolls) {
      const own = there.get(cloth)!;
      const percentLonger = Math.round(((own - length) / length) * 10_000) / 100;
      beside.push({ cloth: `${name} ${cloth}`, page: own, command: length, percentLonger });
    }
  }
  return beside;
}
