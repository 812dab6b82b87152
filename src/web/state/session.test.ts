import { expect, test } from "vitest";
import { ok } from "../../core/problems/problem.ts";
import type { Journal, JournalEntry } from "../storage/journal.ts";
import type {
  LoadedProject,
  ProjectStore,
  SaveOutcome,
  StoredProject,
  StoredStep,
} from "../storage/projectStore.ts";
import { present } from "./history.ts";
import { createSession, type Session } from "./session.ts";

type Doc = { readonly text: string };
const codec = {
  write: (doc: Doc) => JSON.stringify(doc),
  read: (text: string) => ok(JSON.parse(text) as Doc),
  nameOf: (doc: Doc) => doc.text,
  renamed: (_doc: Doc, text: string): Doc => ({ text }),
};

/** A device in memory with the rules of the real one: revisions, steps by number, and a limit on saves. */
function memoryDevice() {
  const projects = new Map<string, StoredProject>();
  const steps = new Map<string, StoredStep[]>();
  const windows: { onmessage: ((event: MessageEvent) => void) | null }[] = [];
  let refusing: "full" | "refused" | null = null;
  let isDead = false;
  const entries = new Map<string, JournalEntry>();
  const journal: Journal = {
    write: (entry) => void entries.set(entry.id, entry),
    clear: (id) => void entries.delete(id),
    read: (id) => entries.get(id) ?? null,
    newest: () => [...entries.values()].find(({ revision }) => revision === null) ?? null,
  };
  const store: ProjectStore = {
    list: async () => [...projects.values()],
    load: async (id): Promise<LoadedProject | null> => {
      const project = projects.get(id);
      return project === undefined ? null : { project, steps: steps.get(id)! };
    },
    save: async (save): Promise<SaveOutcome> => {
      if (isDead) return new Promise(() => {});
      if (refusing !== null) return { ok: false, reason: refusing };
      const known = projects.get(save.id);
      if ((known?.revision ?? null) !== save.expectedRevision) return { ok: false, reason: "elsewhere" };
      const all = [...(steps.get(save.id) ?? []).slice(0, save.from), ...save.steps];
      steps.set(save.id, all);
      const { id, name, at, savedAt } = save;
      const project = {
        id,
        name,
        at,
        savedAt,
        revision: (known?.revision ?? 0) + 1,
        first: 0,
        last: all.length - 1,
      };
      projects.set(id, project);
      return { ok: true, project };
    },
    remove: async (id) => void projects.delete(id),
  };
  let ids = 0;
  const openWindow = (text = "new"): Session<Doc> => {
    const channel = {
      onmessage: null as ((event: MessageEvent) => void) | null,
      postMessage: (data: unknown) => {
        for (const other of windows) if (other !== channel) other.onmessage?.({ data } as MessageEvent);
      },
    };
    windows.push(channel);
    return createSession<Doc>({ text }, "start", codec, {
      store,
      journal,
      channel,
      newId: () => `p${ids++}`,
      now: () => 0,
    });
  };
  return {
    projects,
    entries,
    openWindow,
    /** Windows that are open stop in the middle of what they do; others are as new. */
    killWindows: () => {
      isDead = true;
      windows.length = 0;
    },
    wake: () => {
      isDead = false;
    },
    refuse: (reason: typeof refusing) => {
      refusing = reason;
    },
  };
}

const textOf = (session: Session<Doc>) => present(session.state.get().history).text;

test("a reopened project has its undo and redo steps", async () => {
  const device = memoryDevice();
  const first = device.openWindow();
  first.change({ text: "a" }, "a");
  first.change({ text: "b" }, "b");
  first.undo();
  await first.settled();
  const second = device.openWindow();
  expect(await second.open(first.state.get().id)).toEqual([]);
  expect(textOf(second)).toBe("a");
  second.redo();
  expect(textOf(second)).toBe("b");
  second.undo();
  second.undo();
  expect(textOf(second)).toBe("new");
});

test("a change made in the moment a window is killed is there again", async () => {
  const device = memoryDevice();
  const first = device.openWindow();
  first.change({ text: "a" }, "a");
  await first.settled();
  expect(device.entries.size).toBe(0);
  device.killWindows();
  first.change({ text: "ab" }, "b");
  device.wake();
  const second = device.openWindow();
  await second.open(first.state.get().id);
  expect(textOf(second)).toBe("ab");
  await second.settled();
  expect([...device.projects.values()][0]!.name).toBe("ab");
  expect(device.entries.size).toBe(0);
  second.undo();
  expect(textOf(second)).toBe("a");
});

test("a project that goes on by itself, and one that is started, have names of their own", async () => {
  const { device, one, two } = await twoWindows();
  one.change({ text: "same" }, "one");
  two.change({ text: "same" }, "two");
  await one.settled();
  await two.settled();
  one.start({ text: "same" }, "started");
  await one.settled();
  const names = [...device.projects.values()].map(({ name }) => name);
  expect(names).toHaveLength(3);
  expect(new Set(names).size).toBe(3);
});

test("typing in one field is one step", async () => {
  const session = memoryDevice().openWindow();
  for (const text of ["1", "12", "120"]) session.change({ text }, "width", "width");
  session.undo();
  expect(textOf(session)).toBe("new");
});

/** One project open in two windows, with "a" kept. */
async function twoWindows() {
  const device = memoryDevice();
  const one = device.openWindow();
  one.change({ text: "a" }, "a");
  await one.settled();
  const two = device.openWindow();
  await two.open(one.state.get().id);
  return { device, one, two };
}

test("an idle window follows the other one", async () => {
  const { one, two } = await twoWindows();
  one.change({ text: "b" }, "b");
  await one.settled();
  await two.settled();
  expect(textOf(two)).toBe("b");
  expect(two.state.get().notice).toBe("taken-over");
  two.undo();
  expect(textOf(two)).toBe("a");
});

test("two windows that change at once both keep their work", async () => {
  const { device, one, two } = await twoWindows();
  one.change({ text: "from one" }, "one");
  two.change({ text: "from two" }, "two");
  await one.settled();
  await two.settled();
  expect([...device.projects.values()].map((project) => project.name).sort()).toEqual(["from one", "from two"]);
  expect([one, two].filter((session) => session.state.get().notice === "split-off")).toHaveLength(1);
});

test("a full device is told, and the work is kept once there is room again", async () => {
  const device = memoryDevice();
  const session = device.openWindow();
  device.refuse("full");
  session.change({ text: "a" }, "a");
  await session.settled();
  expect(session.state.get().keeping).toBe("full");
  expect(textOf(session)).toBe("a");
  device.refuse(null);
  session.retry();
  await session.settled();
  expect(session.state.get().keeping).toBe("kept");
  expect([...device.projects.values()][0]!.name).toBe("a");
});

test("kept is told only when the newest change is stored, however fast changes come", async () => {
  const device = memoryDevice();
  const session = device.openWindow();
  let wasSaving = false;
  let toldEarly = 0;
  session.state.subscribe(() => {
    const { keeping, history, id } = session.state.get();
    wasSaving ||= keeping === "saving";
    // Before the first save begins nothing new has been told yet.
    if (wasSaving && keeping === "kept" && device.projects.get(id)?.at !== history.at) toldEarly++;
  });
  session.change({ text: "a" }, "a");
  await Promise.resolve();
  // While the first one is on its way.
  session.change({ text: "b" }, "b");
  await session.settled();
  expect(wasSaving).toBe(true);
  expect(toldEarly).toBe(0);
  expect(session.state.get().keeping).toBe("kept");
  expect(device.projects.get(session.state.get().id)?.at).toBe(2);
});
