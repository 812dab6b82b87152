import type { Contour } from "../geometry/contour.ts";
import { contourBox, contourEdges, flattenContour, poseContour } from "../geometry/contourArcs.ts";
import { segmentContour } from "../geometry/contourShapes.ts";
import { insertTooth } from "../geometry/insertTooth.ts";
import { offsetEdges } from "../geometry/offsetEdges.ts";
import { type Pose, turnCosSin } from "../geometry/pose.ts";
import { solid } from "../geometry/ring.ts";
import type { CutPiece, MatchPlace, PieceLine } from "../materials/cutPiece.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import { PANEL_WORDS } from "../words/words.ts";
import { cutLine, type Seamed, stitchLine } from "./cutLine.ts";
import { foldOut } from "./foldOut.ts";
import { matchPlaces } from "./matchSpots.ts";
import type { FollowingPiece } from "./panel.ts";
import { drillLines, notchLine, notchPlaces, textLines } from "./panelMarks.ts";
import type { SizedPanel } from "./sizedPanel.ts";

/** The two lines of a piece. */
interface Lines {
  readonly cut: Contour;
  readonly stitch: Contour;
}

/**
 * The pieces of one panel of one bag: the panel itself opened out over its fold, seam allowance added, notches and
 * lines drawn, and the interfacing and lining that follow from it. Counts are those of one bag.
 *
 * Units:  mm; outlines within 0.01 mm of the arcs.
 * Errors: a fold whose halves meet beside it, an allowance or inset that leaves nothing, at `path`.
 */
export function buildPanel(
  sized: SizedPanel,
  path = "",
  words: Readonly<Record<"interfacing" | "lining", string>> = PANEL_WORDS.en,
): Result<readonly CutPiece[]> {
  const { panel } = sized;
  const built = builtLines(sized, path);
  if (!built.ok) return built;
  const { cut, lines, drawn } = built.value;
  const problems: Problem[] = [];
  const following = (piece: FollowingPiece | null | undefined, word: "interfacing" | "lining"): CutPiece[] => {
    if (!piece) return [];
    const inset = word === "lining" ? sized.liningInset : sized.interfacingInset;
    const made = followingLines(lines, piece, inset, word === "lining");
    if (made === null) {
      problems.push({ code: "inset-eats-panel", path: `${path}${word}.inset`, insetMm: inset });
      return [];
    }
    const part = { id: `-${word}`, name: `, ${words[word]}`, materialId: piece.materialId };
    return [pieceOf(sized, part, ...made, matchPlaces(sized, piece.cut === "inset" ? inset : 0))];
  };
  const pieces = [
    pieceOf(sized, { id: "", name: "", materialId: panel.materialId }, cut, drawn, matchPlaces(sized)),
    ...following(panel.interfacing, "interfacing"),
    ...following(panel.lining, "lining"),
  ];
  return problems.length > 0 ? failed(...problems) : ok(pieces);
}

/** A panel's lines where its outline stands. */
interface BuiltLines {
  /** The cut line, notches that stand out of it and all. */
  readonly cut: Contour;
  readonly lines: Lines;
  readonly drawn: readonly PieceLine[];
}

/** What is drawn of a panel, in the frame its outline is measured in. */
export interface PanelDrawing {
  readonly cut: Contour;
  readonly drawn: readonly PieceLine[];
}

/** The panel as it is cut and marked, where its outline stands; null when it cannot be built. mm. */
export function panelDrawing(sized: SizedPanel): PanelDrawing | null {
  const built = builtLines(sized, "");
  return built.ok ? built.value : null;
}

function builtLines(sized: SizedPanel, path: string): Result<BuiltLines> {
  const { panel, foldEdge } = sized;
  const half = seamedOf(sized);
  const opened = foldEdge === null ? null : foldOut(half, foldEdge);
  if (foldEdge !== null && opened === null)
    return failed({ code: "fold-edge-not-straight", path: `${path}fold`, edge: panel.foldEdge! });
  const whole = opened?.whole ?? half;
  const lines = linesOf(sized, whole);
  if (lines === null) {
    const allowanceMm = Math.max(...sized.allowances);
    return failed({ code: "allowance-eats-panel", path: `${path}seamAllowance`, allowanceMm });
  }
  const notches = notchPlaces(sized, opened);
  const drawn: PieceLine[] = [
    ...(sized.allowances.some((width) => width > 0) ? [{ role: "stitch", contour: lines.stitch } as const] : []),
    ...hemLines(whole),
    ...(opened ? [{ role: "fold", contour: segmentContour(...opened.fold), note: "fold" } as const] : []),
    ...sized.outline.lines,
    ...drillLines(sized, opened),
    ...textLines(sized),
  ];
  let cut = lines.cut;
  for (const notch of notches) {
    const [nx, ny] = notch.out;
    const tip = [notch.x + nx * notch.depth, notch.y + ny * notch.depth] as const;
    const toothed = notch.cut === "out" ? insertTooth(cut, [notch.x, notch.y], notch.depth / 2, tip) : null;
    if (toothed === null) drawn.push(notchLine(notch));
    else cut = toothed;
  }
  return ok({ cut, lines, drawn });
}

