import { MOST_ALLOWANCE } from "../../core/panels/sizePanels.ts";
import type { RoleWishes } from "../../core/patterns/assignRoles.ts";
import { PATTERN_ROLES, type PatternRole } from "../../core/patterns/patternOutline.ts";
import { PATTERN_UNITS } from "../../core/patterns/scaleDoubts.ts";
import { FIT_TOLERANCE, MENDS, type Mend, type UnderstandOptions } from "../../core/patterns/understandPattern.ts";
import { type LengthRange, parseLength } from "../../core/units/parseLength.ts";
import type { PdfOptions } from "../../reading/pdf/readPdf.ts";
import type { SheetsByHand } from "../../reading/pdf/sheetsByHand.ts";
import { type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";
import type { IntoWish } from "./intoProject.ts";

const ALLOWANCE = { minMm: 0, maxMm: MOST_ALLOWANCE };
const UNITS = Object.keys(PATTERN_UNITS);

/** Options that say how a pattern is understood. */
export const PATTERN_OPTIONS: readonly OptionSpec[] = [
  {
    name: "mend",
    value: "LIST",
    help: `what to put right: ${MENDS.join(", ")}, or all, with commas between`,
  },
  {
    name: "unit",
    value: "UNIT",
    help: `what one step of the file is: ${UNITS.join(", ")} (px72: 72 to the inch); default: as the file says`,
  },
  {
    name: "roles",
    value: "LIST",
    help: `what layers or colours are for, e.g. "Layer 2=stitch, #1e5ac8=fold"; one of ${PATTERN_ROLES.join(", ")}`,
  },
  {
    name: "tolerance",
    value: "MM",
    help: `curves become arcs that stay this near, mm (default ${FIT_TOLERANCE})`,
  },
  { name: "pages", value: "LIST", help: "pages of a PDF, e.g. 1-4,6 (default all)" },
  {
    name: "sheets",
    value: "CxR",
    help: "lay the pages of a PDF edge to edge, C in a row and R rows from the top left; sheets of ours find their places by their marks",
  },
  { name: "trim", value: "L", help: "border cut off every side of such a sheet (default 0)" },
  { name: "into", value: "PROJECT", help: "add the panels to this project file; every other byte of it stays" },
  { name: "material", value: "ID", help: "material of the added panels (default: the first cloth of the project)" },
  { name: "count", value: "N", help: "pieces of each added panel a bag (default 1)" },
  { name: "allowance", value: "L", help: "seam allowance of panels whose pattern shows none (default 0)" },
  {
    name: "wait",
    value: "S",
    help: "seconds to read at most (default 1.7 for lines, more for pages and pictures)",
  },
];

/** The options as given. Throws `UsageError` for words and numbers that mean nothing here. */
export function readPatternOptions(args: ParsedArgs): {
  readonly options: UnderstandOptions;
  readonly seconds: number | undefined;
  readonly into: IntoWish | null;
  readonly pdf: PdfOptions;
} {
  const file = args.values.get("into");
  return {
    pdf: { pages: readPages(args.values.get("pages")), sheets: readSheets(args) },
    options: {
      tolerance: numberOption(args, "tolerance", { least: 0.001, most: 5 }, FIT_TOLERANCE),
      mend: readMends(args.values.get("mend")),
      roles: readRoles(args.values.get("roles")),
      unit: args.values.has("unit") ? wordOption(args, "unit", UNITS, "mm") : undefined,
    },
    seconds: numberOption(args, "wait", { least: 0.1, most: 600 }, undefined),
    into: file === undefined ? noPlace(args) : readInto(args, file),
  };
}

function readPages(text: string | undefined): readonly number[] | undefined {
  if (text === undefined) return undefined;
  return listed(text).flatMap((run) => {
    const found = /^(\d{1,4})(?:\s*-\s*(\d{1,4}))?$/u.exec(run);
    if (!found) throw new UsageError((say) => say.pages(text));
    const first = Number(found[1]);
    const last = Number(found[2] ?? found[1]);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  });
}

function readSheets(args: ParsedArgs): SheetsByHand | undefined {
  const text = args.values.get("sheets");
  if (text === undefined) {
    if (args.values.has("trim")) throw new UsageError((say) => say.together("trim", "sheets"));
    return undefined;
  }
  const found = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/u.exec(text);
  if (!found) throw new UsageError((say) => say.sheets(text));
  return { columns: Number(found[1]), rows: Number(found[2]), trim: lengthOption(args, "trim", ALLOWANCE) };
}

function lengthOption(args: ParsedArgs, name: string, range: LengthRange): number {
  const given = args.values.get(name);
  if (given === undefined) return 0;
  const length = parseLength(given, "mm", `--${name}`, range);
  if (!length.ok) throw inputProblem(length.problems);
  return length.value;
}

function readInto(args: ParsedArgs, file: string): IntoWish {
  return {
    file,
    material: args.values.get("material"),
    count: numberOption(args, "count", { least: 1, most: 1000, whole: true }, 1),
    seamAllowance: lengthOption(args, "allowance", ALLOWANCE),
  };
}

function noPlace(args: ParsedArgs): null {
  for (const name of ["material", "count", "allowance"])
    if (args.values.has(name)) throw new UsageError((say) => say.together(name, "into"));
  return null;
}

function readMends(text: string | undefined): ReadonlySet<Mend> {
  const mends = new Set<Mend>();
  for (const word of listed(text)) {
    if (word === "all") for (const mend of MENDS) mends.add(mend);
    else {
      const mend = MENDS.find((known) => known === word);
      if (mend === undefined) throw new UsageError((say) => say.oneOf("mend", [...MENDS, "all"], word));
      mends.add(mend);
    }
  }
  return mends;
}

function readRoles(text: string | undefined): RoleWishes {
  const roles = new Map<string, PatternRole>();
  for (const pair of listed(text)) {
    const at = pair.lastIndexOf("=");
    const word = pair.slice(at + 1).trim();
    const role = at < 1 ? undefined : PATTERN_ROLES.find((known) => known === word);
    if (role === undefined) throw new UsageError((say) => say.oneOf("roles", PATTERN_ROLES, word));
    roles.set(pair.slice(0, at).trim().toLowerCase(), role);
  }
  return roles;
}

function listed(text: string | undefined): string[] {
  return (text ?? "").split(",").flatMap((word) => (word.trim() === "" ? [] : [word.trim()]));
}
