// `npx tsx tests/tools/outlinePictures.ts`: draws the pictures of docs/explanation/outline-search.md with the engine's
// own parts, so that a picture changes when the engine does.
import { mkdirSync, writeFileSync } from "node:fs";
import { ringBox } from "../../src/core/geometry/box.ts";
import { gridShape, noFitRings } from "../../src/core/geometry/noFit.ts";
import { posePolygon } from "../../src/core/geometry/pose.ts";
import { polygonArea, type Ring, solid } from "../../src/core/geometry/ring.ts";
import { addFeatureGrid, fillWhole, ringEdges } from "../../src/core/lay/outlines/noFit/featureGrid.ts";
import { emptyArena, HEAD } from "../../src/core/lay/outlines/noFit/gridArena.ts";
import { EDGE } from "../../src/core/lay/outlines/noFit/gridEdges.kernel.ts";
import { outlineEngine } from "../../src/core/lay/outlines/outlineEngine.ts";
import type { LayPiece } from "../../src/core/lay/problem/layProblem.ts";
import type { RegionJob, RegionPlan } from "../../src/core/lay/problem/region.ts";
import { inOneGo, nextTurn } from "../../src/core/lay/search/breath.ts";

const FOLDER = new URL("../../docs/explanation/outline-search/", import.meta.url);
const INK = "#2b2a33";
const FILLS = ["#f2c879", "#9cc5a1", "#d9a5b3", "#8fb8de", "#c9b6e4", "#e8a87c"];

const FLAP = [0, 0, 210, 0, 210, 60, 190, 100, 150, 125, 60, 125, 20, 100, 0, 60];
const GUSSET = [0, 0, 260, 0, 260, 70, 215, 70, 195, 40, 65, 40, 45, 70, 0, 70];
const POCKET = [0, 0, 120, 0, 130, 90, 65, 110, -10, 90];
const WING = [0, 0, 90, 0, 60, 60, 60, 120, 0, 120];
const TAB = [0, 0, 55, 0, 55, 30, 40, 42, 15, 42, 0, 30];

const format = (value: number): string => String(Math.round(value * 100) / 100);

/** SVG path data of rings, y flipped in a picture `height` high. */
function path(rings: readonly Ring[], height: number): string {
  return rings
    .map((ring) => {
      const points: string[] = [];
      for (let i = 0; i < ring.length; i += 2) points.push(`${format(ring[i]!)} ${format(height - ring[i + 1]!)}`);
      return `M${points.join("L")}Z`;
    })
    .join("");
}

function save(name: string, width: number, height: number, body: readonly string[]): void {
  const pixels = Math.round((900 * height) / width);
  const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${format(width)} ${format(height)}" width="900" height="${pixels}" font-family="sans-serif">`;
  writeFileSync(
    new URL(name, FOLDER),
    `${[head, `<rect width="100%" height="100%" fill="#fff"/>`, ...body, "</svg>"].join("\n")}\n`,
  );
}

const shift = (ring: Ring, x: number, y: number): Ring => ring.map((v, i) => v + (i % 2 === 0 ? x : y));
const drawn = (rings: readonly Ring[], height: number, style: string): string =>
  `<path d="${path(rings, height)}" fill-rule="evenodd" ${style}/>`;
const words = (text: string, x: number, y: number, size: number): string =>
  `<text x="${x}" y="${y}" font-size="${size}" fill="${INK}">${text}</text>`;

/** Two pieces, the second at three places, and the no-fit polygon its corner may not enter. */
function noFitPicture(): void {
  const a = gridShape(Float64Array.from(GUSSET), []);
  const b = gridShape(Float64Array.from(TAB), []);
  const height = 260;
  const rings = noFitRings(a, b).map((ring) => shift(ring, 110, 90));
  const body = [
    drawn(rings, height, `fill="#f6d9d5"`),
    drawn([shift(a.outer, 110, 90)], height, `fill="${FILLS[1]}" stroke="${INK}"`),
    drawn(rings, height, `fill="none" stroke="#b5483a" stroke-width="1.2" stroke-dasharray="5 3"`),
  ];
  for (const [x, y] of [
    [325, 20],
    [212, 130],
    [55, 160],
  ] as const) {
    body.push(drawn([shift(b.outer, x, y)], height, `fill="${FILLS[0]}" fill-opacity="0.75" stroke="${INK}"`));
    body.push(`<circle cx="${x}" cy="${height - y}" r="3.5" fill="${INK}"/>`);
  }
  save("no-fit.svg", 460, height, body);
}

