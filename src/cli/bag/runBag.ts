import { basename, dirname } from "node:path";
import { BAG_BODIES, BAG_CHOICES, BAG_LIMITS, type BagWish, usualBag } from "../../core/bags/bagWish.ts";
import { hasDepth } from "../../core/bags/bodies.ts";
import { startBag } from "../../core/bags/startBag.ts";
import { STARTERS, starterBag } from "../../core/bags/starters.ts";
import { contourBox } from "../../core/geometry/contourArcs.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { cutListOf } from "../../core/project/cutList.ts";
import { writeProject } from "../../core/project/file/writeProject.ts";
import { USUAL_OUTPUT } from "../../core/project/outputSettings.ts";
import type { Project } from "../../core/project/project.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import { PANEL_WORDS } from "../../core/words/words.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs } from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { requiredOption, wordOption } from "../options/optionValues.ts";
import { LengthReader } from "../strap/strapOptions.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** Makes the project that the options ask for. Throws on wrong usage and bad lengths. */
export async function runBag(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const inches = wordOption(args, "units", ["mm", "in"] as const, "mm") === "in";
  const wish = readBag(args, inches);
  const words = PANEL_WORDS[io.language];
  const starter = STARTERS.find((one) => one === args.values.get("starter"));
  const usualName = starter === undefined ? words.bodies[wish.body] : words.starters[starter];
  const project = startBag(bareProject(args.values.get("name") ?? usualName, inches), wish, words);
  const list = cutListOf(project, io.language);
  if (!list.ok) throw inputProblem(list.problems, project.output.lengths);
  const out = args.values.get("out");
  if (out !== undefined)
    for (const path of writeFiles(dirname(out), [{ name: basename(out), data: writeProject(project) }]))
      io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
  if (args.switches.has("json")) {
    const pieces = list.value.pieces.map((piece) => ({ ...sizeOf(piece), count: piece.count }));
    io.out(`${JSON.stringify({ laywrightBag: 1, project: JSON.parse(writeProject(project)), pieces })}\n`);
  } else io.out(bagText(project, list.value.pieces, io));
  return EXIT.done;
}

function readBag(args: ParsedArgs, inches: boolean): BagWish {
  const usual = startOf(args, inches);
  const { body } = usual;
  const lengths = new LengthReader(args);
  const noLining = args.values.get("lining") === "none";
  const wish: BagWish = {
    body,
    width: lengths.length("width", BAG_LIMITS.width) ?? usual.width,
    height: lengths.length("height", BAG_LIMITS.height) ?? usual.height,
    depth: lengths.length("depth", BAG_LIMITS.depth) ?? usual.depth,
    allowance: lengths.length("allowance", BAG_LIMITS.allowance) ?? usual.allowance,
    opening: wordOption(args, "opening", BAG_CHOICES.opening, usual.opening),
    lining: noLining ? null : (lengths.length("lining", BAG_LIMITS.lining) ?? usual.lining),
    pockets: wordOption(args, "pockets", BAG_CHOICES.pockets, usual.pockets),
    interfacing: wordOption(args, "interfacing", BAG_CHOICES.interfacing, usual.interfacing),
    straps: wordOption(args, "straps", BAG_CHOICES.straps, usual.straps),
  };
  lengths.check();
  return wish;
}

/** What the options begin from: a starter as it stands, or a body whose outside measures are given. */
function startOf(args: ParsedArgs, inches: boolean): BagWish {
  if (args.values.has("starter")) {
    const starter = starterBag(wordOption(args, "starter", STARTERS, "tote"), inches);
    return { ...starter, body: wordOption(args, "body", BAG_BODIES, starter.body) };
  }
  requiredOption(args, "body");
  for (const name of ["width", "height"]) requiredOption(args, name);
  const body = wordOption(args, "body", BAG_BODIES, "flat");
  if (hasDepth({ body })) requiredOption(args, "depth");
  return usualBag(body, inches);
}

function bareProject(name: string, inches: boolean): Project {
  return {
    name,
    unit: inches ? "in" : "mm",
    bags: 1,
    currency: inches ? "USD" : "EUR",
    materials: [],
    straps: [],
    panels: [],
    gap: 0,
    margin: 0,
    pins: [],
    output: { paper: inches ? "Letter" : "A4", ...USUAL_OUTPUT, lengths: inches ? "in/16" : "mm" },
  };
}

function sizeOf({ id, name, materialId, contour }: CutPiece) {
  const box = contourBox(contour);
  return { id, name, material: materialId, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
}

/** Every piece with its cut size along and across the grain. */
function bagText(project: Project, pieces: readonly CutPiece[], io: Io): string {
  const names = new Map(project.materials.map(({ id, name }) => [id, name]));
  const rows = pieces.map((piece) => {
    const { widthMm, heightMm, material } = sizeOf(piece);
    const [along, across] = [widthMm, heightMm].map((mm) => formatLength(mm, project.output.lengths, io.language));
    const size = `${along} × ${across}`;
    return `${piece.count} × ${piece.name} · ${names.get(material)} · ${size}`;
  });
  return `${project.name}\n${rows.map((row) => `  ${row}`).join("\n")}\n`;
}
