import { useState } from "preact/hooks";
import { planOffcuts } from "../../core/buying/planOffcuts.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import type { Changed, Today } from "../../core/cupboard/change.ts";
import { bringIn, giveBack, keepLeft, letGo, notePieces, takeOut, undoLast } from "../../core/cupboard/change.ts";
import { type Cupboard, type CupboardPiece, isOfCloth } from "../../core/cupboard/cupboard.ts";
import { readCupboard } from "../../core/cupboard/cupboardFile.ts";
import { leftOfPlan } from "../../core/cupboard/leftOfPlan.ts";
import { labelledStock } from "../../core/cupboard/offered.ts";
import { planMark } from "../../core/cupboard/planMark.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Problem, Result } from "../../core/problems/problem.ts";
import { withMaterial } from "../../core/project/edits.ts";
import type { Project } from "../../core/project/project.ts";
import type { LayState } from "./layBoard.ts";
import { useStore } from "./store.ts";
import { useChange, useProject, useWorkbench } from "./workbench.ts";

/** What can be done with the cupboard from a project, and what came of the last of it. */
export interface CupboardHand {
  readonly cupboard: Cupboard;
  readonly problems: readonly Problem[];
  readonly told: string | null;
  /** `isMore`: whatever is out for a project of this name is out for this one. */
  take(
    material: Material,
    codes: readonly string[],
    isMore: boolean,
    say: (pieces: readonly CupboardPiece[]) => string,
  ): void;
  /** Keeps a small picture of a piece. */
  photograph(code: string, photo: string): void;
  giveBack(code: string, say: () => string): void;
  letGo(code: string): void;
  undo(): void;
  keep(lay: LayState, wish: KeepWish, say: (pieces: readonly CupboardPiece[]) => string): void;
  bringIn(text: string, say: (pieces: readonly CupboardPiece[]) => string): void;
}

/** What is said of leftovers that are kept; `again`: the same plan was cut once more. */
export interface KeepWish {
  readonly shade: string;
  readonly source: string;
  readonly again: boolean;
}

/** Gives the cupboard and what can be done with it; pieces go into the open project's stock and out of it again. */
export function useCupboard(): CupboardHand {
  const { cupboard: store } = useWorkbench();
  const cupboard = useStore(store.cupboard, (now) => now);
  const project = useProject();
  const change = useChange();
  const [outcome, setOutcome] = useState<{ problems: readonly Problem[]; told: string | null }>(NOTHING);
  const run = async <T extends { readonly cupboard: Cupboard }>(
    act: (now: Cupboard) => Result<T>,
    then: (done: T) => string | null,
  ) => {
    const done = await store.change(act);
    setOutcome(done.ok ? { problems: [], told: then(done.value) } : { problems: done.problems, told: null });
  };
  /** The project's stock with those of these pieces that are out for it now, and without the others. */
  const follow = (codes: readonly string[], label: string) =>
    change((now) => asTakenOut(now, store.cupboard.get(), codes), label);
  return {
    cupboard,
    ...outcome,
    take: (material, codes, isMore, say) =>
      void run(
        // Another project may have the same name: what is out for it is this one's where its stock has it.
        (now) => takeOut(now, codes, project.name, today(), isMore ? "any" : stockIds(project)),
        ({ pieces }) => {
          change((now) => withPieces(now, material.id, pieces), say(pieces));
          return say(pieces);
        },
      ),
    giveBack: (code, say) =>
      void run(
        (now) => giveBack(now, [code], today()),
        () => {
          follow([code], say());
          return say();
        },
      ),
    photograph: (code, photo) =>
      void run(
        (now) => notePieces(now, [code], { photo }, today()),
        () => null,
      ),
    letGo: (code) =>
      void run(
        (now) => letGo(now, [code], today()),
        () => null,
      ),
    undo: () =>
      void run(undoLast, ({ step }) => {
        if (step.did === "took" || step.did === "gave-back") follow(step.codes, step.codes.join(", "));
        return null;
      }),
    keep: (lay, wish, say) =>
      void run(
        (now) => keepFrom(now, lay, wish, project),
        ({ pieces }) => say(pieces),
      ),
    bringIn: (text, say) => {
      const read = readCupboard(text);
      if (!read.ok) setOutcome({ problems: read.problems, told: null });
      else
        void run(
          (now) => ({
            ok: true,
            value: bringIn(now, { pieces: read.value.pieces, steps: read.value.steps }, today()),
          }),
          ({ pieces }) => say(pieces),
        );
    },
  };
}

const NOTHING = { problems: [], told: null };

/** The day of this device, and chance for new codes. */
function today(): Today {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return {
    on: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    below: (count) => Math.floor((crypto.getRandomValues(new Uint32Array(1))[0]! / 2 ** 32) * count),
  };
}

/** The pieces before everything else that there is of a material. */
function withPieces(project: Project, materialId: string, pieces: readonly CupboardPiece[]): Project {
  const material = project.materials.find(({ id }) => id === materialId);
  if (material === undefined) return project;
  const there = new Set(material.stock.map(({ id }) => id));
  const fresh = pieces.filter(({ code }) => !there.has(code)).map(labelledStock);
  return withMaterial(project, materialId, { stock: [...fresh, ...material.stock] });
}

function stockIds(project: Project): ReadonlySet<string> {
  return new Set(project.materials.flatMap(({ stock }) => stock.map(({ id }) => id)));
}

/** The project with those of some pieces that are out for it, and without those of them that are not. */
function asTakenOut(project: Project, { pieces }: Cupboard, codes: readonly string[]): Project {
  const own = pieces.filter(({ code, taken }) => codes.includes(code) && taken?.project === project.name);
  const gone = new Set(codes.filter((code) => !own.some((piece) => piece.code === code)));
  const without = {
    ...project,
    materials: project.materials.map((material) => ({
      ...material,
      stock: material.stock.filter(({ id, label }) => !(label === id && gone.has(id))),
    })),
    pins: project.pins.filter(({ stockId }) => !gone.has(stockId)),
  };
  return without.materials.reduce(
    (now, material) =>
      withPieces(
        now,
        material.id,
        own.filter((piece) => isOfCloth(piece, material)),
      ),
    without as Project,
  );
}

/** Keeps what the plan that is shown leaves. */
function keepFrom(now: Cupboard, { job, plan }: LayState, wish: KeepWish, project: Project): Result<Changed> {
  const { material, problem } = job;
  if (plan === null) return { ok: false, problems: [{ code: "plan-leaves-nothing", path: "" }] };
  const offcuts = planOffcuts(material, problem, plan, purchaseOf(material, plan, project));
  const reach = (stockId: string): number => {
    const own = offcuts.find((one) => one.stockId === stockId)?.offcuts ?? [];
    return Math.max(0, ...own.map(({ x, along }) => x + along));
  };
  const cloth = {
    id: material.id,
    name: material.name,
    used: plan.uses.filter(({ usedLength }) => usedLength > 0).map(({ stockId }) => stockId),
    left: leftOfPlan(problem, plan, reach),
  };
  const said = (text: string): string | undefined => (text.trim() === "" ? undefined : text.trim());
  const words = { shade: said(wish.shade), source: said(wish.source) };
  const from = { project: project.name, plan: planMark([plan]), again: wish.again };
  return keepLeft(now, [cloth], from, words, today());
}
