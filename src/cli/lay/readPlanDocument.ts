import type { Polygon, Ring } from "../../core/geometry/ring.ts";
import type {
  LayPiece,
  LayPlan,
  LayProblem,
  Stock,
  StockPlacement,
  Unplaced,
} from "../../core/lay/problem/layProblem.ts";
import { InputProblem } from "../inOut/problemReport.ts";
import type { PlanValue } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";

/** One material's problem and plan out of a plan file. */
export interface ReadPlan {
  readonly name: string;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
}

/** Whether parsed JSON claims to be a plan file. */
export function isPlanDocument(data: unknown): boolean {
  return typeof data === "object" && data !== null && "laywrightPlan" in data;
}

/**
 * Problems and plans of a plan file, for the checker. The placed outlines in the file are not read: what is verified
 * is the poses against the pieces. Throws `InputProblem` with every value that is not what it should be.
 */
export function readPlanDocument(data: unknown, path: string): ReadPlan[] {
  const read = reader(path);
  const document = read.object(data, "");
  if (document["laywrightPlan"] !== 1) read.fail("laywrightPlan", "version");
  const seed = read.number(document["seed"], "seed");
  const plans = read.list(document["materials"], "materials").map((entry, i) => {
    const at = `materials[${i}]`;
    const material = read.object(entry, at);
    const materialId = read.text(material["materialId"], `${at}.materialId`);
    const stockData = read
      .list(material["stock"], `${at}.stock`)
      .map((value, k) => readStock(read, value, `${at}.stock[${k}]`));
    const list = <T>(key: string, each: (value: unknown, at: string) => T): T[] =>
      read.list(material[key], `${at}.${key}`).map((value, k) => each(value, `${at}.${key}[${k}]`));
    const problem: LayProblem = {
      materialId,
      pieces: list("pieces", (value, where) => readPiece(read, value, where)),
      stocks: stockData.map(({ stock }) => stock),
      gap: read.number(material["cuttingGap"], `${at}.cuttingGap`),
      margin: read.number(material["edgeMargin"], `${at}.edgeMargin`),
      pinned: list("pinned", (value, where) => readPlacement(read, value, where)),
    };
    const plan: LayPlan = {
      materialId,
      placements: list("placed", (value, where) => readPlacement(read, value, where)),
      unplaced: list("unplaced", (value, where) => readUnplaced(read, value, where)),
      uses: stockData.map(({ use }) => use),
      evaluations: 0,
      seed,
    };
    return { name: read.text(material["name"], `${at}.name`), problem, plan };
  });
  read.check();
  return plans;
}

type Reader = ReturnType<typeof reader>;

/** Most wrong values told of one file. */
const MOST_TOLD = 100;

/** Reads values, or notes what they should have been and goes on with an empty one. */
function reader(path: string) {
  const wrong = new Map<string, PlanValue>();
  const fail = (at: string, wanted: PlanValue): void => {
    // What lies inside a wrong value is wrong with it.
    const inside = [...wrong.keys()].some((outer) => at.startsWith(`${outer}.`) || at.startsWith(`${outer}[`));
    if (!inside && !wrong.has("") && !wrong.has(at)) wrong.set(at, wanted);
  };
  const or = <T>(value: T | null, at: string, wanted: PlanValue, empty: T): T => {
    if (value !== null) return value;
    fail(at, wanted);
    return empty;
  };
  const asObject = (value: unknown): Record<string, unknown> | null =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  return {
    fail,
    object: (value: unknown, at: string) => or(asObject(value), at, "object", {}),
    list: (value: unknown, at: string) =>
      or<readonly unknown[]>(Array.isArray(value) ? value : null, at, "list", []),
    number: (value: unknown, at: string) =>
      or(typeof value === "number" && Number.isFinite(value) ? value : null, at, "number", 0),
    text: (value: unknown, at: string) => or(typeof value === "string" ? value : null, at, "text", ""),
    flag: (value: unknown, at: string) => or(typeof value === "boolean" ? value : null, at, "flag", false),
    /** Throws `InputProblem` when anything was wrong. */
    check: (): void => {
      if (wrong.size === 0) return;
      throw new InputProblem((language) =>
        [...wrong].slice(0, MOST_TOLD).map(([at, wanted]) => ({
          code: "plan-unreadable",
          path: at,
          message: CLI_TEXTS[language].files.notAPlan(path, at, wanted),
        })),
      );
    },
  };
}

