import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { expect, test } from "vitest";
import { freshFolder } from "../tools/programs.ts";

interface Rule {
  readonly name: string;
  readonly from: { readonly path?: string };
  readonly to: { readonly path?: string };
}

/** A file that breaks a rule, and what it imports: a file of the house, or a package. */
interface Plant {
  readonly file: string;
  readonly imports: string;
}

const CORE = "src/core";

/** Rules with more to them than one folder below another. */
const PLANTS: Readonly<Record<string, readonly Plant[]>> = {
  "words-know-shapes-only": [{ file: `${CORE}/words/planted.ts`, imports: `${CORE}/materials/caution.ts` }],
  "lay-folders-without-circles": [
    { file: `${CORE}/lay/search/hall/plantedA.ts`, imports: `${CORE}/lay/search/yard/plantedB.ts` },
    { file: `${CORE}/lay/search/yard/plantedB.ts`, imports: "" },
    { file: `${CORE}/lay/search/yard/plantedC.ts`, imports: `${CORE}/lay/search/hall/plantedD.ts` },
    { file: `${CORE}/lay/search/hall/plantedD.ts`, imports: "" },
  ],
  "lay-checker-stands-apart": [{ file: `${CORE}/lay/check/planted.ts`, imports: `${CORE}/geometry/pose.ts` }],
  "lay-search-does-not-ask-the-checker": [
    { file: `${CORE}/lay/outlines/planted.ts`, imports: `${CORE}/lay/check/checkPlan.ts` },
  ],
  "core-is-pure": [{ file: `${CORE}/units/plantedHost.ts`, imports: "src/cli/main.ts" }],
  "core-no-node": [{ file: `${CORE}/units/plantedNode.ts`, imports: "node:fs" }],
  "export-reads-drawing": [{ file: "src/export/svg/plantedHost.ts", imports: "src/cli/main.ts" }],
  "export-adapters-apart": [{ file: "src/export/svg/planted.ts", imports: "src/export/dxf" }],
  "readers-apart": [{ file: "src/reading/svg/planted.ts", imports: "src/reading/dxf" }],
  "worker-below-hosts": [{ file: "src/worker/planted.ts", imports: "src/cli/main.ts" }],
  "hosts-apart": [{ file: "src/web/planted.ts", imports: "src/cli/main.ts" }],
  "no-circular": [
    { file: `${CORE}/units/plantedRoundA.ts`, imports: `${CORE}/units/plantedRoundB.ts` },
    { file: `${CORE}/units/plantedRoundB.ts`, imports: `${CORE}/units/plantedRoundA.ts` },
  ],
};

test("every rule of the layers reports a violation planted in a copy of the house", () => {
  const rules: readonly Rule[] = createRequire(import.meta.url)("../../.dependency-cruiser.cjs").forbidden;
  const copy = freshFolder();
  cpSync("src", join(copy, "src"), { recursive: true });
  cpSync("tsconfig.json", join(copy, "tsconfig.json"));
  cpSync(".tsconfig.base.json", join(copy, ".tsconfig.base.json"));
  symlinkSync(join(process.cwd(), "node_modules"), join(copy, "node_modules"));
  for (const [i, rule] of rules.entries())
    for (const { file, imports } of PLANTS[rule.name] ?? [plantFor(copy, rule, i)]) plant(copy, file, imports);
  const { status, stderr } = spawnSync("node", ["tests/layers.mjs", copy], { encoding: "utf8" });
  rmSync(copy, { recursive: true });
  const reported = new Set([...stderr.matchAll(/^error ([^:]+): (.*)$/gmu)].map(([, name]) => name));
  expect(status).toBe(1);
  expect(rules.map(({ name }) => name).filter((name) => !reported.has(name))).toEqual([]);
  expect(stderr.split("\n").filter((line) => line.startsWith("error ") && !/planted|circles/u.test(line))).toEqual(
    [],
  );
});

/** A violation of "this folder imports nothing of those", or of "this library lives behind one folder". */
function plantFor(copy: string, { from, to }: Rule, number: number): Plant {
  const library = /^\(node_modules\/((?:@[^/|]+\/)?[^/|]+)\/\|/u.exec(to.path ?? "")?.[1];
  if (library !== undefined)
    return {
      file: `${CORE}/units/planted${number}.ts`,
      imports: library === "@svgdotjs" ? "@svgdotjs/svg.js" : library,
    };
  const folder = /^\^(.*)\/$/u.exec(from.path ?? "")?.[1];
  const above = /^\^(.*)\/\(([^|)]+)/u.exec(to.path ?? "");
  if (folder === undefined || above === null) throw new RangeError("a rule without a violation to plant");
  if (!existsSync(join(copy, folder))) throw new RangeError(`a rule about ${folder}, which is not there`);
  return { file: `${folder}/planted${number}.ts`, imports: `${above[1]}/${above[2]}` };
}

function plant(copy: string, file: string, imports: string): void {
  const path = join(copy, file);
  mkdirSync(dirname(path), { recursive: true });
  const target = join(copy, imports);
  const isHouse = imports.startsWith("src/");
  const found = isHouse && existsSync(target) && !imports.endsWith(".ts") ? firstFile(target) : target;
  const named = isHouse ? relative(dirname(path), found) : imports;
  const line = imports === "" ? "" : `import "${named.startsWith(".") || !isHouse ? named : `./${named}`}";\n`;
  writeFileSync(path, `${line}export const planted = 1;\n`);
}

function firstFile(folder: string): string {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  return join(folder, files.find((file) => file.endsWith(".ts") && !/test|planted/u.test(file))!);
}
