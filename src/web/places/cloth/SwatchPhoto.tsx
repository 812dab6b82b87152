import { useEffect, useRef, useState } from "preact/hooks";
import type { Material } from "../../../core/materials/material.ts";
import { Icon } from "../../parts/Icon.tsx";
import { PicturePicker } from "../../parts/PicturePicker.tsx";
import { useStore } from "../../state/store.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** A name that is not typed on for so long is the material's, ms. */
const SETTLED = 800;

/** Puts a photograph on the material's swatch, or takes it away again. */
export function SwatchPhoto({ material: { name } }: { material: Material }) {
  const words = useTexts().photos;
  const { swatches } = useWorkbench();
  const isThere = useStore(swatches.photos, (photos) => photos.has(name));
  const [unread, setUnread] = useState<string | null>(null);
  const before = useRef(name);
  useEffect(() => {
    const timer = setTimeout(() => {
      swatches.follow(before.current, name);
      before.current = name;
    }, SETTLED);
    return () => clearTimeout(timer);
  }, [name, swatches]);
  return (
    <>
      <PicturePicker
        label={isThere ? words.another : words.take}
        picker="swatch"
        onFile={async (file) => setUnread((await swatches.keep(name, file)) ? null : file.name)}
      />
      {isThere && (
        <button type="button" class="press plain" onClick={() => swatches.forget(name)}>
          <Icon name="bin" /> {words.takeAway}
        </button>
      )}
      {unread !== null && (
        <span role="alert" class="refusal">
          {words.unread(unread)}
        </span>
      )}
    </>
  );
}
