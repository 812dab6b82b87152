import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { SHAPE_IDS, SHAPES } from "../../src/core/panels/shapes/registry.ts";
import { PANEL_WORDS } from "../../src/core/words/words.ts";
import { shapePictureFiles } from "../tools/shapePictures.ts";

const folder = new URL("../../docs/reference/pictures/shapes/", import.meta.url);
const page = readFileSync(new URL("../../docs/reference/shapes.md", import.meta.url), "utf8");

test("the pictures of the shapes are up to date (npx tsx tests/tools/shapePictures.ts)", () => {
  const files = shapePictureFiles();
  expect(readdirSync(folder).sort()).toEqual(files.map(([name]) => name).sort());
  for (const [name, text] of files) expect(readFileSync(new URL(name, folder), "utf8"), name).toBe(text);
});

test("a picture names each dimension that must be given, and the page of shapes has all of them", () => {
  for (const [name, text] of shapePictureFiles()) {
    const id = name.replace(".svg", "") as keyof typeof SHAPES;
    for (const { id: dimension, otherwise, isCount } of SHAPES[id].dimensions) {
      const isShown =
        otherwise === undefined && isCount === undefined && !(id === "rounded" && dimension === "radius");
      if (isShown) expect(text, `${id}: ${dimension}`).toContain(PANEL_WORDS.en.dimensions[dimension]);
      expect(page, `${id}: ${dimension}`).toContain(`\`${dimension}\``);
    }
  }
  for (const id of SHAPE_IDS) expect(page).toContain(`pictures/shapes/${id}.svg`);
});
