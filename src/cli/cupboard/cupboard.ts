import {
  type Changed,
  findPiece,
  giveBack,
  keepLeft,
  letGo,
  notePieces,
  type PieceWords,
  putIn,
  takeForPlan,
  takeOut,
  undoLast,
} from "../../core/cupboard/change.ts";
import type { CupboardPiece, CupboardStepKind } from "../../core/cupboard/cupboard.ts";
import { isOfCloth, MOST_PHOTO_KB } from "../../core/cupboard/cupboard.ts";
import { pieceJson } from "../../core/cupboard/cupboardFile.ts";
import type { MaterialStock } from "../../core/materials/stock.ts";
import { ok, type Result } from "../../core/problems/problem.ts";
import { parseLength } from "../../core/units/parseLength.ts";
import type { Telling } from "../../export/cutsheet/shelfLabels.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  UsageError,
} from "../command.ts";
import { InputProblem, inputProblem } from "../inOut/toldProblem.ts";
import { partsBy, requiredOption, unitAtEnd, wordOption } from "../options/optionValues.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";
import { changeCupboard, freeCupboard, readCupboardFile, soundOf, today } from "./cupboardDisk.ts";
import { pieceText, shortText, tableText, wantedPieces } from "./cupboardText.ts";
import { photoOf } from "./photoOf.ts";
import { readPlanFile } from "./planLeft.ts";
import { printLabels } from "./printLabels.ts";

/** What can be done, each a word after the command. */
const ACTS = ["show", "keep", "put", "take", "back", "note", "drop", "undo", "labels", "free"] as const;

type Act = (typeof ACTS)[number];

const LENGTHS = ["mm", "cm", "in/16"] as const;
const SIZE = { minMm: 1, maxMm: 100_000 };

/** `laywright cupboard`: leftovers, kept and found again. */
export const cupboardCommand: Command = {
  name: "cupboard",
  synopsis: "WHAT FILE [PLAN | LABEL…] [options]",
  about: [
    "What is left after cutting, kept in a file of its own and offered to the next project. WHAT is one of:",
    "  show FILE [LABEL]     what there is, or everything about one piece",
    "  keep FILE PLAN        put in what a plan (plan.json of lay --out) leaves; pieces that it cuts are used up",
    "  put FILE              put in a piece by hand: --material and --size, or --roll for a roll",
    "  take FILE PLAN        take out the pieces that a plan cuts, or those named: take FILE LABEL… --for PROJECT",
    "  back FILE LABEL…      give back what was taken out and not cut",
    "  note FILE LABEL…      write down shade, source, photo or note of pieces that are there",
    "  drop FILE LABEL…      take off the list what is used up, given away or thrown out",
    "  undo FILE             undo the last of these; the last 100 can be undone one by one",
    "  labels FILE [LABEL…]  labels to print, each with a code that a telephone reads: --out FILE.pdf",
    "  free FILE             free the file where a run on another machine broke off and left it held",
    "\nOne project then begins with lay PROJECT --cupboard FILE. Of two that change the file at once each waits for the other; a change is done whole or not at all.",
    '\nExample: laywright cupboard keep cupboard.json out/demo/plan.json --shade rust --source "Quay market"',
  ].join("\n"),
  options: [
    {
      name: "material",
      value: "NAME",
      help: "keep, put: the cloth (keep: only this one of the plan); show, labels: cloths with this in their name",
    },
    { name: "size", value: "L x W", help: "put: size along and across the grain, or length and width of a roll" },
    { name: "roll", help: "put: a roll with so much left on it" },
    { name: "skin", help: "put: a skin; its outline can be written into the file later" },
    { name: "shade", value: "NAME", help: "keep, put, note: shade or dye lot" },
    { name: "source", value: "NAME", help: "keep, put, note: where it was bought" },
    {
      name: "photo",
      value: "FILE",
      help: `keep, put, note: a photo; a JPEG, PNG or WebP of at most ${MOST_PHOTO_KB} kB is kept in the cupboard itself, of others the name`,
    },
    { name: "note", value: "TEXT", help: "keep, put, note: a note" },
    { name: "again", help: "keep: the same plan was cut once more" },
    { name: "for", value: "PROJECT", help: "take: what the pieces are taken out for" },
    { name: "more", help: "take: the project has pieces out already, and these are more for it" },
    { name: "out-too", help: "show: pieces that are out as well" },
    { name: "out", value: "FILE", help: "labels: the PDF to write" },
    {
      name: "paper",
      value: "PAPER",
      help: "labels: A4 (default), Letter or another paper; 3 by 8 labels on a sheet",
    },
    { name: "lengths", value: "UNIT", help: `how lengths are told: ${LENGTHS.join(", ")} (default cm)` },
    JSON_OPTION,
  ],
  operands: [2, 200],
  run: runCupboard,
};

