import fc from "fast-check";
import { expect, test } from "vitest";
import { type History, present, record, redo, redoLabel, startHistory, undo, undoLabel } from "./history.ts";

/** The slow twin: two stacks, as undo is told in textbooks. */
interface Model {
  past: { value: object; label: string; joinKey: string | null }[];
  future: { value: object; label: string; joinKey: string | null }[];
}

class Change implements fc.Command<Model, { history: History<object> }> {
  readonly label: string;
  readonly joinKey: string | null;
  constructor(label: string, joinKey: string | null) {
    this.label = label;
    this.joinKey = joinKey;
  }
  check = () => true;
  run(model: Model, real: { history: History<object> }) {
    const value = { label: this.label };
    const top = model.past.at(-1)!;
    const joins =
      this.joinKey !== null && top.joinKey === this.joinKey && model.future.length === 0 && model.past.length > 1;
    if (joins) model.past.pop();
    model.past.push({ value, label: this.label, joinKey: this.joinKey });
    model.future = [];
    real.history = record(real.history, value, this.label, this.joinKey);
    agree(model, real.history);
  }
  toString = () => `change(${this.label}, ${this.joinKey})`;
}

class SameAgain implements fc.Command<Model, { history: History<object> }> {
  check = () => true;
  run(model: Model, real: { history: History<object> }) {
    real.history = record(real.history, present(real.history), "nothing");
    agree(model, real.history);
  }
  toString = () => "same value again";
}

class Undo implements fc.Command<Model, { history: History<object> }> {
  check = () => true;
  run(model: Model, real: { history: History<object> }) {
    if (model.past.length > 1) model.future.push(model.past.pop()!);
    real.history = undo(real.history);
    agree(model, real.history);
  }
  toString = () => "undo";
}

class Redo implements fc.Command<Model, { history: History<object> }> {
  check = () => true;
  run(model: Model, real: { history: History<object> }) {
    const next = model.future.pop();
    if (next !== undefined) model.past.push(next);
    real.history = redo(real.history);
    agree(model, real.history);
  }
  toString = () => "redo";
}

function agree(model: Model, history: History<object>) {
  expect(present(history)).toBe(model.past.at(-1)!.value);
  expect(undoLabel(history)).toBe(model.past.length > 1 ? model.past.at(-1)!.label : null);
  expect(redoLabel(history)).toBe(model.future.at(-1)?.label ?? null);
  expect(history.steps.length).toBe(model.past.length + model.future.length);
}

test("history agrees with two stacks under any commands", () => {
  const changes = fc
    .tuple(fc.string(), fc.option(fc.constantFrom("width", "name"), { nil: null }))
    .map(([label, key]) => new Change(label, key));
  const commands = fc.commands(
    [changes, fc.constant(new Undo()), fc.constant(new Redo()), fc.constant(new SameAgain())],
    { maxCommands: 60 },
  );
  fc.assert(
    fc.property(commands, (run) => {
      const first = { label: "first" };
      const setup = () => ({
        model: { past: [{ value: first, label: "start", joinKey: null }], future: [] } as Model,
        real: { history: startHistory<object>(first, "start") },
      });
      fc.modelRun(setup, run);
    }),
    { numRuns: 300 },
  );
});

test("as many undos as changes lead back to the start, as many redos to the end", () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 500 }), (values) => {
      let history = startHistory<{ n: number }>({ n: 0 }, "start");
      const first = present(history);
      for (const n of values) history = record(history, { n }, "set");
      const last = present(history);
      for (let i = 0; i < values.length; i++) history = undo(history);
      expect(present(history)).toBe(first);
      for (let i = 0; i < values.length; i++) history = redo(history);
      expect(present(history)).toBe(last);
    }),
    { numRuns: 50 },
  );
});
