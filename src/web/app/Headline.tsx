import { useState } from "preact/hooks";
import { Icon } from "../parts/Icon.tsx";
import { redoLabel, undoLabel } from "../state/history.ts";
import { PLACES, routeHash } from "../state/route.ts";
import { useStore } from "../state/store.ts";
import { unitsOf, useChange, useProject, useWorkbench, withUnits } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";
import { LookDialog } from "./LookDialog.tsx";
import { ProjectDialog } from "./ProjectDialog.tsx";

/** The line of words on top: the project, the four places, undo and redo, units, look. */
export function Headline({ onFile }: { onFile: (file: File) => void }) {
  const bench = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const place = useStore(bench.route, (route) => route.place);
  const keeping = useStore(bench.session.state, (state) => state.keeping);
  const [sheet, setSheet] = useState<"project" | "look" | null>(null);
  const close = () => setSheet(null);
  return (
    <header class="headline not-on-paper">
      <a class="skip press" href={routeHash(place)} onClick={focusPlace}>
        {texts.shell.skip}
      </a>
      <div class="project">
        <button
          type="button"
          class="press plain"
          aria-haspopup="dialog"
          aria-label={texts.shell.projectMenu(project.name)}
          onClick={() => setSheet("project")}
        >
          <strong>{project.name}</strong> ▾
        </button>
        <span class="only-read" role="status" data-keeping={keeping}>
          {keeping === "saving" ? texts.keeping.saving : keeping === "kept" ? texts.keeping.kept : ""}
        </span>
      </div>
      <nav class="places" aria-label={texts.shell.placesLabel}>
        {PLACES.map((name) => (
          <a key={name} href={routeHash(name)} aria-current={name === place ? "page" : undefined}>
            {texts.shell.places[name]}
          </a>
        ))}
      </nav>
      <div class="tools">
        <UndoRedo />
        <UnitsSwitch />
        <button
          type="button"
          class="press plain"
          aria-haspopup="dialog"
          aria-label={texts.shell.look}
          title={texts.shell.look}
          onClick={() => setSheet("look")}
        >
          <Icon name="light" />
        </button>
      </div>
      {sheet === "project" && <ProjectDialog onClose={close} onFile={onFile} />}
      {sheet === "look" && <LookDialog onClose={close} />}
    </header>
  );
}

function focusPlace(event: Event) {
  event.preventDefault();
  document.getElementById("place")?.focus();
}

function UndoRedo() {
  const { session } = useWorkbench();
  const texts = useTexts();
  const history = useStore(session.state, (state) => state.history);
  const back = undoLabel(history);
  const forth = redoLabel(history);
  return (
    <>
      <button
        type="button"
        class="press plain"
        disabled={back === null}
        aria-label={texts.shell.undo(back)}
        title={texts.shell.undo(back)}
        onClick={session.undo}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        class="press plain"
        disabled={forth === null}
        aria-label={texts.shell.redo(forth)}
        title={texts.shell.redo(forth)}
        onClick={session.redo}
      >
        <Icon name="redo" />
      </button>
    </>
  );
}

function UnitsSwitch() {
  const texts = useTexts();
  const change = useChange();
  const { system } = unitsOf(useProject());
  const other = system === "metric" ? "in/16" : "mm";
  return (
    <button
      type="button"
      class="press plain"
      aria-label={`${system === "metric" ? "mm" : "in"}: ${texts.shell.units} ${texts.look.systems[system]}`}
      title={texts.shell.units}
      onClick={() => change((project) => withUnits(project, other), texts.look.changedUnits)}
    >
      {system === "metric" ? "mm" : "in"}
    </button>
  );
}
