import emojiUrl from "@fontsource/noto-emoji/files/noto-emoji-emoji-400-normal.woff?url";
import unicodeUrl from "@fontsource/unifontex/files/unifontex-latin-400-normal.woff?url";
import regularUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url";
import boldUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url";
import { layDrawing } from "../../core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import { paperPart } from "../../core/drawing/list/page.ts";
import { curvedSheet } from "../../core/drawing/sheets/curvedSheet.ts";
import { tilePieces } from "../../core/drawing/sheets/tiling.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import type { Stock } from "../../core/lay/problem/layProblem.ts";
import { PAPERS } from "../../core/project/papers.ts";
import { FILE_TEXTS } from "../../core/words/words.ts";
import { projectSheet } from "../../export/cutsheet/projectSheet.ts";
import { fileStem } from "../../export/fileStem.ts";
import type { FontBytes } from "../../export/fonts/fontBytes.ts";
import { grainArrow } from "../../export/grainArrow.ts";
import { machineMats } from "../../export/machineMats.ts";
import { facesFor, matFiles, planFiles } from "../../export/planFiles.ts";
import { sentPicture, tiledPages, tilingOptions, titleOf } from "../../export/stockFiles.ts";
import type { Answers, Ask, MatStack, PaperCount, PaperStack, StockPicture } from "./protocol.ts";
import { rulerAnswer } from "./rulerStacks.ts";

/** Works out what was asked. */
export async function answer(ask: Ask): Promise<Answers[Ask["kind"]]> {
  if (ask.kind === "paper") return paperStacks(ask);
  if (ask.kind === "papers") return paperCounts(ask);
  if (ask.kind === "ruler") return rulerAnswer(ask);
  if (ask.kind === "drawings") return stockPictures(ask);
  if (ask.kind === "mats") return matStack(ask);
  if (ask.kind === "sheet") return projectSheet(ask);
  const { project, pieces, straps, lays, language } = ask;
  return planFiles({ project, pieces, straps, lays, language, fonts: await fontBytes() });
}

function paperStacks({ project, pieces, language, lay }: Extract<Ask, { kind: "paper" }>): readonly PaperStack[] {
  const art = pieceArt(pieces, project.output.lengths, language);
  return usedStocks(lay).map((stock) => {
    const tiled = tiledPages(project, { ...lay, stock }, art, language);
    return { stockId: stock.id, pages: tiled?.pages ?? [], sheets: tiled?.sheets ?? 0 };
  });
}

function usedStocks({ problem, plan }: LaidCloth): Stock[] {
  return problem.stocks.filter((stock) => plan.placements.some(({ stockId }) => stockId === stock.id));
}

/** Papers that makers and copy shops have; the others can still be chosen. */
const COMMON = ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid", "Legal"];

function paperCounts({ project, pieces, language, lay }: Extract<Ask, { kind: "papers" }>): readonly PaperCount[] {
  const art = pieceArt(pieces, project.output.lengths, language);
  const options = tilingOptions(project.output);
  const isCurved = project.output.sheets === "curved";
  const sheets = usedStocks(lay).map((stock) => {
    const sheet = layDrawing(stock, lay.plan, art, grainArrow(lay.material), language);
    return isCurved ? curvedSheet(sheet, art).sheet : sheet;
  });
  return PAPERS.filter(({ id }) => COMMON.includes(id)).map((paper) => ({
    paper: paper.id,
    sheets: sheets.reduce((sum, { copies }) => sum + tilePieces(copies, { ...options, paper }).tiles.length, 0),
  }));
}

function stockPictures({ project, pieces, language, lay }: Extract<Ask, { kind: "drawings" }>): StockPicture[] {
  const { output } = project;
  const art = pieceArt(pieces, output.lengths, language);
  return usedStocks(lay).map((stock) => {
    const sheet = layDrawing(stock, lay.plan, art, grainArrow(lay.material), language);
    const name = titleOf(project, lay.material, stock, sheet, language).stock;
    return { stockId: stock.id, name, drawing: sentPicture(sheet.drawing, output) };
  });
}

async function matStack({ project, pieces, language, lay }: Extract<Ask, { kind: "mats" }>): Promise<MatStack> {
  const { machine } = project.output;
  const { material } = lay;
  if (machine === null) return { mats: [], tooLarge: [], refusal: null };
  const { mats, tooLarge, refusal } = machineMats(lay, pieces, project.output, language);
  const title = `${project.name}: ${material.name}`;
  const faces = await facesFor(pieces, await fontBytes());
  const files = matFiles(mats, title, fileStem(material.name, "cloth"), project.output, faces, language);
  return {
    mats: mats.map((drawing, i) => ({
      page: {
        name: `${material.name}: ${FILE_TEXTS[language].about.mat(i + 1, mats.length)}`,
        width: machine.bedWidth,
        height: machine.bedHeight,
        parts: [paperPart(drawing.items)],
      },
      files: files[i]!,
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
    fallbacks: [() => bytes(emojiUrl), () => bytes(unicodeUrl)],
  }));
  return fonts;
}
