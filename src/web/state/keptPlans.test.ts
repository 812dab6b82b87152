import { expect, test } from "vitest";
import { jobOf } from "../../core/job/projectJob.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { arrange } from "../../core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../core/lay/search/breath.ts";
import type { Project } from "../../core/project/project.ts";
import type { FoundPlan, NamedPlan, PlanStore } from "../storage/planStore.ts";
import { present } from "./history.ts";
import { createKeptPlans } from "./keptPlans.ts";
import type { LayBoard, LayState, Lays } from "./layBoard.ts";
import { plansFromFile } from "./plansInFile.ts";
import { problemSignature } from "./problemSignature.ts";
import { projectCodec } from "./projectCodec.ts";
import { createSession } from "./session.ts";
import { createStore } from "./store.ts";

function smallProject(along = 300): Project {
  const shape = { kind: "rectangle", along, across: 200 };
  const stock = [{ kind: "roll", id: "roll", width: 1000 }];
  const text = JSON.stringify({
    ...{ laywright: 1, name: "Day bags" },
    materials: [{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.6, stock }],
    panels: [{ id: "body", name: "Body", material: "canvas", count: 5, shape }],
  });
  const read = projectCodec.read(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** Plans as a browser's storage would hold them. */
function memory(): PlanStore & { readonly found: Map<string, FoundPlan>; readonly named: Map<string, NamedPlan> } {
  const found = new Map<string, FoundPlan>();
  const named = new Map<string, NamedPlan>();
  return {
    ...{ found, named },
    load: async () => ({ found: [...found.values()], named: [...named.values()] }),
    keepFound: async (_id, each) => void found.set(each.signature, each),
    keepNamed: async (_id, each) => void named.set(each.id, each),
    letGo: async (_id, id) => void named.delete(id),
    removeProject: async () => {},
  };
}

/** One window on a project: its session, its kept plans, and a board that lays the first plan that comes. */
function openWindow(project: Project) {
  const around = {
    store: null,
    journal: { write: () => {}, read: () => null, newest: () => null, clear: () => {} },
    channel: { postMessage: () => {}, onmessage: null },
    newId: () => crypto.randomUUID(),
    now: () => 0,
  };
  const session = createSession<Project>(project, "started", projectCodec, around);
  const lays = createStore<Lays>(new Map());
  const patch = (id: string, part: Partial<LayState>) => {
    const state = lays.get().get(id);
    if (state !== undefined) lays.set(new Map(lays.get()).set(id, { ...state, ...part }));
  };
  const follow = () => {
    for (const job of jobOf(present(session.state.get().history), "en").lays) {
      const signature = problemSignature(job.problem);
      if (lays.get().get(job.material.id)?.signature === signature) continue;
      const engines = (part: Parameters<typeof chooseEngines>[0]) => chooseEngines(part, "free");
      const plan = inOneGo(arrange(job.problem, engines, { evaluations: 1 }, 1)) as LayPlan;
      const state = {
        ...{ job, signature, plan, finding: "rested" as const, evaluations: 1, betterAt: 1 },
        ...{ rules: null, choice: null },
      };
      lays.set(new Map(lays.get()).set(job.material.id, state));
    }
  };
  const recalled: FoundPlan[] = [];
  const board = {
    lays,
    hold: (id: string) => patch(id, { finding: "held" }),
    resume: (id: string) => patch(id, { finding: "finding" }),
    goBackTo: (id: string, plan: LayPlan) => patch(id, { plan, finding: "held" }),
    recall: (all: readonly FoundPlan[]) => recalled.push(...all),
  } as unknown as LayBoard;
  const store = memory();
  const kept = createKeptPlans(session, () => board, store);
  follow();
  session.state.subscribe(follow);
  return { session, lays, store, recalled, ...kept };
}

test("a plan is kept once, held, renamed and let go", () => {
  const { plans, lays } = openWindow(smallProject());
  plans.keep("canvas", "Printed", 300);
  plans.keep("canvas", "Printed again", 300);
  expect(plans.named.get().map(({ name }) => name)).toEqual(["Printed"]);
  expect(lays.get().get("canvas")?.finding).toBe("held");
  const { id } = plans.named.get()[0]!;
  plans.rename(id, "Monday");
  expect(plans.named.get()[0]?.name).toBe("Monday");
  plans.letGo(id);
  expect(plans.named.get()).toEqual([]);
  expect(lays.get().get("canvas")?.finding).toBe("finding");
});

test("the file takes kept plans along: opened elsewhere, the held one is what is laid", async () => {
  const here = openWindow(smallProject());
  here.plans.keep("canvas", "Printed", 300);
  const laid = here.lays.get().get("canvas")!;
  const text = projectCodec.write(here.plans.withPlans(present(here.session.state.get().history)));
  const read = projectCodec.read(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { plans: inFile, ...project } = read.value;
  expect(inFile?.map(({ name, held }) => [name, held])).toEqual([["Printed", true]]);
  const elsewhere = openWindow(project);
  elsewhere.plans.bring(plansFromFile(project, inFile ?? [], () => crypto.randomUUID()));
  await elsewhere.turnTo(elsewhere.session.state.get().id);
  expect(elsewhere.recalled).toMatchObject([{ signature: laid.signature, isHeld: true }]);
  expect(elsewhere.recalled[0]?.plan.placements).toEqual(laid.plan?.placements);
  expect(checkPlan(laid.job.problem, elsewhere.recalled[0]!.plan)).toEqual([]);
  expect(elsewhere.plans.named.get().map(({ name }) => name)).toEqual(["Printed"]);
});

test("a plan of the project as it was earlier goes back to it also from a file", async () => {
  const here = openWindow(smallProject());
  here.plans.keep("canvas", "Small", 300);
  here.session.change(smallProject(400), "longer");
  const text = projectCodec.write(here.plans.withPlans(present(here.session.state.get().history)));
  const read = projectCodec.read(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { plans: inFile, ...project } = read.value;
  expect(inFile?.[0]?.held).toBe(false);
  const elsewhere = openWindow(project);
  elsewhere.plans.bring(plansFromFile(project, inFile ?? [], () => crypto.randomUUID()));
  await elsewhere.turnTo(elsewhere.session.state.get().id);
  elsewhere.plans.goBackTo(elsewhere.plans.named.get()[0]!.id, "back");
  const { shape } = present(elsewhere.session.state.get().history).panels[0]!;
  expect(JSON.stringify(shape)).toContain("300");
  expect(elsewhere.lays.get().get("canvas")?.finding).toBe("held");
});

test("a plan whose cloth or project of then cannot be read is left out", () => {
  const project = smallProject();
  const rest = { savedAt: "2026-01-01T00:00:00Z", held: true, length: 1, placements: [], uses: [], unplaced: [] };
  const bad = { ...rest, name: "Bad", materialId: "canvas", project: "{" };
  const gone = { ...rest, name: "Gone", materialId: "felt" };
  expect(plansFromFile(project, [bad, gone], () => "id")).toEqual([]);
});
