// Writes the picture of every shape for the docs: npx tsx tests/tools/shapePictures.ts
import { mkdirSync, writeFileSync } from "node:fs";
import { shapePicture } from "../../src/core/drawing/panel/shapePicture.ts";
import { SHAPE_IDS } from "../../src/core/panels/shapes/registry.ts";
import { PANEL_WORDS } from "../../src/core/words/words.ts";
import { svgText } from "../../src/export/svg/svgText.ts";

const folder = new URL("../../docs/reference/pictures/shapes/", import.meta.url);

/** Name and text of every picture. */
export function shapePictureFiles(): readonly (readonly [string, string])[] {
  return SHAPE_IDS.map((id) => {
    const drawing = shapePicture(id, PANEL_WORDS.en);
    if (drawing === null) throw new Error(`${id}: its usual sizes do not go together`);
    return [`${id}.svg`, svgText(drawing, { title: PANEL_WORDS.en.shapes[id] })] as const;
  });
}

if (process.argv[1]?.endsWith("shapePictures.ts")) {
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of shapePictureFiles()) writeFileSync(new URL(name, folder), text);
}