/** Acts that say something of a piece. */
const SAYING: readonly Act[] = ["keep", "put", "note"];

/** Options that only some acts have a use for. */
const USES: Readonly<Record<string, readonly Act[]>> = {
  ...{ material: ["keep", "put", "show", "labels"], size: ["put"], roll: ["put"], skin: ["put"] },
  ...{ shade: SAYING, source: SAYING, photo: SAYING, note: SAYING },
  ...{ again: ["keep"], for: ["take"], more: ["take"], "out-too": ["show"], out: ["labels"], paper: ["labels"] },
};

async function runCupboard(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const [word, file, ...rest] = args.operands as [string, string, ...string[]];
  const act = ACTS.find((known) => known === word);
  if (act === undefined) throw new UsageError((say) => say.oneOf("WHAT", ACTS, word));
  for (const name of [...args.values.keys(), ...args.switches])
    if (USES[name]?.includes(act) === false) throw new UsageError((say) => say.notWith(name, act));
  const telling: Telling = { lengths: wordOption(args, "lengths", LENGTHS, "cm"), language: io.language };
  if (act === "show") return show(args, io, file, rest, telling);
  if (act === "labels") return printLabels(args, io, file, rest, telling);
  if (act === "undo") return undo(args, io, file, rest, telling);
  if (act === "free") {
    noMore(rest, 0);
    const flags = freeCupboard(file);
    io.out(
      args.switches.has("json")
        ? `${JSON.stringify({ laywrightCupboard: 1, freed: flags.map(({ host, ms }) => ({ host, seconds: Math.floor(ms / 1000) })) })}\n`
        : `${CUPBOARD_TEXTS[io.language].freed(flags)}\n`,
    );
    return EXIT.done;
  }
  const [did, change] = changeOf(act, args, rest, io);
  const { pieces } = await changeCupboard(file, change, act === "put" || act === "keep");
  tell(args, io, did, pieces, telling);
  return EXIT.done;
}

type Change = (cupboard: Parameters<typeof takeOut>[0]) => Result<Changed>;

function changeOf(
  act: Exclude<Act, "show" | "labels" | "undo" | "free">,
  args: ParsedArgs,
  rest: string[],
  io: Io,
): [CupboardStepKind, Change] {
  if (act === "put") {
    noMore(rest, 0);
    const material = requiredOption(args, "material");
    const stock = stockByHand(args);
    const words = wordsOf(args, io);
    return ["put", (cupboard) => ok(putIn(cupboard, material, stock, words, today()))];
  }
  if (act === "keep") {
    needs(rest, "PLAN", act);
    noMore(rest, 1);
    const { cloths, project, plan } = readPlanFile(rest[0]!);
    const only = args.values.get("material") ?? null;
    const wanted = cloths.filter((cloth) => only === null || isOfCloth({ material: only } as CupboardPiece, cloth));
    const from = { project, plan: only === null ? plan : `${plan} ${only}`, again: args.switches.has("again") };
    const words = wordsOf(args, io);
    return ["kept", (cupboard) => keepLeft(cupboard, wanted, from, words, today())];
  }
  needs(rest, act === "take" ? "PLAN | LABEL…" : "LABEL…", act);
  if (act === "note") {
    const words = wordsOf(args, io);
    if (Object.values(words).every((word) => word === undefined))
      throw new UsageError((say) => say.needs("cupboard note", "--shade | --source | --photo | --note"));
    return ["noted", (cupboard) => notePieces(cupboard, rest, words, today())];
  }
  if (act === "back") return ["gave-back", (cupboard) => giveBack(cupboard, rest, today())];
  if (act === "drop") return ["let-go", (cupboard) => letGo(cupboard, rest, today())];
  const by = args.values.get("for");
  // Two projects may have one name: what is out for it may be another's.
  const known = args.switches.has("more") ? "any" : new Set<string>();
  if (by !== undefined) return ["took", (cupboard) => takeOut(cupboard, rest, by, today(), known)];
  noMore(rest, 1);
  const { cloths, project } = readPlanFile(rest[0]!);
  return ["took", (cupboard) => takeForPlan(cupboard, cloths, project, today(), known)];
}

