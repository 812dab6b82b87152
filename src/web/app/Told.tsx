import { Refusal } from "../fields/TypedBlank.tsx";
import { type FileTrouble, saveProjectFile } from "../files/openProjectFile.ts";
import { useStore } from "../state/store.ts";
import { useProject, useWorkbench } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";

/** What the person must hear of: a file that cannot be read, storage that refuses, another window's change. */
export function Told({ trouble, onUnderstood }: { trouble: FileTrouble | null; onUnderstood: () => void }) {
  const { session, refused, plans } = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const keeping = useStore(session.state, (state) => state.keeping);
  const notice = useStore(session.state, (state) => state.notice);
  const refusals = useStore(refused, (now) => now);
  const isLost = keeping === "full" || keeping === "refused";
  return (
    <div>
      {trouble !== null && (
        <div class="told" role="alert">
          <div style="flex: 1 1 20rem">
            <p>{texts.project.unreadable(trouble.file)}</p>
            <Refusal problems={trouble.problems.slice(0, 6)} isAway />
          </div>
          <button type="button" class="press" onClick={onUnderstood}>
            {texts.keeping.understood}
          </button>
        </div>
      )}
      {refusals.length > 0 && (
        <div class="told" role="alert">
          <div style="flex: 1 1 20rem">
            <p>{texts.keeping.refusedChange}</p>
            <Refusal problems={refusals.slice(0, 3)} />
          </div>
          <button type="button" class="press" onClick={() => refused.set([])}>
            {texts.keeping.understood}
          </button>
        </div>
      )}
      {isLost && (
        <div class="told" role="alert">
          <p>{texts.keeping[keeping]}</p>
          <button
            type="button"
            class="press main"
            onClick={() => saveProjectFile(session.state.get().id, project, plans)}
          >
            {texts.keeping.saveFile}
          </button>
          {keeping === "full" && (
            <button type="button" class="press" onClick={session.retry}>
              {texts.keeping.tryAgain}
            </button>
          )}
        </div>
      )}
      {notice !== null && (
        <div class="told calm" role="status">
          <p>{notice === "taken-over" ? texts.keeping.takenOver : texts.keeping.splitOff}</p>
          <button type="button" class="press" onClick={session.dismissNotice}>
            {texts.keeping.understood}
          </button>
        </div>
      )}
    </div>
  );
}