function seamedOf({ outline, allowances, hems, corners }: SizedPanel): Seamed {
  return { contour: outline.contour, allowances, hems, corners, mirrored: corners.map(() => false) };
}

/** Cut line and stitch line of the piece opened out, whichever of them is drawn. */
function linesOf({ panel }: SizedPanel, whole: Seamed): Lines | null {
  if (panel.drawn !== "cut") return { cut: cutLine(whole), stitch: whole.contour };
  const stitch = stitchLine(whole);
  return stitch === null ? null : { cut: whole.contour, stitch: stitch.contour };
}

/** The stitch lines along which hems are turned in. */
function hemLines({ contour, hems }: Seamed): PieceLine[] {
  return contourEdges(contour).flatMap(({ x0, y0, x1, y1, bulge }, i): PieceLine[] => {
    if (!hems[i]) return [];
    const vertices = Float64Array.of(x0, y0, bulge, x1, y1, 0);
    return [{ role: "fold", contour: { vertices, closed: false }, note: "fold" }];
  });
}

/** Cut line and lines of a piece that follows; null when nothing is left of it. */
function followingLines(
  { cut, stitch }: Lines,
  piece: FollowingPiece,
  inset: number,
  isLining: boolean,
): [Contour, PieceLine[]] | null {
  if (piece.cut === "net") return [stitch, []];
  const inside = (contour: Contour): Contour | null =>
    offsetEdges(
      contour,
      Array.from({ length: contour.vertices.length / 3 }, () => -inset || 0),
    )?.contour ?? null;
  const inner = piece.cut === "inset" ? inside(stitch) : stitch;
  if (inner === null) return null;
  if (!isLining) return [piece.cut === "full" ? cut : inner, []];
  const outer = piece.cut === "inset" ? inside(cut) : cut;
  return outer && [outer, cut === stitch ? [] : [{ role: "stitch", contour: inner }]];
}

/** The piece with its grain arrow along x and the lower-left corner of its box at the origin. */
function pieceOf(
  { panel, outline, foldEdge }: SizedPanel,
  part: { readonly id: string; readonly name: string; readonly materialId: string },
  contour: Contour,
  lines: readonly PieceLine[],
  places: readonly MatchPlace[],
): CutPiece {
  const turnDeg = -outline.arrowDeg || 0;
  const turned = poseContour(contour, { x: 0, y: 0, turnDeg, mirrored: false });
  const box = contourBox(turned);
  const pose: Pose = { x: -box.minX, y: -box.minY, turnDeg, mirrored: false };
  const placed = poseContour(contour, pose);
  return {
    id: `${panel.id}${part.id}`,
    name: `${panel.name}${part.name}`,
    partId: panel.id,
    materialId: part.materialId,
    kind: "panel",
    contour: placed,
    outline: solid(flattenContour(placed)),
    lines: lines.map((line) => ({ ...line, contour: poseContour(line.contour, pose) })),
    count: panel.count * (outline.copies ?? 1),
    mirroredCount: panel.mirroredCount * (outline.copies ?? 1),
    grain: panel.grain,
    ...(foldEdge === null ? {} : { onFold: true }),
    ...(places.length > 0 ? { matchPlaces: places.map((place) => posedPlace(place, pose)) } : {}),
  };
}

function posedPlace(place: MatchPlace, pose: Pose): MatchPlace {
  const [c, s] = turnCosSin(pose.turnDeg);
  const { x, y, out } = place;
  return {
    ...place,
    x: c * x - s * y + pose.x,
    y: s * x + c * y + pose.y,
    out: [c * out[0] - s * out[1], s * out[0] + c * out[1]],
  };
}
