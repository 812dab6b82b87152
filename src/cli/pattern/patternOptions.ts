import type { RoleWishes } from "../../core/patterns/assignRoles.ts";
import { PATTERN_ROLES, type PatternRole } from "../../core/patterns/patternOutline.ts";
import { PATTERN_UNITS } from "../../core/patterns/scaleDoubts.ts";
import { FIT_TOLERANCE, MENDS, type Mend, type UnderstandOptions } from "../../core/patterns/understandPattern.ts";
import { type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";

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
    help: `what layers or colours are for, e.g. "Layer 2=stitch, #ff0000=fold"; one of ${PATTERN_ROLES.join(", ")}`,
  },
  {
    name: "tolerance",
    value: "MM",
    help: `curves become arcs that stay this near, mm (default ${FIT_TOLERANCE})`,
  },
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
} {
  return {
    options: {
      tolerance: numberOption(args, "tolerance", { least: 0.001, most: 5 }, FIT_TOLERANCE),
      mend: readMends(args.values.get("mend")),
      roles: readRoles(args.values.get("roles")),
      unit: args.values.has("unit") ? wordOption(args, "unit", UNITS, "mm") : undefined,
    },
    seconds: numberOption(args, "wait", { least: 0.1, most: 600 }, undefined),
  };
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
