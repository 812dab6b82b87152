import { type ParsedArgs, UsageError } from "../command.ts";

/** Options that mean something only beside another one. */
const ONLY_WITH: Readonly<Record<string, readonly string[]>> = {
  price: ["compare"],
  "measured-width": ["fold-test"],
  "measured-setback": ["fold-test"],
  "reading-error": ["fold-test"],
  into: ["fold-test"],
  of: ["into"],
  "fixed-bar": ["slider"],
  "facing-thickness": ["facing"],
  "interfacing-thickness": ["interfacing"],
};

/** Options that a fold test heeds; it folds a strip of its own. */
const OF_FOLD_TEST: ReadonlySet<string> = new Set([
  ...["fold-test", "construction", "material", "thickness", "cut-width", "json", "lang", "help"],
  ...["measured-width", "measured-setback", "reading-error", "into", "of"],
]);

/** Options that a comparison has no use for: it draws nothing and every construction is in it. */
const NOT_COMPARED: readonly string[] = ["construction", "picture", "out", "round"];

/** Refuses options that the rest of the command line leaves without a meaning. Throws `UsageError`. */
export function checkModes({ values, switches }: ParsedArgs): void {
  const given = (name: string): boolean => values.has(name) || switches.has(name);
  for (const [name, others] of Object.entries(ONLY_WITH)) {
    const missing = others.find((other) => !given(other));
    if (given(name) && missing !== undefined) throw new UsageError((say) => say.onlyWith(name, missing));
  }
  const names = [...values.keys(), ...switches];
  const idle = (mode: string): string | undefined =>
    mode === "fold-test"
      ? names.find((name) => !OF_FOLD_TEST.has(name))
      : names.find((name) => NOT_COMPARED.includes(name));
  for (const mode of ["fold-test", "compare"]) {
    const one = given(mode) ? idle(mode) : undefined;
    if (one !== undefined) throw new UsageError((say) => say.notWith(one, mode));
  }
}
