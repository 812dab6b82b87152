import { useEffect, useMemo, useRef } from "preact/hooks";
import { grainArrow } from "../../../core/drawing/lay/pieceArt.ts";
import type { LayProblem, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import type { Project } from "../../../core/project/project.ts";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import type { LayState } from "../../state/layBoard.ts";
import { useStore } from "../../state/store.ts";
import { type Texts, useLanguage, useTexts } from "../../texts/texts.ts";
import { type Buttons, clearFrame, type Frame, fitFrame, panFrame, type ScreenSize, zoomFrame } from "./frame.ts";
import { listenToHands } from "./gestures.ts";
import { keyOf, pinnedKeys } from "./moves.ts";
import { kindsOf, type PieceKind } from "./pieceKind.ts";
import { PlanCanvas } from "./planCanvas.ts";
import { SelectedPiece } from "./SelectedPiece.tsx";
import { isBesideLarger, stockLayout, tableBox } from "./stockLayout.ts";
import { TapePair } from "./tapePair.ts";
import { usePieceHand } from "./usePieceHand.ts";

/** Narrower than this the cloth turns upright, px. */
const NARROW = 640;
/** What a sheet of A4 or Letter has room for between its margins, px. */
const PAPER = { width: 640, height: 520 };

/** The cloth with its plan, between two tape measures; moved and zoomed by hand, wheel or keys. */
export function LayTable({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const language = useLanguage();
  const { system } = useLengths().units;
  const tapeUnits = useMemo(() => ({ system, language }), [system, language]);
  const { problem, material } = lay.job;
  const host = useRef<HTMLDivElement>(null);
  const canvas = useRef<PlanCanvas | null>(null);
  const tapeHost = useRef<HTMLDivElement>(null);
  const tapes = useRef<TapePair | null>(null);
  const live = useRef<Frame>({ scale: 0.5, originX: 0, originY: 0, upright: false });
  const isOwnView = useRef(false);
  // Told by the browser: asking for it would make it lay the plan out once more.
  const size = useRef<ScreenSize | null>(null);
  const zoomButtons = useRef<HTMLDivElement>(null);
  const buttons = useRef<Buttons | null>(null);
  // Settled with the first plan in a view: nothing changes its place while better plans come.
  const aside = useRef<{ readonly problem: LayProblem; readonly isBeside: boolean } | null>(null);
  const stocks = useMemo(() => {
    if (aside.current?.problem !== problem && lay.plan !== null) {
      // Before it is laid out, the view is known to be as wide as the window and two thirds as high.
      const known = host.current === null ? null : (size.current ?? sizeOf(host.current));
      const { width, height } = known ?? { width: innerWidth, height: (innerHeight * 2) / 3 };
      const aspect = width < NARROW ? height / width : width / height;
      aside.current = { problem, isBeside: height > 0 && isBesideLarger(problem, lay.plan, aspect) };
    }
    return stockLayout(problem, lay.plan, aside.current?.isBeside ?? false);
  }, [problem, lay.plan]);
  const kinds = useMemo(() => kindsOf(project, language), [project, language]);
  const hand = usePieceHand({
    lay: () => lay,
    stocks: () => stocks,
    canvas: () => canvas.current,
    frame: () => live.current,
  });
  const selected = useStore(hand.state, (state) => state.selected);
  const names = useMemo(() => pieceNames(kinds, problem, texts), [kinds, problem, texts]);
  const look = (next: Frame) => {
    live.current = next;
    isOwnView.current = true;
    canvas.current?.look(next);
    tapes.current?.look(next);
  };
  const glide = (next: Frame) => {
    live.current = next;
    isOwnView.current = true;
    canvas.current?.glide(next);
    tapes.current?.look(next);
  };
  const showAll = () => {
    const seen = size.current ?? sizeOf(host.current);
    buttons.current ??= buttonsOf(host.current, zoomButtons.current);
    look(clearFrame(tableBox(stocks), seen, seen.width < NARROW, buttons.current));
    isOwnView.current = false;
  };
  const zoom = (factor: number) => {
    const { width, height } = sizeOf(host.current);
    look(zoomFrame(live.current, factor, width / 2, height / 2));
  };

  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    // While nothing is drawn in it yet, asking costs little.
    size.current = sizeOf(element);
    buttons.current = buttonsOf(element, zoomButtons.current);
    const drawn = new PlanCanvas(element);
    canvas.current = drawn;
    const pair = new TapePair(tapeHost.current!, tapeUnits);
    tapes.current = pair;
    pair.fit(size.current.width, size.current.height);
    drawn.element.setAttribute("role", "group");
    const deaf = listenToHands(element, {
      frame: () => live.current,
      look: glide,
      rest: () => canvas.current?.look(live.current),
      take: hand.take,
      carry: hand.carry,
      drop: hand.drop,
      touchTable: () => hand.select(null),
    });
    return () => {
      deaf();
      drawn.remove();
      canvas.current = null;
      pair.remove();
      tapes.current = null;
    };
  }, [hand]);

  const grain = grainArrow(material);
  useEffect(() => {
    const drawn = canvas.current;
    if (drawn === null) return;
    drawn.element.setAttribute("aria-label", texts.lay.plan(material.name));
    drawn.draw({
      stocks,
      kinds,
      placements: lay.plan?.placements ?? [],
      pinned: pinnedKeys(problem),
      grain,
      pattern: problem.pattern,
      nameOf: names,
    });
    hand.show();
  }, [hand, stocks, kinds, lay.plan, problem, grain, names, material.name, texts]);
  useEffect(() => canvas.current?.choose(selected), [selected]);
  useEffect(() => tapes.current?.divide(tapeUnits), [tapeUnits]);
  // A plan that takes another room on the table is shown whole again, unless the person chose a view.
  const room = JSON.stringify(tableBox(stocks));
  useEffect(() => {
    if (isOwnView.current) canvas.current?.look(live.current);
    else showAll();
  }, [room]);
  const showAllNow = useRef(showAll);
  showAllNow.current = showAll;
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      size.current = sizeOf(element);
      tapes.current?.fit(size.current.width, size.current.height);
      buttons.current = buttonsOf(element, zoomButtons.current);
      if (!isOwnView.current) showAllNow.current();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  // Paper is narrower than most screens: the whole plan is fitted on it, and the person's view comes back after.
  const lookOnPaper = useRef(() => {});
  lookOnPaper.current = () => {
    const height = Math.min(PAPER.height, sizeOf(host.current).height);
    canvas.current?.look(fitFrame(tableBox(stocks), { width: PAPER.width, height }, false));
  };
  useEffect(() => {
    const before = () => lookOnPaper.current();
    const after = () => canvas.current?.look(live.current);
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
    };
  }, []);

  const onKeyDown = (event: KeyboardEvent) => {
    if (hand.onKey(event)) return;
    const pans: Record<string, readonly [number, number]> = {
      ArrowLeft: [60, 0],
      ArrowRight: [-60, 0],
      ArrowUp: [0, 60],
      ArrowDown: [0, -60],
    };
    const pan = pans[event.key];
    if (event.key === "+" || event.key === "=") zoom(1.25);
    else if (event.key === "-") zoom(0.8);
    else if (event.key === "0") showAll();
    else if (pan !== undefined) look(panFrame(live.current, ...pan));
    else return;
    event.preventDefault();
  };

  return (
    <div class="lay-table">
      <div
        class="lay-view"
        ref={host}
        role="application"
        aria-label={texts.lay.plan(material.name)}
        aria-describedby="lay-keys"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan takes the arrow keys
        tabIndex={0}
        onKeyDown={onKeyDown}
      />
      <div class="tapes not-on-paper" ref={tapeHost} aria-hidden="true" />
      <p id="lay-keys" class="only-read">
        {texts.lay.keys}
      </p>
      <div class="lay-zoom not-on-paper" ref={zoomButtons}>
        <button type="button" class="press" aria-label={texts.lay.zoomIn} onClick={() => zoom(1.4)}>
          <Icon name="plus" />
        </button>
        <button type="button" class="press" aria-label={texts.lay.zoomOut} onClick={() => zoom(1 / 1.4)}>
          <Icon name="minus" />
        </button>
        <button type="button" class="press" aria-label={texts.lay.zoomAll} onClick={showAll}>
          <Icon name="whole" />
        </button>
      </div>
      <SelectedPiece hand={hand} lay={lay} nameOf={names} />
    </div>
  );
}

