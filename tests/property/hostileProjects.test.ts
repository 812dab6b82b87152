import { expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";

// Random projects of hostile sizes that broke something once. The command checks every plan itself and ends with 3
// when one is at fault.
test.each(["large-flaws", "toothed-flaws"])("%s: laid round its flaws", async (name) => {
  const { code, err } = await runCli("lay", `fixtures/hostile/${name}.json`, "--effort", "0.02");
  expect(err).toBe("");
  expect(code).toBe(0);
});
