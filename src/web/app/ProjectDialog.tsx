import { useRef, useState } from "preact/hooks";
import { TextBlank } from "../fields/blanks.tsx";
import { openDemo, saveProjectFile } from "../files/openProjectFile.ts";
import { Dialog } from "../parts/Dialog.tsx";
import { Icon } from "../parts/Icon.tsx";
import { emptyProject } from "../state/emptyProject.ts";
import { freshName } from "../state/session.ts";
import { useStore } from "../state/store.ts";
import { unitsOf, useChange, useProject, useWorkbench } from "../state/workbench.ts";
import type { StoredProject } from "../storage/projectStore.ts";
import { useTexts } from "../texts/texts.ts";

/** The projects of this device, and the way to and from files. */
export function ProjectDialog({ onClose, onFile }: { onClose: () => void; onFile: (file: File) => void }) {
  const { session, plans } = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const { id, projects } = useStore(session.state, (state) => state);
  const picker = useRef<HTMLInputElement>(null);
  const [saved, setSaved] = useState<string | null>(null);
  const save = async () => setSaved(await saveProjectFile(id, project, plans));
  const start = () => {
    session.start(
      emptyProject(
        freshName(
          texts.project.newName,
          projects.map(({ name }) => name),
        ),
        texts.cloth.firstName,
        unitsOf(project).system,
      ),
      texts.project.changes.started,
    );
    onClose();
  };
  return (
    <Dialog heading={texts.project.heading} onClose={onClose}>
      <TextBlank
        labelled
        label={texts.project.name}
        path="name"
        value={project.name}
        onValue={(name, key) => change((now) => ({ ...now, name }), texts.project.name, key)}
      />
      <div class="row">
        <button type="button" class="press main" onClick={save}>
          {texts.project.saveFile}
        </button>
        <button type="button" class="press" onClick={() => picker.current?.click()}>
          {texts.project.openFile}
        </button>
        <button type="button" class="press" onClick={start}>
          {texts.project.startEmpty}
        </button>
        <button
          type="button"
          class="press"
          onClick={async () => {
            await openDemo(session, texts.project.changes.demo);
            onClose();
          }}
        >
          {texts.project.startDemo}
        </button>
        <input
          ref={picker}
          type="file"
          hidden
          accept=".json,application/json"
          data-picker="project"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined) onFile(file);
            onClose();
          }}
        />
      </div>
      <p role="status">{saved === null ? "" : texts.project.savedFile(saved)}</p>
      {projects.length > 0 && (
        <ul class="stack shelf-list">
          {projects.map((kept) => (
            <KeptProject key={kept.id} kept={kept} isOpen={kept.id === id} onClose={onClose} />
          ))}
        </ul>
      )}
    </Dialog>
  );
}

function KeptProject({ kept, isOpen, onClose }: { kept: StoredProject; isOpen: boolean; onClose: () => void }) {
  const { session, settings } = useWorkbench();
  const texts = useTexts();
  const language = useStore(settings, (now) => now.language);
  const [sure, setSure] = useState(false);
  // Of the page's language the sort that the person reads: 28 Nov or Nov 28.
  const locale = navigator.languages.find((each) => each.startsWith(language)) ?? language;
  const when = new Date(kept.savedAt).toLocaleString(locale, { dateStyle: "medium", timeStyle: "short" });
  if (sure)
    return (
      <li class="row">
        <span style="flex: 1">{texts.project.removeSure(kept.name)}</span>
        <button type="button" class="press main" onClick={() => session.remove(kept.id)}>
          {texts.project.removeYes}
        </button>
        <button type="button" class="press" onClick={() => setSure(false)}>
          {texts.project.removeNo}
        </button>
      </li>
    );
  return (
    <li class="row">
      <span style="flex: 1">
        <strong>{kept.name}</strong>
        <br />
        <span class="soft small">{texts.project.savedAt(when)}</span>
      </span>
      {isOpen ? (
        <span class="soft">{texts.project.current}</span>
      ) : (
        <>
          <button
            type="button"
            class="press"
            aria-label={texts.project.open(kept.name)}
            onClick={async () => {
              await session.open(kept.id);
              onClose();
            }}
          >
            {texts.project.openShort}
          </button>
          <button
            type="button"
            class="press plain"
            aria-label={texts.project.remove(kept.name)}
            onClick={() => setSure(true)}
          >
            <Icon name="bin" />
          </button>
        </>
      )}
    </li>
  );
}
