import unicodeUrl from "@fontsource/unifontex/files/unifontex-latin-400-normal.woff?url";
import regularUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url";
import boldUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url";
import { type LaySheet, layDrawing } from "../../core/drawing/layDrawing.ts";
import { machineDrawing } from "../../core/drawing/machine/machineDrawing.ts";
import { mapPages } from "../../core/drawing/mapPage.ts";
import { type Page, paperPart } from "../../core/drawing/page.ts";
import { PAPERS } from "../../core/drawing/papers.ts";
import { pieceArt } from "../../core/drawing/pieceArt.ts";
import { tilePages } from "../../core/drawing/tilePages.ts";
import { tilePieces } from "../../core/drawing/tiling.ts";
import { arrange } from "../../core/lay/arrange.ts";
import { chooseEngines } from "../../core/lay/chooseEngines.ts";
import { matProblem } from "../../core/lay/matProblem.ts";
import type { LayPlan } from "../../core/lay/types.ts";
import { dxfText } from "../../export/dxf/dxfText.ts";
import type { FontBytes } from "../../export/fonts/fontBytes.ts";
import { grainArrow, planFiles, tilingOptions, titleOf } from "../../export/planFiles.ts";
import { svgText } from "../../export/svg/svgText.ts";
import type { Answers, Ask, MatStack, PaperStack } from "./protocol.ts";

/** Evaluations for laying pieces on mats: a second or two, and the same mats every time. */
const MAT_EFFORT = 60_000;

/** Works out what was asked. */
export async function answer(ask: Ask): Promise<Answers[Ask["kind"]]> {
  if (ask.kind === "paper") return paperStacks(ask);
  if (ask.kind === "mats") return matStack(ask);
  const { project, pieces, lays } = ask;
  return planFiles({ project, pieces, lays, fonts: await fontBytes() });
}

function paperStacks({ project, pieces, lay }: Extract<Ask, { kind: "paper" }>): readonly PaperStack[] {
  const { material, problem, plan } = lay;
  const art = pieceArt(pieces, project.output.lengths);
  const grain = grainArrow(material);
  const options = tilingOptions(project.output);
  return problem.stocks
    .filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id))
    .map((stock) => {
      const sheet = layDrawing(stock, plan, art, grain);
      const tiling = tilePieces(sheet.copies, options);
      const title = titleOf(project, material, stock, sheet);
      return {
        stockId: stock.id,
        pages: [...mapPages(sheet, tiling, title), ...tilePages(sheet, tiling, title, grain)],
        sheets: tiling.tiles.length,
        papers: PAPERS.map((paper) => ({
          paper: paper.id,
          sheets: tilePieces(sheet.copies, { ...options, paper }).tiles.length,
        })),
      };
    });
}

function matStack({ project, pieces, lay }: Extract<Ask, { kind: "mats" }>): MatStack {
  const { machine, lengths } = project.output;
  if (machine === null) return { mats: [], tooLarge: [] };
  const { bedWidth, bedHeight, grip, kerf } = machine;
  // A machine with a drag knife makes the trail of its blade good itself, as a rule.
  const wish = { bedWidth, bedHeight, grip, kerf, bladeOffset: 0, overcut: 0, sharedOnce: kerf === 0 };
  const problem = matProblem(lay.problem, { width: bedWidth, height: bedHeight, grip, kerf });
  const plan = finished(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: MAT_EFFORT }, 1));
  const art = pieceArt(pieces, lengths);
  const used = problem.stocks.filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id));
  const mats = used.map((stock, i) => {
    const sheet: LaySheet = layDrawing(stock, plan, art, grainArrow(lay.material));
    const drawing = machineDrawing(sheet, wish);
    const name = `${lay.material.name} mat ${i + 1}`;
    const stem = name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, "-");
    const page: Page = { name, width: bedWidth, height: bedHeight, parts: [paperPart(drawing.items)] };
    return {
      page,
      files: [
        { name: `${stem}.svg`, data: svgText(drawing, { title: name, areas: false }), about: name },
        { name: `${stem}.dxf`, data: dxfText(drawing), about: name },
      ],
    };
  });
  return { mats, tooLarge: plan.unplaced.map(({ pieceId }) => art.get(pieceId)?.name ?? pieceId) };
}

function finished(search: Generator<unknown, LayPlan, LayPlan | undefined>): LayPlan {
  for (let turn = search.next(); ; turn = search.next()) if (turn.done) return turn.value;
}

let fonts: Promise<FontBytes> | null = null;

function fontBytes(): Promise<FontBytes> {
  const bytes = async (url: string) => new Uint8Array(await (await fetch(url)).arrayBuffer());
  fonts ??= Promise.all([bytes(regularUrl), bytes(boldUrl)]).then(([regular, bold]) => ({
    regular,
    bold,
    fallbacks: [() => bytes(unicodeUrl)],
  }));
  return fonts;
}
