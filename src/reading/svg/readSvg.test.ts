import { expect, test } from "vitest";
import { curveArea, curveBox } from "../../core/patterns/measureCurve.ts";
import type { PatternDrawing } from "../../core/patterns/patternDrawing.ts";
import { readSvg } from "./readSvg.ts";

const MM = 'width="200mm" height="100mm" viewBox="0 0 200 100"';

function svg(inside: string, head = MM): PatternDrawing {
  return readSvg(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inside}</svg>`);
}

/** Box and area of each line, rounded to 1 nm. */
function boxes(drawing: PatternDrawing): number[][] {
  const round = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;
  return drawing.lines.map(({ curve }) => {
    const { minX, minY, maxX, maxY } = curveBox(curve);
    return [minX, minY, maxX, maxY, curve.closed ? Math.abs(curveArea(curve)) : 0].map(round);
  });
}

test("every shape lies where it is drawn, y up", () => {
  expect(
    boxes(
      svg(`<rect x="10" y="10" width="80" height="40"/><circle cx="50" cy="50" r="10"/><ellipse cx="50" cy="50" rx="20" ry="5"/>
        <line x1="1" y1="2" x2="3" y2="4" stroke="red"/><polyline points="0,0 10,0 10-10" fill="none" stroke="red"/>
        <polygon points="0 0 10 0 10 10"/><path d="M0 0H10V10Z"/>`),
    ),
  ).toEqual([
    [10, 50, 90, 90, 3200],
    [40, 40, 60, 60, 314.159265],
    [30, 45, 70, 55, 314.159265],
    [1, 96, 3, 98, 0],
    [0, 100, 10, 110, 0],
    [0, 90, 10, 100, 50],
    [0, 90, 10, 100, 50],
  ]);
});

test("round corners follow one another and are held to half a side", () => {
  // Area of a rectangle with elliptic corners: w h − (4 − π) rx ry.
  const rect = (radii: string): number => boxes(svg(`<rect width="20" height="10" ${radii}/>`))[0]![4]!;
  const area = (rx: number, ry: number): number => 200 - (4 - Math.PI) * rx * ry;
  expect(rect('rx="2"')).toBeCloseTo(area(2, 2), 5);
  expect(rect('ry="3"')).toBeCloseTo(area(3, 3), 5);
  expect(rect('rx="2" ry="4"')).toBeCloseTo(area(2, 4), 5);
  expect(rect('rx="50"')).toBeCloseTo(area(10, 5), 5);
  expect(rect('rx="auto" ry="1"')).toBeCloseTo(area(1, 1), 5);
  expect(rect('rx="0" ry="4"')).toBe(200);
});

// Factors: CSS Values and Units 4, 5.2.
test.each([
  ["10mm", 10],
  ["1cm", 10],
  ["1in", 25.4],
  ["72pt", 25.4],
  ["6pc", 25.4],
  ["40Q", 10],
  ["96px", 25.4],
  ["96", 25.4],
  ["50%", 100],
  ["1em", 25.4 / 6],
])("a width of %s is %d mm", (width, mm) => {
  const [box] = boxes(svg(`<rect width="${width}" height="10"/>`, 'width="200mm" height="100mm"'));
  expect(box![2]).toBeCloseTo(mm, 5);
});

test("a viewBox is put on its page as preserveAspectRatio says", () => {
  const drawn = (aspect: string, head = 'width="200mm" height="100mm"'): number[] =>
    boxes(svg('<rect width="10" height="10"/>', `${head} viewBox="0 0 10 10" ${aspect}`))[0]!.slice(0, 4);
  expect(drawn("")).toEqual([50, 0, 150, 100]);
  expect(drawn('preserveAspectRatio="xMinYMin meet"')).toEqual([0, 0, 100, 100]);
  expect(drawn('preserveAspectRatio="xMaxYMax"')).toEqual([100, 0, 200, 100]);
  expect(drawn('preserveAspectRatio="xMidYMin slice"')).toEqual([0, -100, 200, 100]);
  expect(drawn('preserveAspectRatio="none"')).toEqual([0, 0, 200, 100]);
  expect(drawn("", 'width="200mm"')).toEqual([0, 0, 200, 200]);
  expect(
    boxes(svg('<rect x="-5" y="-5" width="1" height="1"/>', 'width="20mm" height="20mm" viewBox="-5 -5 10 10"')),
  ).toEqual([[0, 18, 2, 20, 4]]);
});

test("a file that states no unit counts 96 px to the inch and is told", () => {
  for (const head of [
    'width="96" height="96"',
    'viewBox="0 0 96 96"',
    'width="96px" height="96px"',
    'width="100%" viewBox="0 0 96 96"',
  ]) {
    const drawing = svg('<rect width="96" height="96"/>', head);
    expect(boxes(drawing)[0]!.slice(0, 4), head).toEqual([0, 0, 25.4, 25.4]);
    expect(
      drawing.problems.map(({ code }) => code),
      head,
    ).toEqual(["pattern-unit-assumed"]);
  }
  expect(svg('<rect width="96" height="96"/>').problems).toEqual([]);
});

test("transforms nest, the innermost first", () => {
  const at = (transform: string): number[] =>
    boxes(svg(`<g transform="${transform}"><rect width="10" height="20"/></g>`))[0]!;
  expect(at("translate(5,7)").slice(0, 4)).toEqual([5, 73, 15, 93]);
  expect(at("translate(5) scale(2)").slice(0, 4)).toEqual([5, 60, 25, 100]);
  expect(at("rotate(90)").slice(0, 4)).toEqual([-20, 90, 0, 100]);
  expect(at("rotate(90 10,20)").slice(0, 4)).toEqual([10, 80, 30, 90]);
  expect(at("rotate(90,10,20)").slice(0, 4)).toEqual([10, 80, 30, 90]);
  expect(at("skewX(45)")).toEqual([0, 80, 30, 100, 200]);
  expect(at("skewY(45)")).toEqual([0, 70, 10, 100, 200]);
  expect(at("matrix(0 1 -1 0 30 40)").slice(0, 4)).toEqual([10, 50, 30, 60]);
  expect(at("scale(-1,1)").slice(0, 4)).toEqual([-10, 80, 0, 100]);
  expect(at("translate(1 1),scale(2)\n rotate(0)").slice(0, 4)).toEqual([1, 59, 21, 99]);
  expect(
    boxes(
      svg(
        '<g style="transform: translate(5mm, 0) rotate(0.25turn)"><rect width="10" height="20"/></g>',
        'width="200mm" height="100mm"',
      ),
    )[0]![2],
  ).toBeCloseTo(5, 6);
  const circle = svg('<circle r="5" transform="scale(2 1) rotate(30)"/>').lines[0]!.curve;
  expect(Math.abs(curveArea(circle))).toBeCloseTo(50 * Math.PI, 9);
});

test("what is only defined is drawn where it is used", () => {
  const drawing =
    svg(`<defs><g id="pair"><rect id="a" width="10" height="10"/><rect x="20" width="10" height="10"/></g>
      <symbol id="round" viewBox="0 0 10 10"><circle cx="5" cy="5" r="5"/></symbol>
      <clipPath id="clip"><rect width="1" height="1"/></clipPath><pattern id="p"><rect width="2" height="2"/></pattern></defs>
    <symbol id="unused"><rect width="3" height="3"/></symbol><marker id="m"><path d="M0 0H4V4Z"/></marker>
    <use href="#pair" x="5" y="5"/><use href="#pair" transform="scale(2)" x="5"/>
    <use href="#round" x="100" y="10" width="40" height="20"/><use href="#nothing"/>
    <g clip-path="url(#clip)"><rect x="150" width="10" height="10"/></g>`);
  expect(boxes(drawing).map((box) => box.slice(0, 4))).toEqual([
    [5, 85, 15, 95],
    [25, 85, 35, 95],
    [10, 80, 30, 100],
    [50, 80, 70, 100],
    [110, 70, 130, 90],
    [150, 90, 160, 100],
  ]);
});

test("a nested svg has a place, a size and a viewBox of its own", () => {
  const inner = '<rect width="10" height="10"/><rect width="50%" height="50%"/>';
  expect(
    boxes(svg(`<svg x="20" y="10" width="40" height="40" viewBox="0 0 20 20">${inner}</svg>`)).map((box) =>
      box.slice(0, 4),
    ),
  ).toEqual([
    [20, 70, 40, 90],
    [20, 70, 40, 90],
  ]);
  expect(boxes(svg(`<svg x="20" y="10">${inner}</svg>`))[0]!.slice(0, 4)).toEqual([20, 80, 30, 90]);
});

test("what is hidden is not there, and told", () => {
  const drawing =
    svg(`<style>.off { display: none } g.ghost path { visibility: hidden } @media print { rect { display: none } }</style>
    <rect class="off" width="1" height="1"/><g display="none"><rect width="1" height="1"/></g>
    <g class="ghost"><path d="M0 0H5V5Z"/><path d="M0 0H6V6Z" style="visibility: visible"/></g>
    <g style="opacity: 0"><rect width="1" height="1"/></g><rect opacity="0%" width="1" height="1"/>
    <rect fill="none" width="1" height="1"/><rect fill="none" stroke="red" stroke-width="0" width="1" height="1"/>
    <rect fill="transparent" stroke="#0000" width="1" height="1"/>
    <g visibility="hidden"><rect width="1" height="1"/><g visibility="visible"><rect width="7" height="7"/></g></g>
    <line x2="4" y2="4"/>`);
  expect(boxes(drawing).map((box) => box[4])).toEqual([18, 49]);
  expect(drawing.problems).toEqual([{ code: "pattern-left-out", path: "", thing: "hidden", count: 10 }]);
});

test("colours, dashes and layers come from attributes, sheets and style, the stronger one counts", () => {
  const drawing = readSvg(`<svg ${MM} xmlns:inkscape="urn:x">
    <style><![CDATA[ path { stroke: #0f0 } .cut, #two { stroke: red; } #two { stroke: blue !important } g > path.deep { stroke: rgb(10%, 20, 30) } ]]></style>
    <g inkscape:label="Outer shell" id="layer1" stroke-dasharray="2 1">
      <path d="M0 0H9V9Z"/><path class="cut" stroke="yellow" d="M0 0H9V9Z"/>
      <path id="two" style="stroke: black" d="M0 0H9V9Z"/><g transform="scale(2)"><path class="deep" d="M0 0H9V9Z" stroke-dasharray="3"/></g>
      <path inkscape:label="Flap" style="stroke:none; fill: Teal" d="M0 0H9V9Z"/></g></svg>`);
  expect(drawing.lines.map(({ color }) => color)).toEqual(["#00ff00", "#ff0000", "#0000ff", "#1a141e", "#008080"]);
  expect(drawing.lines.map(({ dash }) => dash)).toEqual([[2, 1], [2, 1], [2, 1], [6, 6], []]);
  expect(drawing.lines.map(({ name, layer }) => [name, layer])).toEqual([
    ["Outer shell", "Outer shell"],
    ["Outer shell", "Outer shell"],
    ["two", "Outer shell"],
    ["Outer shell", "Outer shell"],
    ["Flap", "Outer shell"],
  ]);
});

test("prefixes, namespaces of others and entities for namespaces are taken as they are meant", () => {
  const drawing =
    readSvg(`<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://nowhere.invalid/svg.dtd" [
    <!ENTITY ns_svg "http://www.w3.org/2000/svg">]>
    <s:svg xmlns:s="&ns_svg;" xmlns:o="urn:other" ${MM}><o:rect width="1" height="1"/><s:rect width="9" height="9"/></s:svg>`);
  expect(boxes(drawing).map((box) => box[4])).toEqual([81]);
});

test("texts are marks; pictures and scripts are left out and told", () => {
  const drawing = svg(`<text x="10" y="20">Cut <tspan>2</tspan> </text><image href="http://nowhere.invalid/a.png"/>
    <script>throw 1</script><use href="other.svg#a"/><switch><foreignObject/><rect width="3" height="3"/></switch>`);
  expect(drawing.marks).toEqual([{ kind: "text", x: 10, y: 80, text: "Cut 2", layer: "" }]);
  expect(drawing.lines).toHaveLength(1);
  expect(drawing.problems.map((problem) => "thing" in problem && problem.thing)).toEqual([
    "picture",
    "script",
    "outside-reference",
  ]);
});

test("a white ground of the whole page is no piece, a drawn or coloured one is", () => {
  const page = '<rect width="200" height="100"';
  expect(svg(`${page} fill="white"/><rect x="9" y="9" width="5" height="5"/>`).lines).toHaveLength(1);
  expect(svg(`${page} fill="#fff" stroke="black"/>`).lines).toHaveLength(1);
  expect(svg(`${page}/>`).lines).toHaveLength(1);
  expect(svg('<rect width="100" height="100" fill="white"/>').lines).toHaveLength(1);
});
