import { useId, useLayoutEffect, useRef, useState } from "preact/hooks";
import { describeProblem } from "../../core/problems/describeProblem.ts";
import type { Problem, Result } from "../../core/problems/problem.ts";
import { unbroken } from "../../core/units/numberWords.ts";
import { SENTENCES } from "../../core/words/words.ts";
import { useNamed } from "../state/derived.ts";
import { useRefusal } from "../state/workbench.ts";
import { useLanguage } from "../texts/texts.ts";
import { useSayLength } from "./units.ts";

/** What every blank has. `label` names it for screen readers and, when `labelled`, above the box. */
export interface BlankProps {
  readonly label: string;
  /** Path of the value in the project; names the field in problems and joins keystrokes into one step. */
  readonly path: string;
  /** Above the box instead of inside a sentence. */
  readonly labelled?: boolean;
  /** Problems found elsewhere that concern this field. */
  readonly problems?: readonly Problem[];
}

interface TypedProps<T> extends BlankProps {
  /** Exact text of the stored value, for editing. */
  readonly written: string;
  /** Text of the stored value as it is read; `written` when absent. */
  readonly shown?: string;
  readonly read: (text: string) => Result<T>;
  /** Called with every text that can be read, while it is typed. `joinKey` makes one step of one visit. */
  readonly onValue: (value: T, joinKey: string) => void;
  readonly inputMode?: "text" | "decimal" | "numeric";
  /** Spoken of in mm whatever the project's unit: thicknesses. */
  readonly fine?: boolean;
  readonly placeholder?: string;
}

let visits = 0;

/**
 * A blank that is typed into. A text that cannot be read, or a value that the project cannot have, stays in the box with
 * the reason under it, and the stored value stays as it was; Escape brings that value back.
 */
export function TypedBlank<T>(props: TypedProps<T>) {
  const [draft, setDraft] = useState<string | null>(null);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const [focused, setFocused] = useState(false);
  const visit = useRef("");
  const patience = useRef(0);
  const box = useRef<HTMLInputElement>(null);
  const id = useId();
  const takeRefusal = useRefusal();
  // At once, so that the first letter typed replaces the old text however fast it comes.
  useLayoutEffect(() => {
    if (focused && box.current !== null) selectAll(box.current);
  }, [focused]);
  const read = (text: string) => {
    const result = props.read(text);
    if (!result.ok) return result.problems;
    props.onValue(result.value, visit.current);
    return takeRefusal();
  };
  const onInput = (text: string) => {
    setDraft(text);
    clearTimeout(patience.current);
    const problems = read(text);
    if (problems.length === 0) setRefused([]);
    // Half a word is no mistake yet: the reason comes when the typing rests.
    else patience.current = window.setTimeout(() => setRefused(problems), 900);
  };
  const settle = () => {
    clearTimeout(patience.current);
    if (draft === null) return;
    const problems = read(draft);
    setRefused(problems);
    if (problems.length === 0) setDraft(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") settle();
    if (event.key !== "Escape" || draft === null) return;
    event.stopPropagation();
    clearTimeout(patience.current);
    setDraft(null);
    setRefused([]);
  };
  // A field has one line: what is copied out of it has plain blanks.
  const shown = (props.shown ?? props.written).replaceAll("\u00a0", " ");
  const problems = refused.length > 0 ? refused : (props.problems ?? []);
  const input = (
    <input
      id={id}
      ref={box}
      type="text"
      autocomplete="off"
      spellcheck={false}
      inputMode={props.inputMode ?? "text"}
      placeholder={props.placeholder}
      aria-label={props.labelled ? undefined : props.label}
      aria-invalid={problems.length > 0}
      aria-describedby={problems.length > 0 ? `${id}-why` : undefined}
      data-path={props.path}
      value={draft ?? (focused ? props.written : shown)}
      size={Math.max(3, (draft ?? shown).length)}
      onFocus={(event) => {
        visit.current = `${props.path}@${++visits}`;
        setFocused(true);
        // And again once a mouse has set its caret, unless something was typed meanwhile.
        const own = event.currentTarget;
        requestAnimationFrame(() => own.value === props.written && selectAll(own));
      }}
      onBlur={() => {
        setFocused(false);
        settle();
      }}
      onInput={(event) => onInput(event.currentTarget.value)}
      onKeyDown={onKeyDown}
    />
  );
  return (
    <span class={props.labelled ? "labelled" : "blank"}>
      {props.labelled && <label for={id}>{props.label}</label>}
      {input}
      <Refusal id={`${id}-why`} problems={problems} inMm={props.fine ?? false} />
    </span>
  );
}

/** Selects what is in a field while the keyboard is on it: selecting elsewhere would fetch the keyboard back there. */
function selectAll(field: HTMLInputElement): void {
  if (document.activeElement === field) field.select();
}

/** The reasons under a field, each with its next step; announced when they come. Away from the field each says where. */
export function Refusal(props: { id?: string; problems: readonly Problem[]; isAway?: boolean; inMm?: boolean }) {
  const { id, problems, isAway = false } = props;
  const say = useSayLength(props.inMm);
  const sentences = SENTENCES[useLanguage()];
  const named = useNamed();
  return (
    <span id={id} role="status">
      {problems.map(named).map((problem) => {
        const { path, what, remedy } = describeProblem(problem, sentences, say);
        return (
          <span class="refusal" key={path + what}>
            {isAway && path !== "" && <code>{path}: </code>}
            {unbroken(`${what} ${remedy}`)}
          </span>
        );
      })}
    </span>
  );
}
