// Draws the straps of the docs with the command line: npx tsx tests/tools/strapDocPictures.ts
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { runCli } from "./runCli.ts";

const docs = fileURLToPath(new URL("../../docs/", import.meta.url));

const VINYL = "--length 60cm --thickness 1mm --material vinyl";
const CANVAS = "--length 60cm --thickness 0.7mm --material canvas";
const CLEARANCE = `--construction fourfold --width 1-1/4in ${VINYL}`;

/** Each picture, and the options of `strap` it is drawn with. */
const PICTURES: Readonly<Record<string, string>> = {
  "reference/pictures/fourfold.svg": `--construction fourfold --width 25mm ${VINYL}`,
  "reference/pictures/three-raw.svg": `--construction three-raw --width 25mm ${VINYL}`,
  "reference/pictures/three-hemmed.svg": `--construction three-hemmed --width 30mm ${CANVAS} --padding 4mm`,
  "reference/pictures/two-layer.svg": `--construction two-layer --width 30mm ${VINYL} --facing canvas --facing-thickness 0.7mm`,
  "reference/pictures/sewn-turned.svg": `--construction sewn-turned --width 30mm ${CANVAS} --facing cotton --facing-thickness 0.3mm`,
  "reference/pictures/tube.svg": `--construction tube --width 20mm ${CANVAS}`,
  "reference/pictures/bonded.svg": `--construction bonded --width 25mm --length 60cm --thickness 1.6mm --material leather --facing leather --facing-thickness 1.2mm --layers 2`,
  "reference/pictures/webbing-overlay.svg": `--construction webbing-overlay --webbing 38mmx2mm ${CANVAS}`,
  "reference/pictures/webbing-sleeve.svg": `--construction webbing-sleeve --webbing 25mmx2mm --length 60cm --thickness 0.5mm --material canvas`,
  "reference/pictures/corded.svg": `--construction corded --cord 10mm --length 60cm --thickness 1.6mm --material leather`,
  "reference/pictures/tab.svg": `--construction tab --width 25mm --length 3in --thickness 0.7mm --material canvas`,
  "explanation/pictures/fourfold-halfway.svg": CLEARANCE,
  "explanation/pictures/fourfold-crushed.svg": `${CLEARANCE} --clearance 0`,
  "explanation/pictures/fourfold-square.svg": `${CLEARANCE} --clearance 1`,
  "explanation/pictures/fourfold-soft.svg": `${CLEARANCE} --crease soft`,
  "explanation/pictures/three-from-3-in.svg":
    "--construction three-raw --cut-width 3in --length 60cm --thickness 0.95mm --material vinyl",
};
/** The flat strip is a picture of `--out`. */
const FLAT = "explanation/pictures/fourfold-strip.svg";

/** Path below `docs` and text of every picture. */
export async function strapDocPictures(): Promise<readonly (readonly [string, string])[]> {
  const folder = mkdtempSync(join(tmpdir(), "strap-pictures-"));
  try {
    const made: [string, string][] = [];
    for (const [name, options] of Object.entries(PICTURES)) {
      const file = join(folder, "picture.svg");
      const { code, err } = await runCli("strap", ...options.split(" "), "--picture", file);
      if (code !== 0) throw new Error(`${name}: ${err}`);
      made.push([name, readFileSync(file, "utf8")]);
    }
    const out = join(folder, "out");
    const { code, err } = await runCli("strap", ...CLEARANCE.split(" "), "--out", out);
    const strip = readdirSync(out).find((name) => name.includes("outer"));
    if (code !== 0 || strip === undefined) throw new Error(`${FLAT}: ${err} ${readdirSync(out).join()}`);
    return [...made, [FLAT, readFileSync(join(out, strip), "utf8")]];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (process.argv[1]?.endsWith("strapDocPictures.ts"))
  for (const [name, text] of await strapDocPictures()) writeFileSync(join(docs, name), text);
