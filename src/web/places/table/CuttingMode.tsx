import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import { useAnswer } from "../../exports/askExport.ts";
import { Icon } from "../../parts/Icon.tsx";
import { useAwake } from "../../parts/useAwake.ts";
import { type CuttingProgress, readProgress, writeProgress } from "../../state/cuttingProgress.ts";
import { routeHash } from "../../state/route.ts";
import { useStore } from "../../state/store.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { kindsOf } from "../lay/pieceKind.ts";
import { CuttingPicture } from "./CuttingPicture.tsx";
import { type CuttingStep, cuttingSteps } from "./cuttingSteps.ts";
import type { StackInput } from "./tableParts.ts";

/** One cut or one piece at a time, as large as the screen: for the phone or tablet beside the cutting mat. */
export function CuttingMode({ input, onChoose }: { input: StackInput; onChoose: (materialId: string) => void }) {
  const texts = useTexts();
  const words = texts.table.cutting;
  const awake = useAwake();
  const room = useRef<HTMLElement>(null);
  const { shown, lays } = input;
  // The page behind is covered: it neither scrolls nor takes the keyboard.
  useEffect(() => {
    document.documentElement.classList.add("is-cutting");
    room.current?.focus();
    return () => document.documentElement.classList.remove("is-cutting");
  }, []);
  return (
    <section ref={room} class="cutting" aria-label={words.label} tabIndex={-1}>
      <div class="row cutting-head">
        <a class="press plain" href={routeHash("table", "ruler")} aria-label={words.leave} title={words.leave}>
          <Icon name="close" />
        </a>
        {lays.length > 1 ? (
          <select
            aria-label={texts.cloth.swatches}
            value={shown?.material.id}
            onChange={(event) => onChoose(event.currentTarget.value)}
          >
            {lays.map(({ material }) => (
              <option key={material.id} value={material.id}>
                {material.name}
              </option>
            ))}
          </select>
        ) : (
          <strong>{shown?.material.name}</strong>
        )}
        <span class="soft small cutting-awake">{awake === "awake" ? words.awake : words.maySleep}</span>
      </div>
      {shown !== null && <CuttingSteps key={shown.material.id} input={input} lay={shown} />}
    </section>
  );
}

function CuttingSteps({ input, lay }: { input: StackInput; lay: LaidCloth }) {
  const texts = useTexts();
  const language = useLanguage();
  const { project, pieces } = input;
  const key = JSON.stringify([project.output.lengths, lay.plan.placements, language]);
  const answer = useAnswer({ kind: "ruler", project, pieces, language, lay }, key);
  const kinds = useMemo(() => kindsOf(project, language), [project, language]);
  const steps = useMemo(
    () => (answer.state === "ready" ? cuttingSteps(lay.plan, kinds, answer.value) : []),
    [answer, lay, kinds],
  );
  if (answer.state === "failed") return <p class="caution">{texts.table.failed}</p>;
  if (answer.state === "working") return <p class="soft cutting-wait">{texts.table.working}</p>;
  if (steps.length === 0) return <p class="cutting-wait">{texts.lay.nothingFits}</p>;
  return <Steps steps={steps} input={input} lay={lay} />;
}

