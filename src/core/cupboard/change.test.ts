import { describe, expect, test } from "vitest";
import { type Rng, seededRng } from "../lay/search/rng.ts";
import type { Result } from "../problems/problem.ts";
import {
  type Changed,
  findPiece,
  giveBack,
  keepLeft,
  letGo,
  notePieces,
  putIn,
  takeForPlan,
  takeOut,
  undoLast,
} from "./change.ts";
import { type Cupboard, EMPTY_CUPBOARD, freshCode, pictureKb } from "./cupboard.ts";
import { readCupboard, writeCupboard } from "./cupboardFile.ts";
import { offerPieces } from "./offered.ts";

const today = (rng: Rng) => ({ on: "2027-01-04", below: (count: number) => rng.below(count) });
const remnant = (along: number, across: number) =>
  ({ kind: "remnant", id: "", shape: { kind: "rectangle", along, across }, flaws: [], count: 1 }) as const;

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function codes(result: Result<unknown>): string[] {
  return result.ok ? [] : result.problems.map(({ code }) => code);
}

function filled(rng: Rng, count: number): Cupboard {
  let cupboard = EMPTY_CUPBOARD;
  for (let i = 0; i < count; i++) {
    const shade = i % 2 === 0 ? "rust" : undefined;
    ({ cupboard } = putIn(cupboard, "Sailcloth", remnant(300 + i, 200), { shade, source: "market" }, today(rng)));
  }
  return cupboard;
}

describe("one change", () => {
  const rng = seededRng(5);
  const cupboard = filled(rng, 3);
  const [a, b] = cupboard.pieces.map(({ code }) => code) as [string, string];

  test("a piece that is out is not taken again, and one that is in is not given back", () => {
    const taken = value(takeOut(cupboard, [a], "Tote", today(rng))).cupboard;
    const again = takeOut(taken, [a, b], "Pouch", today(rng));
    expect(again).toMatchObject({ problems: [{ code: "piece-out-already", label: a, project: "Tote" }] });
    expect(codes(giveBack(taken, [b], today(rng)))).toEqual(["piece-not-out"]);
    const back = value(giveBack(taken, [a], today(rng))).cupboard;
    expect(back.pieces).toEqual(cupboard.pieces);
  });

  test("what is out for a project of the same name is not taken for this one's: refused, unless it is known or said to be", () => {
    const taken = value(takeOut(cupboard, [a], "Tote", today(rng), new Set())).cupboard;
    const blind = takeOut(taken, [b], "Tote", today(rng), new Set());
    expect(blind).toMatchObject({
      problems: [{ code: "project-has-pieces-out", project: "Tote", labels: [a], on: "2027-01-04" }],
    });
    expect(codes(takeOut(taken, [b], "Pouch", today(rng), new Set()))).toEqual([]);
    for (const known of [new Set([a]), "any"] as const)
      expect(value(takeOut(taken, [b], "Tote", today(rng), known)).pieces).toMatchObject([
        { code: b, taken: { project: "Tote" } },
      ]);
    const cloth = { id: "sailcloth", name: "Sailcloth", used: [b] };
    expect(codes(takeForPlan(taken, [cloth], "Tote", today(rng), new Set()))).toEqual(["project-has-pieces-out"]);
    expect(codes(takeForPlan(taken, [cloth], "Tote", today(rng)))).toEqual([]);
  });

  test("what is noted of a piece stands there, what is not said stays, and undoing takes it back", () => {
    const noted = value(notePieces(cupboard, [a.toLowerCase(), b], { note: "a hole" }, today(rng)));
    expect(noted.pieces.map(({ code }) => code).sort()).toEqual([a, b].sort());
    expect(noted.pieces).toMatchObject([{ note: "a hole", source: "market" }, { note: "a hole" }]);
    const shaded = value(notePieces(noted.cupboard, [a], { shade: "navy", photo: "a.jpg" }, today(rng)));
    expect(shaded.pieces).toMatchObject([{ shade: "navy", photo: "a.jpg", note: "a hole" }]);
    expect(value(readCupboard(writeCupboard(shaded.cupboard))).pieces).toEqual(shaded.cupboard.pieces);
    const once = value(undoLast(shaded.cupboard)).cupboard;
    expect(value(undoLast(once)).cupboard).toEqual(cupboard);
    expect(codes(notePieces(cupboard, ["QQQQQ"], { note: "x" }, today(rng)))).toEqual(["no-such-piece"]);
  });

  test("a small picture is kept in the file, one too large or of another kind is refused, a file's name is a name", () => {
    const withPhoto = (photo: string) => {
      const noted = value(notePieces(cupboard, [a], { photo }, today(rng))).cupboard;
      return readCupboard(writeCupboard(noted));
    };
    const picture = (bytes: number, kind = "image/jpeg") =>
      `data:${kind};base64,${Buffer.alloc(bytes, 7).toString("base64")}`;
    for (const photo of ["rust.jpg", picture(900), picture(40_000, "image/png"), picture(39_999, "image/webp")]) {
      const read = value(withPhoto(photo));
      expect(read.pieces.find(({ code }) => code === a)!.photo).toBe(photo);
      expect(pictureKb(picture(40_000))).toBe(40);
    }
    const wrong = ["x".repeat(201), picture(40_001), picture(90, "text/html"), "data:image/png,<svg>"];
    for (const photo of wrong) expect(codes(withPhoto(photo)), photo.slice(0, 30)).toContain("photo-unreadable");
  });

  test("a code is found however it is typed, and a slip is answered with what was meant", () => {
    expect(value(findPiece(cupboard, ` ${a.slice(0, 2).toLowerCase()}-${a.slice(2)} `)).code).toBe(a);
    expect(findPiece(cupboard, `${a}Q`)).toMatchObject({ problems: [{ code: "no-such-piece", nearest: a }] });
  });

  test("a plan's leftovers replace the piece they were cut from, once, with its shade and source", () => {
    const cloth = {
      id: "sailcloth",
      name: "Sailcloth",
      used: [a],
      left: [{ stockId: a, stock: remnant(100, 90) }],
    };
    const from = { project: "Tote", plan: "abc" };
    const kept = value(keepLeft(cupboard, [cloth], from, {}, today(rng)));
    expect(kept.cupboard.pieces.some(({ code }) => code === a)).toBe(false);
    expect(kept.pieces).toMatchObject([{ shade: "rust", source: "market", largest: { along: 100, across: 90 } }]);
    expect(codes(keepLeft(kept.cupboard, [cloth], from, {}, today(rng)))).toEqual(["plan-kept-already"]);
    const out = value(takeOut(cupboard, [a], "Pouch", today(rng))).cupboard;
    expect(codes(keepLeft(out, [cloth], from, {}, today(rng)))).toEqual(["piece-out-already"]);
    expect(codes(takeForPlan(cupboard, [{ ...cloth, used: ["roll"] }], "Tote", today(rng)))).toEqual([
      "plan-takes-nothing",
    ]);
    const undone = value(undoLast(kept.cupboard)).cupboard;
    expect(undone).toEqual(cupboard);
  });

  test("another cloth's stock of the same name takes nothing", () => {
    const cloth = { id: "lining", name: "Lining", used: [a], left: [] };
    expect(codes(keepLeft(cupboard, [cloth], { project: "Tote", plan: "x" }, {}, today(rng)))).toEqual([
      "plan-leaves-nothing",
    ]);
  });
});

