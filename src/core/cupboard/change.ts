import { nearestWord } from "../problems/nearestWord.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import {
  type Cupboard,
  type CupboardPiece,
  type CupboardStep,
  freshCode,
  isOfCloth,
  plainCode,
  STEPS_KEPT,
} from "./cupboard.ts";
import { freeOnPiece } from "./freeOnPiece.ts";
import type { LeftPiece } from "./leftOfPlan.ts";

/** What the host knows and the core must not ask for: the day, and a whole number under its argument. */
export interface Today {
  /** Year-month-day. */
  readonly on: string;
  readonly below: (count: number) => number;
}

/** What is said of a piece besides its cloth and outline; what is left out is taken from the piece it was cut from. */
export interface PieceWords {
  readonly shade?: string | undefined;
  readonly source?: string | undefined;
  readonly photo?: string | undefined;
  readonly note?: string | undefined;
}

/** A cupboard after a change, and the pieces that the change is about. */
export interface Changed {
  readonly cupboard: Cupboard;
  readonly pieces: readonly CupboardPiece[];
}

/** Puts a piece in by hand. */
export function putIn(
  cupboard: Cupboard,
  material: string,
  stock: LeftPiece["stock"],
  words: PieceWords,
  today: Today,
): Changed {
  const piece = pieceOf(cupboard, material, stock, words, null, today);
  return changed(cupboard, { did: "put", on: today.on, project: null, plan: null }, [], [piece]);
}

/** A cloth of a plan, and what the plan leaves of it. */
export interface LeftOfCloth {
  readonly id: string;
  readonly name: string;
  /** Stocks that the plan cuts. */
  readonly used: readonly string[];
  readonly left: readonly LeftPiece[];
}

/**
 * Brings the pieces of another cupboard in, but none whose code is here already; an empty one becomes like the other,
 * with its changes.
 */
export function bringIn(cupboard: Cupboard, other: Cupboard, today: Today): Changed {
  if (cupboard.pieces.length === 0 && cupboard.steps.length === 0) return { cupboard: other, pieces: other.pieces };
  const known = new Set(cupboard.pieces.map(({ code }) => code));
  const added = other.pieces.filter(({ code }) => !known.has(code));
  return changed(cupboard, { did: "put", on: today.on, project: null, plan: null }, [], added);
}

/**
 * Keeps what a plan leaves. Pieces of the cupboard that the plan cuts are no more; what is left of one has its shade
 * and source. `plan` marks the plan; `again`: it was cut once more.
 *
 * Errors: the plan's leftovers are kept already; a piece that it cuts is out for another project; nothing is left.
 */
export function keepLeft(
  cupboard: Cupboard,
  cloths: readonly LeftOfCloth[],
  from: { readonly project: string; readonly plan: string; readonly again?: boolean },
  words: PieceWords,
  today: Today,
): Result<Changed> {
  const before = cupboard.steps.find(({ did, plan }) => did === "kept" && plan === from.plan);
  if (before !== undefined && from.again !== true)
    return failed({ code: "plan-kept-already", path: "", on: before.on });
  const parents = cloths.flatMap((cloth) => cutPieces(cupboard, cloth));
  const elsewhere = parents.filter(({ taken }) => taken !== null && taken.project !== from.project);
  if (elsewhere.length > 0) return failed(...elsewhere.map(outAlready));
  let grown = cupboard;
  const added: CupboardPiece[] = [];
  for (const { name, left } of cloths)
    for (const { stockId, stock } of left) {
      const parent = parents.find(({ code }) => code === stockId) ?? null;
      const piece = pieceOf(grown, parent?.material ?? name, stock, words, parent, today);
      // Curved on all sides, it has no place for a rectangle worth naming.
      if (piece.largest === null) continue;
      grown = { ...grown, pieces: [...grown.pieces, piece] };
      added.push(piece);
    }
  if (parents.length === 0 && added.length === 0) return failed({ code: "plan-leaves-nothing", path: "" });
  const step = { did: "kept", on: today.on, project: from.project, plan: from.plan } as const;
  return ok({ ...changed(cupboard, step, parents, added), pieces: added });
}

/**
 * Takes out the pieces of the cupboard that a plan cuts.
 * Errors: it cuts none; those of `takeOut`.
 */
export function takeForPlan(
  cupboard: Cupboard,
  cloths: readonly Pick<LeftOfCloth, "id" | "name" | "used">[],
  project: string,
  today: Today,
  known: ReadonlySet<string> | "any" = "any",
): Result<Changed> {
  const pieces = cloths.flatMap((cloth) => cutPieces(cupboard, cloth));
  if (pieces.length === 0) return failed({ code: "plan-takes-nothing", path: "" });
  return takeOut(
    cupboard,
    pieces.map(({ code }) => code),
    project,
    today,
    known,
  );
}

/**
 * Takes pieces out for a project. `known` are codes that the caller knows to be out for this project, "any" when whatever
 * is out for its name is its own.
 *
 * Errors: a code that is not there; a piece that is out already; others that are out for a project of the same name.
 */
export function takeOut(
  cupboard: Cupboard,
  codes: readonly string[],
  project: string,
  today: Today,
  known: ReadonlySet<string> | "any" = "any",
): Result<Changed> {
  const found = named(cupboard, codes);
  if (!found.ok) return found;
  const out = found.value.filter(({ taken }) => taken !== null);
  if (out.length > 0) return failed(...out.map(outAlready));
  const others = cupboard.pieces.filter(
    ({ code, taken }) => known !== "any" && taken?.project === project && !known.has(code),
  );
  if (others.length > 0) {
    const labels = others.map(({ code }) => code);
    return failed({ code: "project-has-pieces-out", path: "", project, labels, on: others[0]!.taken!.on });
  }
  const taken = { project, on: today.on };
  const step = { did: "took", on: today.on, project, plan: null } as const;
  return ok(
    changed(
      cupboard,
      step,
      found.value,
      found.value.map((piece) => ({ ...piece, taken })),
    ),
  );
}

