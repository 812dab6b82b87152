import { expect, test } from "vitest";
import type { Drawing } from "../../core/drawing/list/drawing.ts";
import { drawArea, drawLine, drawText } from "../../core/drawing/list/items.ts";
import { circleContour, rectangleContour, straightContour } from "../../core/geometry/contourShapes.ts";
import { svgText } from "./svgText.ts";

const drawing: Drawing = {
  box: { minX: 10, minY: 20, maxX: 110, maxY: 70 },
  items: [
    drawArea("piece", [rectangleContour(10, 20, 40, 30)]),
    drawLine("cut", rectangleContour(10, 20, 40, 30)),
    drawLine("fold", straightContour([10, 35, 50, 35])),
    drawLine("cut", circleContour(80, 45, 12.5)),
    drawText("Flap <1> & “two”", 12, 22, 5),
  ],
};

test("size in mm and viewBox carry the same numbers and coordinates are final", () => {
  const svg = svgText(drawing, { title: "Lay" });
  expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
  expect(svg).not.toContain("transform");
  expect(svg).toContain('<path d="M0 50L40 50L40 20L0 20Z"/>');
  expect(svg).toContain('<path d="M0 35L40 35"/>');
});

test("arcs stay arcs, turned the right way", () => {
  const svg = svgText(drawing);
  // Counter-clockwise from the left: with y down the first half runs through larger y, sweep flag 0.
  expect(svg).toContain("M57.5 25A12.5 12.5 0 0 0 82.5 25A12.5 12.5 0 0 0 57.5 25Z");
});

test("text is escaped and never in the cut group", () => {
  const svg = svgText(drawing);
  expect(svg).toContain(">Flap &lt;1&gt; &amp; “two”</text>");
  const cut = svg.slice(svg.indexOf('<g id="cut"'));
  expect(cut).not.toContain("<text");
});