test("pieces of two shades are not offered together", () => {
  const rng = seededRng(9);
  const rust = filled(rng, 1);
  const { cupboard } = putIn(rust, "Sailcloth", remnant(900, 200), { shade: "navy" }, today(rng));
  const cloth = { id: "cloth", name: "sailcloth", stock: [] };
  const project = { materials: [cloth] } as unknown as Parameters<typeof offerPieces>[0];
  expect(offerPieces(project, cupboard, null)).toMatchObject({
    problems: [{ code: "shades-mixed", shades: expect.arrayContaining(["rust", "navy"]) }],
  });
  const navy = value(offerPieces(project, cupboard, "Navy"));
  expect(navy.pieces.map(({ shade }) => shade)).toEqual(["navy"]);
  expect(navy.project.materials[0]!.stock.map(({ id }) => id)).toEqual(navy.pieces.map(({ code }) => code));
});

test("200 random walks: no piece is twice or lost, the file reads back the same, and undoing goes back step by step", () => {
  for (let seed = 1; seed <= 200; seed++) {
    const rng = seededRng(seed);
    let cupboard = filled(rng, 4);
    const states: Cupboard[] = [cupboard];
    for (let i = 0; i < 12; i++) {
      const all = cupboard.pieces.map(({ code }) => code);
      const some = all.filter(() => rng.below(3) === 0);
      const act: (() => Result<Changed>)[] = [
        () => takeOut(cupboard, some, `p${i}`, today(rng)),
        () => giveBack(cupboard, some, today(rng)),
        () => letGo(cupboard, some.slice(0, 1), today(rng)),
        () => ({ ok: true, value: putIn(cupboard, "Canvas", remnant(200, 100), {}, today(rng)) }),
      ];
      const next = act[rng.below(act.length)]!();
      if (!next.ok) continue;
      ({ cupboard } = next.value);
      states.push(cupboard);
      const now = cupboard.pieces.map(({ code }) => code);
      expect(new Set(now).size).toBe(now.length);
    }
    const { pieces, steps } = value(readCupboard(writeCupboard(cupboard)));
    expect({ pieces, steps }).toEqual(cupboard);
    for (const before of states.slice(0, -1).reverse()) {
      ({ cupboard } = value(undoLast(cupboard)));
      expect(cupboard).toEqual(before);
    }
  }
});

test("a file with faults is refused with all of them", () => {
  const piece = { code: "K7M2P", material: "Canvas", kept: "2027-02-30", stock: { kind: "roll", width: "1 m" } };
  const read = readCupboard(JSON.stringify({ laywrightCupboard: 1, pieces: [piece, { ...piece, size: 3 }] }));
  expect(read.ok ? [] : read.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    "day-unreadable pieces[0].kept",
    "key-missing pieces[0].stock",
    "day-unreadable pieces[1].kept",
    "key-missing pieces[1].stock",
    "unknown-key pieces[1]",
  ]);
  expect(codes(readCupboard('{"laywrightCupboard": 2}'))).toEqual(["file-newer"]);
  const roll = { ...piece, kept: "2027-02-01", stock: { kind: "roll", width: "1 m", length: "3 m" } };
  const twice = readCupboard(JSON.stringify({ laywrightCupboard: 1, pieces: [roll, { ...roll, code: "k7m-2p" }] }));
  expect(codes(twice)).toEqual(["piece-twice"]);
});

test("codes are told apart from all that were ever spoken of", () => {
  const rng = seededRng(1);
  const cupboard = filled(rng, 1);
  const first = cupboard.pieces[0]!.code;
  const gone = value(letGo(cupboard, [first], today(rng))).cupboard;
  const replay = seededRng(1);
  expect(freshCode(gone, (count) => replay.below(count))).not.toBe(first);
});
