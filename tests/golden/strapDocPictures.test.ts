import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { strapDocPictures } from "../tools/strapDocPictures.ts";

const docs = new URL("../../docs/", import.meta.url);

test("the pictures of straps in the docs are up to date (npx tsx tests/tools/strapDocPictures.ts)", async () => {
  const files = await strapDocPictures();
  for (const folder of ["reference/pictures", "explanation/pictures"]) {
    const there = readdirSync(new URL(folder, docs))
      .filter((name) => name.endsWith(".svg"))
      .map((name) => `${folder}/${name}`);
    expect(there.sort()).toEqual(
      files
        .map(([name]) => name)
        .filter((name) => name.startsWith(folder))
        .sort(),
    );
  }
  for (const [name, text] of files) expect(readFileSync(new URL(name, docs), "utf8"), name).toBe(text);
});
