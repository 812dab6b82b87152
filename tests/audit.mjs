// `npm run audit`: known holes in what is shipped, of high severity or worse, fail the check. A registry that keeps no
// list of them (a mirror, often) cannot be asked: that is said aloud and is no fault of the code.
import { spawnSync } from "node:child_process";

const { stdout, stderr } = spawnSync("npm", ["audit", "--omit=dev", "--audit-level=high", "--json"], {
  encoding: "utf8",
});
let told;
try {
  told = JSON.parse(stdout);
} catch {
  console.error(`audit: npm said nothing that can be read: ${stderr.trim() || stdout.trim()}`);
  process.exit(1);
}
const counts = told.metadata?.vulnerabilities;
if (counts === undefined) {
  // 404 and 405 are a registry's way to say that it has no such service; anything else is worth a look.
  const isNoService = [404, 405].includes(told.statusCode);
  console.error(`audit: NOT CHECKED, the registry answered: ${told.message ?? JSON.stringify(told.error)}`);
  process.exit(isNoService ? 0 : 1);
}
const grave = counts.high + counts.critical;
console.log(`audit: ${grave} holes of high severity or worse in ${told.metadata.dependencies.prod} packages`);
process.exit(grave > 0 ? 1 : 0);
