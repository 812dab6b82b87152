import unicodeUrl from "@fontsource/unifontex/files/unifontex-latin-400-normal.woff?url";
import regularUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url";
import boldUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url";
import { layDrawing } from "../../core/drawing/layDrawing.ts";
import { mapPages } from "../../core/drawing/mapPage.ts";
import { paperPart } from "../../core/drawing/page.ts";
import { PAPERS } from "../../core/drawing/papers.ts";
import { pieceArt } from "../../core/drawing/pieceArt.ts";
import { tilePages } from "../../core/drawing/tilePages.ts";
import { tilePieces } from "../../core/drawing/tiling.ts";
import { fileStem } from "../../export/fileStem.ts";
import type { FontBytes } from "../../export/fonts/fontBytes.ts";
import { grainArrow } from "../../export/grainArrow.ts";
import { machineMats } from "../../export/machineMats.ts";
import { matFiles, planFiles, tilingOptions, titleOf } from "../../export/planFiles.ts";
import type { Answers, Ask, MatStack, PaperCount, PaperStack } from "./protocol.ts";
import { rulerStacks } from "./rulerStacks.ts";

/** Works out what was asked. */
export async function answer(ask: Ask): Promise<Answers[Ask["kind"]]> {
  if (ask.kind === "paper") return paperStacks(ask);
  if (ask.kind === "papers") return paperCounts(ask);
  if (ask.kind === "ruler") return rulerStacks(ask);
  if (ask.kind === "mats") return matStack(ask);
  const { project, pieces, straps, lays, language } = ask;
  return planFiles({ project, pieces, straps, lays, language, fonts: await fontBytes() });
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
      };
    });
}

/** Papers that makers and copy shops have; the others can still be chosen. */
const COMMON = ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid", "Legal"];

function paperCounts({ project, pieces, lay }: Extract<Ask, { kind: "papers" }>): readonly PaperCount[] {
  const { material, problem, plan } = lay;
  const art = pieceArt(pieces, project.output.lengths);
  const options = tilingOptions(project.output);
  const sheets = problem.stocks
    .filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id))
    .map((stock) => layDrawing(stock, plan, art, grainArrow(material)));
  return PAPERS.filter(({ id }) => COMMON.includes(id)).map((paper) => ({
    paper: paper.id,
    sheets: sheets.reduce((sum, { copies }) => sum + tilePieces(copies, { ...options, paper }).tiles.length, 0),
  }));
}

async function matStack({ project, pieces, lay }: Extract<Ask, { kind: "mats" }>): Promise<MatStack> {
  const { machine } = project.output;
  const { material, problem } = lay;
  if (machine === null) return { mats: [], tooLarge: [], refusal: null };
  const { mats, tooLarge, refusal } = machineMats(material, problem, pieces, project.output);
  const title = `${project.name}: ${material.name}`;
  const files = matFiles(mats, title, fileStem(material.name, "cloth"), await fontBytes());
  return {
    mats: mats.map((drawing, i) => ({
      page: {
        name: `${material.name} mat ${i + 1}`,
        width: machine.bedWidth,
        height: machine.bedHeight,
        parts: [paperPart(drawing.items)],
      },
      files: files.slice(2 * i, 2 * i + 2),
    })),
    tooLarge,
    refusal,
  };
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