function needs(rest: readonly string[], what: string, act: Act): void {
  if (rest.length === 0) throw new UsageError((say) => say.needs(`cupboard ${act}`, `FILE ${what}`));
}

function noMore(rest: readonly string[], most: number): void {
  if (rest.length > most) throw new UsageError((say) => say.oneTooMany(rest[most]!));
}

function wordsOf({ values }: ParsedArgs, io: Io): PieceWords {
  const [shade, source, photo, note] = ["shade", "source", "photo", "note"].map((name) => values.get(name));
  return { shade, source, photo: photo === undefined ? undefined : photoOf(photo, io), note };
}

/** A piece as it is given by hand. Throws `InputProblem`. */
function stockByHand(args: ParsedArgs): MaterialStock {
  const text = args.values.get("size");
  const parts = partsBy(text ?? "");
  if (text === undefined || parts.length !== 2)
    throw new InputProblem((language) => [
      { code: "size-missing", path: "--size", message: CUPBOARD_TEXTS[language].noSize },
    ]);
  // "60 x 40 cm": the unit at the end is that of both.
  const unit = unitAtEnd(text);
  const read = parts.map((part) =>
    parseLength(unitAtEnd(part) || unit === null ? part : `${part} ${unit}`, "mm", "--size", SIZE),
  );
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) throw inputProblem(problems);
  const [along, across] = read.map((one) => (one.ok ? one.value : 0)) as [number, number];
  if (args.switches.has("roll") && args.switches.has("skin"))
    throw new UsageError((say) => say.either("roll", "skin"));
  if (args.switches.has("roll"))
    return { kind: "roll", id: "", width: across, selvedge: 0, length: along, squaring: 0, flaws: [] };
  const kind = args.switches.has("skin") ? "skin" : "remnant";
  return { kind, id: "", shape: { kind: "rectangle", along, across }, flaws: [], count: 1 };
}

function tell(
  args: ParsedArgs,
  io: Io,
  did: CupboardStepKind,
  pieces: readonly CupboardPiece[],
  telling: Telling,
): void {
  if (args.switches.has("json")) {
    io.out(`${JSON.stringify({ laywrightCupboard: 1, did, pieces: pieces.map(pieceData) })}\n`);
    return;
  }
  const texts = CUPBOARD_TEXTS[io.language];
  if (pieces.length === 0) io.out(`${texts.nothingLeft}\n`);
  else io.out(`${texts.did[did]}:\n${pieces.map((piece) => `  ${shortText(piece, telling)}\n`).join("")}`);
}

/** A piece as data; lengths in mm. */
function pieceData(piece: CupboardPiece): object {
  return pieceJson(piece, (mm) => mm) as object;
}

function show(args: ParsedArgs, io: Io, file: string, rest: string[], telling: Telling): ExitCode {
  const cupboard = readCupboardFile(file);
  const pieces =
    rest.length > 0
      ? rest.map((code) => soundOf(findPiece(cupboard, code)))
      : wantedPieces(cupboard, args.values.get("material") ?? null, args.switches.has("out-too"));
  if (args.switches.has("json"))
    io.out(`${JSON.stringify({ laywrightCupboard: 1, pieces: pieces.map(pieceData) })}\n`);
  else if (rest.length > 0) io.out(`${pieces.map((piece) => pieceText(piece, telling)).join("\n\n")}\n`);
  else io.out(`${tableText(pieces, telling)}\n`);
  return EXIT.done;
}

async function undo(args: ParsedArgs, io: Io, file: string, rest: string[], telling: Telling): Promise<ExitCode> {
  noMore(rest, 0);
  const { step, pieces } = await changeCupboard(file, undoLast);
  if (args.switches.has("json")) {
    io.out(`${JSON.stringify({ laywrightCupboard: 1, undid: step.did, pieces: pieces.map(pieceData) })}\n`);
    return EXIT.done;
  }
  const texts = CUPBOARD_TEXTS[io.language];
  io.out(`${texts.undone(step.did, step.on, step.project)}\n`);
  for (const piece of pieces) io.out(`  ${shortText(piece, telling)}\n`);
  return EXIT.done;
}
