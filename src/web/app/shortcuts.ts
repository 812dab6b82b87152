import { useEffect } from "preact/hooks";
import type { Project } from "../../core/project/project.ts";
import type { Session } from "../state/session.ts";

/** Undo and redo by the keys of the system; a field that is being typed in keeps its own undo. */
export function useShortcuts(session: Session<Project>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof HTMLInputElement && event.target.value !== event.target.defaultValue) return;
      const key = event.key.toLowerCase();
      if (key === "z" && !event.shiftKey) session.undo();
      else if (key === "y" || (key === "z" && event.shiftKey)) session.redo();
      else return;
      event.preventDefault();
      if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [session]);
}