/** The same no-fit polygon's feature grid, cells by what they hold. */
function gridPicture(): void {
  const rings = noFitRings(gridShape(Float64Array.from(GUSSET), []), gridShape(Float64Array.from(TAB), []));
  const box = ringBox(rings[0]!);
  const near = 6;
  const [minX, minY] = [box.minX - near, box.minY - near];
  const [width, height] = [box.maxX - box.minX + 2 * near, box.maxY - box.minY + 2 * near];
  const arena = emptyArena();
  const side = 32;
  const edges = ringEdges(rings);
  const grid = addFeatureGrid(arena, edges, edges.length / EDGE, {
    minX,
    minY,
    maxX: minX + width,
    maxY: minY + height,
    side,
    near,
    insideOut: false,
  });
  fillWhole(arena, grid);
  const base = arena.heads[grid * HEAD + 5]!;
  const body: string[] = [];
  const tones = { far: "#ffffff", near: "#e9eef5", one: "#9cc5a1", few: "#f2c879" };
  const [w, h] = [width / side, height / side];
  const toneAt = (cx: number, cy: number): string => {
    const code = arena.cells[base + cy * side + cx]!;
    if (code === -1) return tones.far;
    return code < 0 ? tones.near : code % 2 === 1 ? tones.one : tones.few;
  };
  for (let cy = 0; cy < side; cy++)
    for (let cx = 0, next = 0; cx < side; cx = next) {
      const tone = toneAt(cx, cy);
      while (next < side && toneAt(next, cy) === tone) next++;
      const [x, y] = [format(cx * w), format(height - (cy + 1) * h)];
      body.push(
        `<rect x="${x}" y="${y}" width="${format((next - cx) * w)}" height="${format(h)}" fill="${tone}"/>`,
      );
    }
  for (let k = 1; k < side; k++) {
    const [x, y] = [format(k * w), format(k * h)];
    body.push(`<path d="M${x} 0V${format(height)}M0 ${y}H${format(width)}" stroke="#fff" stroke-width="0.4"/>`);
  }
  const moved = rings.map((ring) => shift(ring, -minX, -minY));
  body.push(drawn(moved, height, `fill="none" stroke="#b5483a" stroke-width="1.4"`));
  const legend: [string, string][] = [
    [tones.one, "one edge decides"],
    [tones.few, "a few edges"],
    [tones.near, "outside, near"],
  ];
  legend.forEach(([tone, text], i) => {
    const x = 6 + i * 115;
    body.push(
      `<rect x="${x}" y="${height + 8}" width="12" height="9" fill="${tone}" stroke="${INK}" stroke-width="0.4"/>`,
    );
    body.push(words(text, x + 17, height + 16, 10));
  });
  save("feature-grid.svg", width, height + 24, body);
}

function piece(id: string, ring: readonly number[], count: number): LayPiece {
  const orientations = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));
  return { id, outline: solid(Float64Array.from(ring)), count, orientations, freeTurn: false };
}

/** First plan, bottom-left plan and the plan after a search, below each other at one scale. */
function stagesPicture(): void {
  const job: RegionJob = {
    region: { width: 600, length: null, outline: null, flaws: [] },
    pieces: [
      piece("flap", FLAP, 6),
      piece("gusset", GUSSET, 8),
      piece("pocket", POCKET, 8),
      piece("wing", WING, 10),
      piece("tab", TAB, 16),
    ],
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
  };
  const plans: RegionPlan[] = [];
  const search = outlineEngine.search(job, { evaluations: 8_000_000 }, 1);
  for (;;) {
    const step = inOneGo(nextTurn(search));
    if (step.done) {
      plans.push(step.value);
      break;
    }
    if (step.value.plan !== null) plans.push(step.value.plan);
  }
  const shown = [plans[0]!, plans[1]!, plans[plans.length - 1]!];
  const names = ["by boxes", "bottom-left on no-fit polygons", "after 8 million evaluations"];
  const area = job.pieces.reduce((sum, p) => sum + p.count * polygonArea(p.outline), 0);
  const longest = Math.max(...shown.map((plan) => plan.length));
  const body: string[] = [];
  shown.forEach((plan, row) => {
    const top = row * 680 + 50;
    const share = (100 * area) / (job.region.width * plan.length);
    body.push(words(`${names[row]}: ${Math.round(plan.length)} mm, ${share.toFixed(1)} %`, 4, top - 14, 34));
    body.push(`<rect x="0" y="${top}" width="${format(plan.length)}" height="600" fill="#f3f0ea"/>`);
    for (const place of plan.placements) {
      const index = job.pieces.findIndex((p) => p.id === place.pieceId);
      const posed = posePolygon(job.pieces[index]!.outline, place);
      const style = `fill="${FILLS[index]}" stroke="${INK}" stroke-width="1.5"`;
      body.push(drawn([shift(posed.outer, 0, -top)], 600, style));
    }
  });
  save("stages.svg", longest + 8, 3 * 680 - 20, body);
}

mkdirSync(FOLDER, { recursive: true });
noFitPicture();
gridPicture();
stagesPicture();
