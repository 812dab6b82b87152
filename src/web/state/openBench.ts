import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";
import { browserPool } from "../../worker/browserPool.ts";
import { chooseStock } from "../shop/chooseStock.ts";
import { openCupboardStore } from "../storage/cupboardStore.ts";
import { browserJournal } from "../storage/journal.ts";
import { openMaterialLibrary } from "../storage/materialLibrary.ts";
import { openPlanStore } from "../storage/planStore.ts";
import { openProjectStore } from "../storage/projectStore.ts";
import { openSwatchPhotos } from "../storage/swatchPhotos.ts";
import { CATALOGUES } from "../texts/texts.ts";
import { emptyProject } from "./emptyProject.ts";
import { present } from "./history.ts";
import { createKeptPlans } from "./keptPlans.ts";
import { createLayBoard } from "./lays.ts";
import { projectCodec } from "./projectCodec.ts";
import { watchRoute } from "./route.ts";
import { createSession, type Session } from "./session.ts";
import { openSettings, wearSettings } from "./settings.ts";
import { createStore } from "./store.ts";
import type { Workbench } from "./workbench.ts";

/** The first change of the first project, made in the last moments of a window. */
function bringBackNew(session: Session<Project>): void {
  const lost = browserJournal.newest();
  const read = lost === null ? null : projectCodec.read(lost.text);
  if (lost === null || read === null) return;
  browserJournal.clear(lost.id);
  if (read.ok) session.change(read.value, lost.label);
}

/** More workers than this make a small job no faster and a laptop hot. */
const MOST_WORKERS = 4;

/** Lays out everything the page works with: the last project of this device, or a new one. */
export async function openBench(): Promise<Workbench> {
  const settings = openSettings();
  wearSettings(settings);
  const texts = CATALOGUES[settings.get().language];
  const store = await openProjectStore();
  const system = /^en-(US|LR|MM)/u.test(navigator.language) ? "inches" : "metric";
  const session = createSession(
    emptyProject(texts.project.newName, texts.cloth.firstName, system),
    texts.project.changes.started,
    projectCodec,
    {
      store,
      journal: browserJournal,
      channel: new BroadcastChannel("laywright"),
      newId: () => crypto.randomUUID(),
      now: () => Date.now(),
    },
  );
  const kept = settings.get().projectId;
  const known = (await store?.list()) ?? [];
  const last = known.find(({ id }) => id === kept) ?? known[0];
  if (last !== undefined) await session.open(last.id);
  else bringBackNew(session);
  const remember = () => {
    const { id } = session.state.get();
    if (settings.get().projectId !== id) settings.update((now) => ({ ...now, projectId: id }));
  };
  session.state.subscribe(remember);
  addEventListener("beforeunload", (event) => {
    const { keeping, history } = session.state.get();
    if (keeping !== "kept" && history.steps.length > 1) event.preventDefault();
  });
  const pools = () => ({
    first: browserPool(1),
    more: browserPool(Math.min(MOST_WORKERS, Math.max(1, navigator.hardwareConcurrency - 1))),
  });
  const planStore = await openPlanStore();
  const { board, plans, turnTo } = createKeptPlans(
    session,
    (keep) => createLayBoard(pools, () => performance.now(), keep, chooseStock),
    planStore,
  );
  // Plans that were found before come first: nothing is searched that is known.
  await turnTo(session.state.get().id);
  let turnedTo = session.state.get().id;
  session.state.subscribe(() => {
    const { id } = session.state.get();
    if (id === turnedTo) return;
    turnedTo = id;
    void turnTo(id);
  });
  const follow = () => board.follow(present(session.state.get().history), settings.get().language);
  session.state.subscribe(follow);
  follow();
  return {
    session,
    settings,
    route: watchRoute(),
    board,
    plans,
    library: openMaterialLibrary(),
    cupboard: openCupboardStore(new BroadcastChannel("laywright-cupboard")),
    swatches: openSwatchPhotos(),
    refused: createStore<readonly Problem[]>([]),
  };
}