function readRing(read: Reader, value: unknown, at: string): Ring {
  const points = read.list(value, at);
  if (points.length < 3) read.fail(at, "outline");
  return Float64Array.from(
    points.flatMap((point, i) => {
      const pair = read.list(point, `${at}[${i}]`);
      return [read.number(pair[0], `${at}[${i}][0]`), read.number(pair[1], `${at}[${i}][1]`)];
    }),
  );
}

function readOutline(read: Reader, value: unknown, at: string): Polygon {
  const outline = read.object(value, at);
  const holes = read.list(outline["holes"], `${at}.holes`);
  return {
    outer: readRing(read, outline["points"], `${at}.points`),
    holes: holes.map((hole, i) => readRing(read, hole, `${at}.holes[${i}]`)),
  };
}

function readPiece(read: Reader, value: unknown, at: string): LayPiece {
  const piece = read.object(value, at);
  return {
    id: read.text(piece["id"], `${at}.id`),
    outline: readOutline(read, piece["outline"], `${at}.outline`),
    count: read.number(piece["count"], `${at}.count`),
    orientations: read.list(piece["turns"], `${at}.turns`).map((entry, i) => {
      const turn = read.object(entry, `${at}.turns[${i}]`);
      return {
        turnDeg: read.number(turn["turnDeg"], `${at}.turns[${i}].turnDeg`),
        mirrored: read.flag(turn["mirrored"], `${at}.turns[${i}].mirrored`),
      };
    }),
    freeTurn: read.flag(piece["freeTurn"], `${at}.freeTurn`),
  };
}

function readStock(read: Reader, value: unknown, at: string): { stock: Stock; use: LayPlan["uses"][number] } {
  const data = read.object(value, at);
  const id = read.text(data["id"], `${at}.id`);
  const flaws = read
    .list(data["flaws"], `${at}.flaws`)
    .map((flaw, i) => readOutline(read, flaw, `${at}.flaws[${i}]`));
  const orNull = (key: string): number | null =>
    data[key] === null ? null : read.number(data[key], `${at}.${key}`);
  const use = {
    stockId: id,
    usedLength: read.number(data["lengthUsed"], `${at}.lengthUsed`),
    bound: orNull("bound"),
  };
  if (data["kind"] === "remnant")
    return {
      stock: { kind: "remnant", id, outline: readOutline(read, data["outline"], `${at}.outline`), flaws },
      use,
    };
  if (data["kind"] !== "roll") read.fail(`${at}.kind`, "stock-kind");
  const width = read.number(data["width"], `${at}.width`);
  return { stock: { kind: "roll", id, width, length: orNull("length"), flaws }, use };
}

function readPlacement(read: Reader, value: unknown, at: string): StockPlacement {
  const placement = read.object(value, at);
  const number = (key: string): number => read.number(placement[key], `${at}.${key}`);
  return {
    pieceId: read.text(placement["pieceId"], `${at}.pieceId`),
    copy: number("copy"),
    stockId: read.text(placement["stockId"], `${at}.stockId`),
    x: number("x"),
    y: number("y"),
    turnDeg: number("turnDeg"),
    mirrored: read.flag(placement["mirrored"], `${at}.mirrored`),
  };
}

function readUnplaced(read: Reader, value: unknown, at: string): Unplaced {
  const left = read.object(value, at);
  return {
    pieceId: read.text(left["pieceId"], `${at}.pieceId`),
    count: read.number(left["count"], `${at}.count`),
    reason: read.text(left["reason"], `${at}.reason`) as Unplaced["reason"],
  };
}
