import { type G, SVG, type Svg } from "@svgdotjs/svg.js";
import type { LayPattern, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { type Frame, frameMatrix } from "./frame.ts";
import { keepAsPicture, LiftedPiece } from "./liftedPiece.ts";
import { keyOf } from "./moves.ts";
import type { PieceKind } from "./pieceKind.ts";
import { groundKeyOf, patternKeyOf, putPattern, putStock } from "./planGround.ts";
import { HERE, labelMatrix, type Offset, poseMatrix } from "./planPaths.ts";
import { fitLabel, putPiece, type Shown } from "./shownPiece.ts";
import type { StockOnTable } from "./stockLayout.ts";

/** What is to be seen. */
export interface PlanScene {
  readonly stocks: readonly StockOnTable[];
  readonly kinds: ReadonlyMap<string, PieceKind>;
  readonly placements: readonly StockPlacement[];
  readonly pinned: ReadonlySet<string>;
  readonly grain: "both" | "one-way" | "none";
  /** The cloth's pattern, where something is matched on it. */
  readonly pattern: LayPattern | undefined;
  /** What a screen reader says of a piece. */
  nameOf(placement: StockPlacement): string;
}

/** So many new pieces are drawn at a time; the rest come with the next frames, and the page answers in between. */
const MOST_NEW = 80;

/** A hand that has not moved the view for so long rests, ms. */
const SETTLES = 140;

/**
 * The plan as a live drawing. Pieces are drawn once and then only moved, so that a better plan or a drag costs one
 * attribute a piece. Coordinates inside are mm, y up; the outermost group carries the view.
 */
export class PlanCanvas {
  readonly element: SVGSVGElement;
  private readonly host: HTMLElement;
  private readonly svg: Svg;
  private readonly world: G;
  private readonly ground: G;
  private readonly pieces: G;
  private readonly pattern: G;
  private readonly shown = new Map<string, Shown>();
  private kinds: ReadonlyMap<string, PieceKind> | null = null;
  private groundKey = "";
  private patternKey = "";
  private frame: Frame = { scale: 1, originX: 0, originY: 0, upright: false };
  private offsets = new Map<string, Offset>();
  private lifted: LiftedPiece | null = null;
  private chosen: string | null = null;
  private settling = 0;
  private still = 0;
  private rest = 0;

  constructor(host: HTMLElement) {
    this.host = host;
    this.svg = SVG().addTo(host).size("100%", "100%");
    this.element = this.svg.node;
    keepAsPicture(this.element);
    this.world = this.svg.group();
    this.ground = this.world.group().addClass("ground");
    this.pieces = this.world.group().addClass("pieces");
    this.pattern = this.world.group().addClass("cloth-pattern");
    this.pattern.node.setAttribute("aria-hidden", "true");
  }

  /** Draws the scene; what is the same as before is left alone. */
  draw(scene: PlanScene): void {
    cancelAnimationFrame(this.rest);
    let added = 0;
    this.drawGround(scene.stocks);
    this.drawPattern(scene.stocks, scene.pattern);
    this.kinds = scene.kinds;
    this.offsets = new Map(scene.stocks.map((laid) => [laid.stock.id, laid]));
    const seen = new Set<string>();
    for (const placement of scene.placements) {
      const kind = scene.kinds.get(placement.pieceId);
      if (kind === undefined) continue;
      const key = keyOf(placement);
      seen.add(key);
      const look = `${scene.grain} ${kind.signature}`;
      const old = this.shown.get(key);
      // A piece that looks as before keeps its element, and with it the keyboard.
      if (old !== undefined && old.look !== look) this.take(key);
      if (!this.shown.has(key) && ++added > MOST_NEW) continue;
      const shown = this.shown.get(key) ?? this.addPiece(key, placement, kind, scene.grain, look);
      this.place(placement);
      this.tell(shown, scene.nameOf(placement), scene.pinned.has(key), this.chosen === key);
    }
    for (const key of this.shown.keys()) if (!seen.has(key)) this.take(key);
    if (added > MOST_NEW) this.rest = requestAnimationFrame(() => this.draw(scene));
  }

  private tell(shown: Shown, name: string, isPinned: boolean, isSelected: boolean): void {
    const state = `${name} ${isPinned} ${isSelected}`;
    if (shown.state === state) return;
    shown.state = state;
    const { node } = shown.group;
    node.classList.toggle("pinned", isPinned);
    node.classList.toggle("selected", isSelected);
    node.setAttribute("aria-label", name);
    node.setAttribute("tabindex", isSelected ? "0" : "-1");
    node.setAttribute("aria-pressed", String(isSelected));
  }

  /** Marks the selected piece; the others are not touched. */
  choose(key: string | null): void {
    for (const each of [this.chosen, key]) {
      const node = each === null ? undefined : this.shown.get(each)?.group.node;
      node?.classList.toggle("selected", each === key);
      node?.setAttribute("tabindex", each === key ? "0" : "-1");
      node?.setAttribute("aria-pressed", String(each === key));
      const shown = each === null ? undefined : this.shown.get(each);
      if (shown !== undefined) shown.state = "";
    }
    this.chosen = key;
  }

  private take(key: string): void {
    this.lower(key);
    this.shown.get(key)?.group.remove();
    this.shown.delete(key);
  }

  /** Moves one piece without drawing anything else: for drags. */
  place(placement: StockPlacement): void {
    const shown = this.shown.get(keyOf(placement));
    const kind = this.kinds?.get(placement.pieceId);
    if (shown === undefined || kind === undefined) return;
    shown.placement = placement;
    const offset = this.offsets.get(placement.stockId) ?? HERE;
    const isLifted = this.lifted?.key === keyOf(placement);
    if (isLifted) this.lifted?.place(this.frame, placement, offset);
    const pose = isLifted ? poseMatrix({ ...placement, x: 0, y: 0 }) : poseMatrix(placement, offset);
    if (shown.pose === pose) return;
    shown.pose = pose;
    shown.group.node.setAttribute("transform", pose);
    shown.label.node.setAttribute("transform", labelMatrix(placement, kind, this.frame.upright));
  }

  /** Marks a piece as lying where it may not, or takes the mark away. */
  mark(key: string, isWrong: boolean): void {
    this.shown.get(key)?.group.node.classList.toggle("wrong", isWrong);
  }

  /** Takes a piece up: above the others, and drawn by itself so that moving it costs none of them a stroke. */
  raise(key: string): void {
    const shown = this.shown.get(key);
    if (shown === undefined || this.lifted?.key === key) return;
    if (this.lifted !== null) this.lower(this.lifted.key);
    this.lifted = new LiftedPiece(this.host, key, shown.group);
    this.place(shown.placement);
  }

  /** Puts a piece back among the others. */
  lower(key: string): void {
    const shown = this.shown.get(key);
    if (this.lifted?.key !== key || shown === undefined) return;
    this.lifted.putInto(this.pieces);
    this.lifted = null;
    this.place(shown.placement);
  }

  /** Puts the keyboard on a piece. */
  focus(key: string): void {
    this.shown.get(key)?.group.node.focus({ preventScroll: true });
  }

  /**
   * Shows the table from another place while a hand moves it: the picture that is there is shifted and scaled, which
   * costs the same for ten pieces and a thousand. Once the hand rests it is drawn sharp.
   */
  glide(frame: Frame): void {
    const { scale, originX, originY, upright } = this.frame;
    if (this.lifted !== null || upright !== frame.upright) {
      this.look(frame);
      return;
    }
    const by = frame.scale / scale;
    const [x, y] = [frame.originX - originX * by, frame.originY - originY * by];
    this.element.style.transform = `matrix(${by}, 0, 0, ${by}, ${x}, ${y})`;
    this.stopSettling();
    // On a busy machine a hand's next step may come later than that, yet never later than two more pictures.
    this.settling = window.setTimeout(() => {
      this.still = requestAnimationFrame(() => {
        this.still = requestAnimationFrame(() => this.look(frame));
      });
    }, SETTLES);
  }

  /** Shows the table from another place. Labels that are too small to read are left out. */
  look(frame: Frame): void {
    this.stopSettling();
    this.element.style.transform = "";
    this.world.node.setAttribute("transform", frameMatrix(frame));
    const turned = this.frame.upright !== frame.upright;
    if (this.frame.scale !== frame.scale) this.host.style.setProperty("--per-px", String(1 / frame.scale));
    this.frame = frame;
    for (const shown of this.shown.values()) {
      this.fitLabel(shown);
      const kind = this.kinds?.get(shown.placement.pieceId);
      if (turned && kind !== undefined)
        shown.label.node.setAttribute("transform", labelMatrix(shown.placement, kind, frame.upright));
    }
    const held = this.lifted === null ? undefined : this.shown.get(this.lifted.key);
    if (held !== undefined) this.place(held.placement);
  }

  private fitLabel(shown: Shown): void {
    fitLabel(shown, this.frame.scale, this.kinds?.get(shown.placement.pieceId));
  }

  /** Takes the drawing off the page. */
  remove(): void {
    cancelAnimationFrame(this.rest);
    this.stopSettling();
    this.svg.remove();
  }

  private stopSettling(): void {
    clearTimeout(this.settling);
    cancelAnimationFrame(this.still);
  }

  private addPiece(
    key: string,
    placement: StockPlacement,
    kind: PieceKind,
    grain: PlanScene["grain"],
    look: string,
  ): Shown {
    const shown = putPiece(this.pieces, key, placement, kind, grain, look);
    this.fitLabel(shown);
    this.shown.set(key, shown);
    return shown;
  }

  private drawPattern(stocks: readonly StockOnTable[], pattern: LayPattern | undefined): void {
    const key = patternKeyOf(stocks, pattern);
    if (key === this.patternKey) return;
    this.patternKey = key;
    this.pattern.clear();
    if (pattern !== undefined) putPattern(this.pattern, stocks, pattern);
  }

  private drawGround(stocks: readonly StockOnTable[]): void {
    const key = groundKeyOf(stocks);
    if (key === this.groundKey) return;
    this.groundKey = key;
    this.ground.clear();
    for (const stock of stocks) putStock(this.ground, stock);
  }
}
