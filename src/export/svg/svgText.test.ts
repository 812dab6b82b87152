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