function Steps({ steps, input, lay }: { steps: readonly CuttingStep[]; input: StackInput; lay: LaidCloth }) {
  const texts = useTexts();
  const words = texts.table.cutting;
  const { session } = useWorkbench();
  const place = `${useStore(session.state, ({ id }) => id)}/${lay.material.id}`;
  const plan = planKey(steps, lay);
  const [{ at, done }, setProgress] = useState(() => startAt(place, plan, steps.length));
  const [isOther, setOther] = useState(() => isOtherPlan(place, plan));
  const go = (next: { at: number; done: readonly number[] }) => {
    setOther(false);
    setProgress(next);
    writeProgress(place, { plan, ...next });
  };
  const step = (to: number) => go({ at: Math.min(steps.length, Math.max(0, to)), done });
  const next = () => go({ at: Math.min(steps.length, at + 1), done: [...new Set([...done, at])] });
  const tick = (i: number) => go({ at, done: done.includes(i) ? done.filter((each) => each !== i) : [...done, i] });
  useCuttingKeys({ next, back: () => step(at - 1) });
  const now = steps[at];
  const isWide = useMemo(() => matchMedia("(min-width: 60rem)").matches, []);
  return (
    <div class="cutting-body">
      <div class="cutting-now" aria-live="polite">
        <p class="cutting-count">{words.count(Math.min(at + 1, steps.length), steps.length)}</p>
        {isOther && <p class="caution">{words.otherPlan}</p>}
        {at === 0 && !isOther && <p class="soft small">{texts.table.sheet.caution}</p>}
        {now === undefined ? (
          <div class="stack">
            <p class="cutting-heading">{words.finished}</p>
            <button type="button" class="press" onClick={() => go({ at: 0, done: [] })}>
              {words.again}
            </button>
          </div>
        ) : (
          <>
            <p class={done.includes(at) ? "cutting-heading struck" : "cutting-heading"}>{now.heading}</p>
            {now.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
            <CuttingPicture step={now} done={done.map((i) => steps[i]?.piece ?? "")} input={input} lay={lay} />
          </>
        )}
      </div>
      <details class="cutting-list" open={isWide}>
        <summary>{words.all(done.length, steps.length)}</summary>
        <ol>
          {steps.map((each, i) => (
            <li key={each.key} class="row">
              <label class="tick">
                <input type="checkbox" checked={done.includes(i)} onChange={() => tick(i)} />
                <span class={done.includes(i) ? "struck" : undefined}>{each.heading}</span>
              </label>
              <button
                type="button"
                class="press plain"
                aria-label={words.goTo(i + 1, each.heading)}
                aria-current={i === at ? "step" : undefined}
                onClick={() => step(i)}
              >
                {i + 1}
              </button>
            </li>
          ))}
        </ol>
      </details>
      <div class="cutting-moves">
        <button type="button" class="press" disabled={at === 0} onClick={() => step(at - 1)}>
          {words.back}
        </button>
        <button type="button" class="press main" disabled={now === undefined} onClick={next}>
          {words.next}
        </button>
      </div>
    </div>
  );
}

/** Next and back by the keys of a keyboard, a pedal or a presenter; Escape leaves. */
function useCuttingKeys(moves: { next: () => void; back: () => void }): void {
  const latest = useRef(moves);
  latest.current = moves;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      const isPress = event.key === " " || event.key === "Enter";
      // A field, and a press on a button, mean what they always mean.
      if (target instanceof HTMLSelectElement || target instanceof HTMLInputElement) return;
      if (isPress && target instanceof Element && target.closest("button, a, summary") !== null) return;
      if (event.key === "ArrowRight" || event.key === "PageDown" || isPress) latest.current.next();
      else if (event.key === "ArrowLeft" || event.key === "PageUp") latest.current.back();
      else if (event.key === "Escape") location.hash = routeHash("table", "ruler");
      else return;
      event.preventDefault();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

/** Alike for plans with the same cuts at the same places. */
function planKey(steps: readonly CuttingStep[], { plan }: LaidCloth): string {
  const places = plan.placements.map(
    ({ pieceId, copy, x, y, turnDeg }) => `${pieceId}#${copy} ${x} ${y} ${turnDeg}`,
  );
  const text = [...steps.map(({ key }) => key), ...places.sort()].join("\n");
  let hash = 5381;
  for (let i = 0; i < text.length; i++) hash = (Math.imul(hash, 33) ^ text.charCodeAt(i)) >>> 0;
  return `${steps.length}-${hash.toString(36)}`;
}

function startAt(place: string, plan: string, count: number): Omit<CuttingProgress, "plan"> {
  const kept = readProgress(place);
  if (kept === null || kept.plan !== plan) return { at: 0, done: [] };
  return { at: Math.min(kept.at, count), done: kept.done.filter((i) => i < count) };
}

function isOtherPlan(place: string, plan: string): boolean {
  const kept = readProgress(place);
  return kept !== null && kept.plan !== plan && kept.done.length > 0;
}
