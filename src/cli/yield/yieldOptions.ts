import { type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";

/** Options of `laywright yield`, in the order of its help. */
export const YIELD_OPTIONS: readonly OptionSpec[] = [
  {
    name: "strip",
    value: '"W x L"',
    help: 'cut width and cut length of the strap, e.g. "4 in x 28 in"; several in proportion as "4 in x 28 in + 2 of 2 in x 6 in"',
  },
  { name: "width", value: "W", help: "usable width of the cloth, without selvedges" },
  { name: "length", value: "L", help: "length of the cloth along the roll, as bought" },
  { name: "count", value: "N", help: "straps (or sets of several) wanted, in place of --length" },
  {
    name: "on",
    value: "PROJECT",
    help: "cloth out of a project file, in place of --width: a leftover, skin or limited roll with its flaws",
  },
  { name: "stock", value: "ID", help: "with --on: which stock (needed where there are several)" },
  {
    name: "gap",
    value: "G",
    help: "least distance between straps (default 0: one cut parts two straps; with --on as the project says)",
  },
  { name: "grain", value: "GRAIN", help: "both (default), lengthwise or crosswise" },
  { name: "squaring", value: "L", help: "lost at each cut end of the length (default 0)" },
  {
    name: "shrinkage",
    value: "SHARE",
    help: 'lost in the wash before cutting: "3 %", or along and across "5 % x 2 %"',
  },
  {
    name: "curve",
    value: "L",
    help: "with --length: how the number grows from there up to this length, step by step",
  },
  { name: "picture", value: "FILE", help: "write the plan, or the curve, as SVG" },
  {
    name: "evaluations",
    value: "N",
    help: "how hard to search for sets and on cloth of any outline (default 200000 a try)",
  },
];

/** Refuses options that do not go together. Throws `UsageError`. */
export function checkYieldOptions({ values }: ParsedArgs): void {
  const given = (name: string): boolean => values.has(name);
  if (given("on")) {
    for (const other of ["width", "length", "count", "curve", "squaring", "shrinkage"])
      if (given(other)) throw new UsageError((say) => say.notWith(other, "on"));
    return;
  }
  if (given("stock")) throw new UsageError((say) => say.onlyWith("stock", "on"));
  if (given("length") === given("count")) throw new UsageError((say) => say.either("length", "count"));
  if (given("curve") && !given("length")) throw new UsageError((say) => say.onlyWith("curve", "length"));
}
