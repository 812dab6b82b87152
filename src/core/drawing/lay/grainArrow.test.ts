import { expect, test } from "vitest";
import { sampleMaterial } from "../../../../tests/tools/sampleMaterial.ts";
import { allowedTurns } from "../../materials/orientations.ts";
import { grainArrow } from "./pieceArt.ts";

test.each([
  ["lengthwise", false, "both"],
  ["lengthwise", "free", "one-way"],
  ["free", false, "none"],
  // Its pieces keep one way up, so the arrow has to be seen.
  ["free", "up", "one-way"],
] as const)("cloth of %s grain, one-way %s, shows the arrow that its pieces keep to", (grain, oneWay, arrow) => {
  const material = sampleMaterial("cloth", { grain, oneWay });
  expect(grainArrow(material)).toBe(arrow);
  expect(allowedTurns("free", material)?.freeTurn).toBe(arrow === "none");
});
