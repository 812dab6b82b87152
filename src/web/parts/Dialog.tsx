import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { useTexts } from "../texts/texts.ts";
import { Icon } from "./Icon.tsx";

/** A paper laid over the table: keyboard focus stays in it, Escape closes it, focus goes back where it was. */
export function Dialog(props: { heading: string; onClose: () => void; children: ComponentChildren }) {
  const texts = useTexts();
  const element = useRef<HTMLDialogElement>(null);
  const headingId = useId();
  useEffect(() => {
    const dialog = element.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  const onBackdrop = (event: MouseEvent) => {
    if (event.target === element.current) props.onClose();
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes a modal dialog by itself
    <dialog
      ref={element}
      class="panel-of-words"
      aria-labelledby={headingId}
      onClose={props.onClose}
      onClick={onBackdrop}
    >
      <div class="stack">
        <div class="dialog-head">
          <h2 id={headingId}>{props.heading}</h2>
          <button type="button" class="press plain" aria-label={texts.shell.close} onClick={props.onClose}>
            <Icon name="close" />
          </button>
        </div>
        {props.children}
      </div>
    </dialog>
  );
}
