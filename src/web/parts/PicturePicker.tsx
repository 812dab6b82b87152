import { useRef } from "preact/hooks";
import { Icon } from "./Icon.tsx";

/** Asks for a picture: from a file, and on a phone from the camera. */
export function PicturePicker(props: { label: string; picker: string; onFile: (file: File) => void }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class="press" onClick={() => input.current?.click()}>
        <Icon name="plus" /> {props.label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept="image/*"
        data-picker={props.picker}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same picture may be chosen once more.
          event.currentTarget.value = "";
          if (file !== undefined) props.onFile(file);
        }}
      />
    </>
  );
}