/** What a screen reader says of a piece, and the page of the selected one. */
function pieceNames(kinds: ReadonlyMap<string, PieceKind>, problem: LayProblem, texts: Texts) {
  const pinned = pinnedKeys(problem);
  return (placement: StockPlacement): string => {
    const kind = kinds.get(placement.pieceId);
    if (kind === undefined) return placement.pieceId;
    const number = kind.count > 1 ? texts.lay.numberOf(placement.copy + 1, kind.count) : "";
    return texts.lay.pieceName(`${kind.name}${number}`, kind.detail, pinned.has(keyOf(placement)));
  };
}

function sizeOf(element: HTMLElement | null): ScreenSize {
  return { width: element?.clientWidth ?? 800, height: element?.clientHeight ?? 500 };
}

/** Where the zoom buttons lie over the view. */
function buttonsOf(view: HTMLElement | null, group: HTMLElement | null): Buttons {
  const [around, own] = [view?.getBoundingClientRect(), group?.getBoundingClientRect()];
  if (around === undefined || own === undefined) return { corner: "top-right", width: 0, height: 0 };
  const width = around.right - own.left;
  return own.width > own.height
    ? { corner: "bottom-right", width, height: around.bottom - own.top }
    : { corner: "top-right", width, height: own.bottom - around.top };
}
