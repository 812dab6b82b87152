import { expect, test } from "vitest";
import { PIECES, sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { pieceArt } from "../lay/pieceArt.ts";
import { curvedSheet } from "./curvedSheet.ts";

test("curved pieces stay where they lie, rectangles are listed by number and size, and nothing of them is drawn", () => {
  const whole = sampleSheet();
  const { sheet, bySize } = curvedSheet(whole, pieceArt(PIECES, "mm"));
  expect(bySize).toEqual(["2 × Shoulder strap: 560 mm × 98 mm", "1 × Tab: 60 mm × 40 mm"]);
  expect(sheet.copies).toEqual(whole.copies.filter(({ pieceId }) => pieceId === "body" || pieceId === "flap"));
  const owners = new Set(sheet.drawing.items.flatMap(({ owner }) => owner ?? []));
  expect([...owners].sort()).toEqual(sheet.copies.map(({ key }) => key).sort());
  // The cloth belongs to no piece and stays.
  const cloth = (items: typeof whole.drawing.items) => items.filter(({ owner }) => owner === undefined);
  expect(cloth(sheet.drawing.items)).toEqual(cloth(whole.drawing.items));
});