test("roles and areas can be left out", () => {
  const svg = svgText(drawing, { roles: ["cut"], areas: false });
  expect(svg.match(/<g id="[^"]+"/gu)).toEqual(['<g id="cut"']);
});

test("no exponent and no −0 in the numbers", () => {
  const tiny = { ...drawing, items: [drawLine("cut", straightContour([10.00000001, 70, 10.0005, 70]))] };
  expect(svgText(tiny)).toContain('d="M0 0L0.0005 0"');
});

test("a drawing with a coordinate that is no number is our bug", () => {
  const bad = { ...drawing, items: [drawLine("cut", straightContour([Number.NaN, 0, 1, 1]))] };
  expect(() => svgText(bad)).toThrow(RangeError);
});

const group = (svg: string) => svg.match(/<g id="[^"]+"/gu);

test("areas come first, the cloth's pattern after them by itself, then the roles in their order, each with its look", () => {
  const items = [
    drawLine("fold", straightContour([10, 35, 50, 35])),
    drawArea("pattern", [rectangleContour(10, 20, 4, 4)]),
    drawLine("cut", rectangleContour(10, 20, 40, 30)),
    drawArea("flaw", [rectangleContour(20, 30, 4, 4), rectangleContour(21, 31, 1, 1)]),
  ];
  const svg = svgText({ ...drawing, items });
  expect(group(svg)).toEqual(['<g id="areas"', '<g id="pattern"', '<g id="fold"', '<g id="cut"']);
  expect(svg).toContain(
    '<g id="areas" stroke="none" fill-rule="evenodd">\n<path fill="#ecc9c1" d="M10 40L14 40L14 36L10 36ZM11 39L12 39L12 38L11 38Z"/>\n</g>',
  );
  expect(svg).toContain('<g id="cut" fill="none" stroke="#000000" stroke-width="0.35" stroke-linejoin="round">');
  expect(svg).toContain(
    '<g id="fold" fill="none" stroke="#8a4b12" stroke-width="0.25" stroke-dasharray="8 2 1.5 2" stroke-linejoin="round">',
  );
  expect(svg).not.toContain("<title>");
  expect(group(svgText({ ...drawing, items: [items[1]!] }))).toEqual(['<g id="pattern"']);
  expect(group(svgText({ ...drawing, items: [] }))).toBeNull();
});

test("roles of one layer share its group, which stands where the last of them does", () => {
  const items = [
    drawLine("cut", rectangleContour(10, 20, 40, 30)),
    drawLine("fold", straightContour([10, 35, 50, 35])),
    drawLine("stitch", straightContour([10, 36, 50, 36])),
  ];
  const svg = svgText({ ...drawing, items }, { layers: { cut: "pen", stitch: "pen" } });
  expect(group(svg)).toEqual(['<g id="fold"', '<g id="pen"']);
  expect(svg.slice(svg.indexOf('<g id="pen">')).match(/<g /gu)).toHaveLength(3);
  expect(group(svgText({ ...drawing, items }, { layers: { cut: "pen", tape: "pen" } }))).toEqual([
    '<g id="stitch"',
    '<g id="fold"',
    '<g id="pen"',
  ]);
});

test("large arcs and arcs the other way have their flags (SVG 2, 9.3.8)", () => {
  const arc = (bulge: number) => {
    const contour = { vertices: Float64Array.of(20, 30, bulge, 40, 30, 0), closed: false };
    return /A(\S+) \S+ 0 (\d) (\d) (\S+ \S+)"/u
      .exec(svgText({ ...drawing, items: [drawLine("cut", contour)] }))!
      .slice(1);
  };
  expect(arc(1)).toEqual(["10", "0", "0", "30 40"]);
  expect(arc(-1)).toEqual(["10", "0", "1", "30 40"]);
  expect(arc(2)).toEqual(["12.5", "1", "0", "30 40"]);
  expect(arc(-2)).toEqual(["12.5", "1", "1", "30 40"]);
  expect(arc(0.5)).toEqual(["12.5", "0", "0", "30 40"]);
});

test("a closed contour ends without going back along its last line, one that ends in an arc goes all round", () => {
  const data = (contour: Parameters<typeof drawLine>[1]) =>
    / d="([^"]*)"/u.exec(svgText({ ...drawing, items: [drawLine("cut", contour)] }))![1];
  expect(data({ vertices: Float64Array.of(10, 70, 0, 30, 70, 1), closed: true })).toBe(
    "M0 0L20 0A10 10 0 0 0 0 0Z",
  );
  expect(data({ vertices: Float64Array.of(10, 70, 1, 30, 70, 0), closed: true })).toBe("M0 0A10 10 0 0 0 20 0Z");
  expect(data({ vertices: new Float64Array(0), closed: true })).toBe("");
});

test("letters stand where they are, bold and anchored as they are, or as the strokes that are given for them", () => {
  const words = [
    drawText("a", 60, 45, 5, { anchor: "middle", bold: true }),
    drawText("b", 60, 45, 5, { anchor: "end", tone: "shade" }),
    drawText("c", 60, 45, 5),
  ];
  const all = svgText({ ...drawing, items: words }).match(/<text[^>]*>/gu)!;
  expect(all[0]).toMatch(/x="50" y="25" .* font-size="5" font-weight="bold" text-anchor="middle" fill="#1d1a16"/u);
  expect(all[1]).toMatch(/font-size="5" text-anchor="end" fill="#ece8e1"/u);
  expect(all[2]).toMatch(/font-size="5" fill="#1d1a16"/u);
  const strokes = [
    { kind: "M", points: [60, 45] },
    { kind: "Q", points: [61, 46, 62, 45] },
    { kind: "Z", points: [] },
  ] as const;
  const drawn = svgText(
    { ...drawing, items: words },
    { outlineText: ({ text }) => (text === "a" ? strokes : null) },
  );
  expect(drawn).toContain('<path fill="#1d1a16" stroke="none" d="M50 25Q51 24 52 25Z"/>');
  expect(drawn.match(/<text/gu)).toHaveLength(2);
});

test("words that would end a tag or are no characters of XML are escaped", () => {
  const items = [drawText('"a" \ufffe', 12, 22, 5)];
  expect(svgText({ ...drawing, items }, { title: "a < b & c" })).toContain("<title>a &lt; b &amp; c</title>");
  expect(svgText({ ...drawing, items })).toContain(">&quot;a&quot; \ufffd</text>");
});
