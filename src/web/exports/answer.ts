import emojiUrl from "@fontsource/noto-emoji/files/noto-emoji-emoji-400-normal.woff?url";
import unicodeUrl from "@fontsource/unifontex/files/unifontex-latin-400-normal.woff?url";
import regularUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url";
import boldUrl from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url";
import { layDrawing } from "../../core/drawing/lay/layDrawing.ts";
import { grainArrow, pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import { paperPart } from "../../core/drawing/list/page.ts";
import { isDrawn } from "../../core/drawing/list/roleStyles.ts";
import { curvedSheet } from "../../core/drawing/sheets/curvedSheet.ts";
import { tilePieces } from "../../core/drawing/sheets/tiling.ts";
import { matsOfAll } from "../../core/job/matsOf.ts";
import { PAPERS } from "../../core/project/papers.ts";
import { projectSheet } from "../../export/cutsheet/projectSheet.ts";
import { sentPicture } from "../../export/drawingFiles.ts";
import { fileStem } from "../../export/fileStem.ts";
import type { FontBytes } from "../../export/fonts/faces.ts";
import { unpackFont } from "../../export/fonts/unpackWoff.ts";
import { shelfLabelsPdf, shoppingPdf } from "../../export/handouts.ts";
import { drawnMats, machineMats } from "../../export/machineMats.ts";
import { matFiles } from "../../export/outputs.ts";
import { facesFor, planFiles } from "../../export/planFiles.ts";
import { stocksInUse, tiledPages, tilingOptions, titleOf } from "../../export/tiledPages.ts";
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
  if (ask.kind === "shopping") return shoppingPdf(ask.list, ask.paper, await fontBytes());
  if (ask.kind === "shelf-labels")
    return shelfLabelsPdf(ask.pieces, ask.title, ask.telling, ask.paper, await fontBytes());
  const { project, pieces, straps, lays, language } = ask;
  const isForMats = ask.outputs.some((id) => id === "mat-svg" || id === "mat-dxf");
  const mats = matsOfAll(lays, isForMats ? project.output.machine : null);
  return planFiles({ project, pieces, straps, lays, mats, language, fonts: await fontBytes() }, ask.outputs);
}

function paperStacks({ project, pieces, language, lay }: Extract<Ask, { kind: "paper" }>): readonly PaperStack[] {
  const art = pieceArt(pieces, project.output.lengths, language);
  return stocksInUse(lay).map((onStock) => {
    const tiled = tiledPages(project, onStock, art, language);
    return { stockId: onStock.stock.id, pages: tiled?.pages ?? [], sheets: tiled?.sheets ?? 0 };
  });
}

/** Papers that makers and copy shops have; the others can still be chosen. */
const COMMON = ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid", "Legal"];

function paperCounts({ project, pieces, language, lay }: Extract<Ask, { kind: "papers" }>): readonly PaperCount[] {
  const art = pieceArt(pieces, project.output.lengths, language);
  const options = tilingOptions(project.output);
  const isCurved = project.output.sheets === "curved";
  const sheets = stocksInUse(lay).map(({ stock }) => {
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
  return stocksInUse(lay).map(({ stock }) => {
    const sheet = layDrawing(stock, lay.plan, art, grainArrow(lay.material), language, [], lay.problem.pattern);
    const name = titleOf(project, lay.material, stock, sheet, language).stock;
    return { stockId: stock.id, name, drawing: sentPicture(sheet.drawing, output) };
  });
}

async function matStack({ project, pieces, language, lay }: Extract<Ask, { kind: "mats" }>): Promise<MatStack> {
  const { machine } = project.output;
  const { material } = lay;
  if (machine === null) return { mats: [], tooLarge: [], refusal: null };
  const found = machineMats(lay, matsOfAll([lay], machine).get(material.id), pieces, project.output, language);
  const { tooLarge, refusal } = found;
  const faces = await facesFor(pieces, await fontBytes());
  const mats = drawnMats(found, project.name, material.name, fileStem(material.name, "cloth"), language);
  return {
    mats: mats.map((mat) => ({
      page: {
        name: `${material.name}: ${mat.about}`,
        width: machine.bedWidth,
        height: machine.bedHeight,
        parts: [
          paperPart(
            mat.drawing.items.filter((item) => "role" in item && isDrawn(item.role, project.output.lines, true)),
          ),
        ],
      },
      files: matFiles(mat, project.output, faces, language),
    })),
    tooLarge,
    refusal,
  };
}

let fonts: Promise<FontBytes> | null = null;

function fontBytes(): Promise<FontBytes> {
  const bytes = async (url: string) => unpackFont(new Uint8Array(await (await fetch(url)).arrayBuffer()));
  fonts ??= Promise.all([bytes(regularUrl), bytes(boldUrl)]).then(([regular, bold]) => ({
    regular,
    bold,
    fallbacks: [() => bytes(emojiUrl), () => bytes(unicodeUrl)],
  }));
  return fonts;
}
