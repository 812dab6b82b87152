import { expect, test } from "vitest";
import { rectangleContour, segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import { signedArea, solid } from "../../geometry/ring.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import { pieceArt } from "./pieceArt.ts";

const triangle = [0, 0, 100, 0, 0, 50];
const piece: CutPiece = {
  id: "gusset",
  name: "Gusset",
  partId: "gusset",
  materialId: "canvas",
  kind: "panel",
  contour: straightContour(triangle, true),
  outline: solid(Float64Array.from(triangle)),
  lines: [{ role: "fold", contour: segmentContour(10, 0, 10, 45) }],
  count: 2,
  mirroredCount: 1,
  grain: "lengthwise",
};

test("mirror images are drawn as pieces of their own, back in the first quadrant", () => {
  const art = pieceArt([piece], "cm");
  expect([...art.keys()]).toEqual(["gusset", "gusset~mirrored"]);
  const mirrored = art.get("gusset~mirrored")!;
  expect([mirrored.name, mirrored.count, mirrored.detail]).toEqual(["Gusset, mirrored", 1, "10 cm × 5 cm"]);
  expect(signedArea(mirrored.outline.outer)).toBe(2500);
  // Across its grain arrow: what stood x along it still does.
  expect([...mirrored.lines[0]!.contour.vertices]).toEqual([10, 50, -0, 10, 5, -0]);
  const corners = mirrored.contour.vertices.filter((_, i) => i % 3 < 2);
  expect([0, 2, 4].map((i) => `${corners[i]} ${corners[i + 1]}`).sort()).toEqual(["0 0", "0 50", "100 50"]);
});

test("a copy on several layers cannot say which one of how many it is: all it counts is itself", () => {
  const layers = { ...piece, mirroredCount: 0, count: 6, spread: "layers" } as const;
  expect(pieceArt([layers], "mm").get("gusset")!.count).toBe(1);
  expect(pieceArt([{ ...piece, mirroredCount: 0, count: 6 }], "mm").get("gusset")!.count).toBe(6);
});

test("only a half that lies on the fold is cut along an open line: not along the fold", () => {
  expect(pieceArt([piece], "mm").get("gusset")).not.toHaveProperty("cutLine");
  const half = pieceArt([{ ...piece, foldEdge: true, mirroredCount: 0 }], "mm").get("gusset")!;
  expect(half.cutLine).toEqual({ ...half.contour, closed: false });
});

// From memory: an arc's chord leaves it by r(1 − cos(½ angle)).
test("lines and outlines of more than 400 corners are drawn with fewer, none more than 5 thousandths off", () => {
  const ring = (corners: number) =>
    Array.from({ length: 2 * corners }, (_, i) => {
      const a = (Math.PI * (i - (i % 2))) / corners;
      return 30 + 30 * (i % 2 === 0 ? Math.cos(a) : Math.sin(a));
    });
  const artOf = (corners: number) => {
    const points = ring(corners);
    const round = { ...piece, contour: straightContour(points, true), outline: solid(Float64Array.from(points)) };
    return pieceArt([{ ...round, mirroredCount: 0, lines: [] }], "mm").get("gusset")!;
  };
  const exact = artOf(400);
  expect([exact.contour.vertices.length, exact.outline.outer.length]).toEqual([1200, 800]);
  const many = artOf(401);
  const fine = artOf(6000);
  for (const { contour, outline } of [many, fine]) {
    const left = contour.vertices.length / 3;
    expect(left).toBeLessThan(401);
    expect(outline.outer.length / 2).toBe(left);
    const widest = Math.max(
      ...Array.from({ length: left }, (_, i) => {
        const j = (i + 1) % left;
        const [ax, ay] = [contour.vertices[3 * i]! - 30, contour.vertices[3 * i + 1]! - 30];
        const [bx, by] = [contour.vertices[3 * j]! - 30, contour.vertices[3 * j + 1]! - 30];
        return 30 - Math.hypot((ax + bx) / 2, (ay + by) / 2);
      }),
    );
    expect(widest).toBeLessThan(0.0051 + 0.0001);
    expect(signedArea(outline.outer) / (Math.PI * 900)).toBeCloseTo(1, 3);
  }
});

test("a piece without mirror images is one piece", () => {
  const plain = { ...piece, contour: rectangleContour(0, 0, 30, 20), mirroredCount: 0 };
  expect([...pieceArt([plain], "mm").keys()]).toEqual(["gusset"]);
  // As large as it is, wherever it is drawn.
  const away = { ...plain, contour: rectangleContour(7, 5, 30, 20) };
  expect(pieceArt([away], "mm").get("gusset")!.detail).toBe("30 mm × 20 mm");
});