/** Puts pieces back that were taken out and not cut. Errors: a code that is not there; a piece that is not out. */
export function giveBack(cupboard: Cupboard, codes: readonly string[], today: Today): Result<Changed> {
  const found = named(cupboard, codes);
  if (!found.ok) return found;
  const inside = found.value.filter(({ taken }) => taken === null);
  if (inside.length > 0)
    return failed(...inside.map(({ code }): Problem => ({ code: "piece-not-out", path: "", label: code })));
  const step = { did: "gave-back", on: today.on, project: null, plan: null } as const;
  return ok(
    changed(
      cupboard,
      step,
      found.value,
      found.value.map((piece) => ({ ...piece, taken: null })),
    ),
  );
}

/** Takes pieces off the list: cut up by hand, given away, thrown out. Errors: a code that is not there. */
export function letGo(cupboard: Cupboard, codes: readonly string[], today: Today): Result<Changed> {
  const found = named(cupboard, codes);
  if (!found.ok) return found;
  return ok(changed(cupboard, { did: "let-go", on: today.on, project: null, plan: null }, found.value, []));
}

/** Writes down what is said of pieces; what is not said stays as it is. Errors: a code that is not there. */
export function notePieces(
  cupboard: Cupboard,
  codes: readonly string[],
  { shade, source, photo, note }: PieceWords,
  today: Today,
): Result<Changed> {
  const found = named(cupboard, codes);
  if (!found.ok) return found;
  const noted = found.value.map((piece) => ({
    ...piece,
    shade: shade ?? piece.shade,
    source: source ?? piece.source,
    photo: photo ?? piece.photo,
    note: note ?? piece.note,
  }));
  const step = { did: "noted", on: today.on, project: null, plan: null } as const;
  return ok(changed(cupboard, step, found.value, noted));
}

/** Undoes the last change that is still known; the step that was undone comes with it. Errors: there is none. */
export function undoLast(cupboard: Cupboard): Result<Changed & { readonly step: CupboardStep }> {
  const step = cupboard.steps.at(-1);
  if (step === undefined) return failed({ code: "nothing-to-undo", path: "" });
  const others = cupboard.pieces.filter(({ code }) => !step.codes.includes(code));
  return ok({
    cupboard: { pieces: inOrder([...others, ...step.before]), steps: cupboard.steps.slice(0, -1) },
    pieces: step.before,
    step,
  });
}

/** The piece with this code, however it was typed; an error names the one that was meant. */
export function findPiece(cupboard: Cupboard, code: string): Result<CupboardPiece> {
  const found = named(cupboard, [code]);
  return found.ok ? ok(found.value[0]!) : found;
}

function named({ pieces }: Cupboard, codes: readonly string[]): Result<readonly CupboardPiece[]> {
  const wanted = [...new Set(codes.map(plainCode))];
  const known = pieces.map(({ code }) => code);
  const unknown = wanted.filter((code) => !known.includes(code));
  if (unknown.length > 0)
    return failed(
      ...unknown.map((label): Problem => {
        return { code: "no-such-piece", path: "", label, nearest: nearestWord(label, known) };
      }),
    );
  return ok(pieces.filter(({ code }) => wanted.includes(code)));
}

/** Pieces of the cupboard that a plan cuts of this cloth. */
function cutPieces({ pieces }: Cupboard, cloth: Pick<LeftOfCloth, "id" | "name" | "used">): CupboardPiece[] {
  return pieces.filter((piece) => cloth.used.includes(piece.code) && isOfCloth(piece, cloth));
}

function outAlready({ code, taken }: CupboardPiece): Problem {
  return { code: "piece-out-already", path: "", label: code, project: taken!.project, on: taken!.on };
}

function pieceOf(
  cupboard: Cupboard,
  material: string,
  stock: LeftPiece["stock"],
  words: PieceWords,
  parent: CupboardPiece | null,
  { on, below }: Today,
): CupboardPiece {
  const code = freshCode(cupboard, below);
  const kind = parent?.stock.kind === "skin" && stock.kind === "remnant" ? "skin" : stock.kind;
  const own = { ...stock, kind, id: code } as CupboardPiece["stock"];
  return {
    code,
    material,
    shade: words.shade ?? parent?.shade ?? null,
    source: words.source ?? parent?.source ?? null,
    kept: on,
    photo: words.photo ?? null,
    note: words.note ?? null,
    stock: own,
    ...freeOnPiece(own),
    taken: null,
  };
}

/** The cupboard with `before` taken away and `after` there instead, and the step written down. */
function changed(
  { pieces, steps }: Cupboard,
  step: Omit<CupboardStep, "codes" | "before">,
  before: readonly CupboardPiece[],
  after: readonly CupboardPiece[],
): Changed {
  const codes = [...new Set([...before, ...after].map(({ code }) => code))];
  const others = pieces.filter(({ code }) => !codes.includes(code));
  return {
    cupboard: {
      pieces: inOrder([...others, ...after]),
      steps: [...steps, { ...step, codes, before }].slice(-STEPS_KEPT),
    },
    pieces: after.length > 0 ? after : before,
  };
}

/** By the day they came, then by code: the same pieces stand in the same order, however they got there. */
function inOrder(pieces: readonly CupboardPiece[]): CupboardPiece[] {
  const key = ({ kept, code }: CupboardPiece): string => `${kept} ${code}`;
  return [...pieces].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}
