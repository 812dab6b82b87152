// Holds the imports against the layers of the house, and fails when the tool saw no modules at all
// (it passes silently on a TypeScript it cannot read). `node tests/layers.mjs FOLDER` does so in another copy of it.
import { cruise } from "dependency-cruiser";
import extractConfig from "dependency-cruiser/config-utl/extract-depcruise-config";

process.chdir(process.argv[2] ?? ".");
const config = await extractConfig(new URL("../.dependency-cruiser.cjs", import.meta.url).pathname);
const { output } = await cruise(["src"], {
  ...config.options,
  ruleSet: config,
  validate: true,
  outputType: "json",
});
const { summary } = JSON.parse(output);
for (const { rule, from, to } of summary.violations)
  console.error(`${rule.severity} ${rule.name}: ${from} → ${to}`);
console.log(
  `layers: ${summary.totalCruised} modules, ${summary.totalDependenciesCruised} imports, ${summary.violations.length} violations`,
);
if (summary.totalCruised < 5) {
  console.error("layers: hardly any modules were seen; the check itself is broken");
  process.exit(1);
}
process.exit(summary.error > 0 ? 1 : 0);
