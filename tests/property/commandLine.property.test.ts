import fc from "fast-check";
import { expect, test } from "vitest";
import { COMMANDS } from "../../src/cli/commands.ts";
import { runCli } from "../tools/runCli.ts";
import { seedOf } from "../tools/seeded.ts";

/** All but the one that waits to be asked. */
const names = COMMANDS.map(({ name }) => name).filter((name) => name !== "serve");
const commands = await Promise.all(COMMANDS.map(({ load }) => load()));
const options = [...new Set(commands.flatMap((command) => command.options.map((option) => `--${option.name}`)))];
const word = fc.oneof(
  fc.constantFrom(...options, "--", "-", "-x", "--help=1", "--seed=", "--json", "no-such-file", "/", "", "."),
  fc.constantFrom(
    "0",
    "-1",
    "1e9",
    "NaN",
    "Infinity",
    "3 in",
    "-3 in",
    "1e999",
    "4 in x 28 in",
    "x",
    "0 in x 0 in",
  ),
  fc.string({ maxLength: 12 }),
);

test("no command line makes the program fail in any way but with a sentence", async () => {
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...names), fc.array(word, { maxLength: 6 }), async (name, words) => {
      fc.pre(!words.includes("--scale"));
      const { code, out, err } = await runCli(name, ...words);
      expect({ words, err, code }).toMatchObject({ code: expect.toBeOneOf([0, 1, 2]) });
      if (code !== 0) expect(err.trim()).not.toBe("");
      expect(err).not.toMatch(/^\s+at .*:\d+/m);
      if (code === 2) expect(out).toBe("");
    }),
    { numRuns: 400, seed: seedOf(9) },
  );
});

test("no text in place of a command makes it fail either", async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ maxLength: 20 }), async (text) => {
      fc.pre(!["help", "--help", ...COMMANDS.map(({ name }) => name)].includes(text));
      expect((await runCli(text)).code).toBe(2);
    }),
    { numRuns: 50, seed: seedOf(10) },
  );
});
