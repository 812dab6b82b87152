import { useRef, useState } from "preact/hooks";
import { writeCupboard } from "../../../core/cupboard/cupboardFile.ts";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { downloadFile } from "../../files/projectFiles.ts";
import { Icon } from "../../parts/Icon.tsx";
import { PicturePicker } from "../../parts/PicturePicker.tsx";
import { smallPicture } from "../../parts/smallPicture.ts";
import { type CupboardHand, useCupboard } from "../../state/useCupboard.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { CupboardPieces } from "./CupboardPieces.tsx";
import { PrintLabels } from "./PrintLabels.tsx";

/** Everything in the cupboard of this browser: what is out, the way back, and the way to and from a file. */
export function CupboardShelf() {
  const words = useTexts().cupboard;
  const hand = useCupboard();
  const project = useProject();
  const picker = useRef<HTMLInputElement>(null);
  const { pieces, steps } = hand.cupboard;
  const [unread, setUnread] = useState<string | null>(null);
  const inside = pieces.filter(({ taken }) => taken === null);
  const last = steps.at(-1);
  return (
    <details class="more" data-part="cupboard">
      <summary>{words.heading(inside.length, pieces.length - inside.length)}</summary>
      <p class="soft">{words.about}</p>
      <CupboardPieces pieces={pieces}>
        {({ code, taken }) => (
          <>
            {taken?.project === project.name && (
              <button type="button" class="press" onClick={() => hand.giveBack(code, () => words.gaveBack(code))}>
                {words.giveBack(code)}
              </button>
            )}
            <PicturePicker
              label={words.addPhoto(code)}
              picker={`photo-${code}`}
              onFile={async (file) => {
                const photo = await smallPicture(file);
                setUnread(photo === null ? file.name : null);
                if (photo !== null) hand.photograph(code, photo);
              }}
            />
            {taken === null && (
              <button
                type="button"
                class="press plain"
                aria-label={words.letGo(code)}
                title={words.letGo(code)}
                onClick={() => hand.letGo(code)}
              >
                <Icon name="bin" />
              </button>
            )}
          </>
        )}
      </CupboardPieces>
      <div class="row">
        {last !== undefined && (
          <button type="button" class="press" onClick={hand.undo}>
            <Icon name="undo" /> {words.undo(last.did)}
          </button>
        )}
        {inside.length > 0 && <PrintLabels pieces={inside} />}
        {pieces.length > 0 && (
          <button
            type="button"
            class="press"
            onClick={() => {
              const content = new Blob([writeCupboard(hand.cupboard)], { type: "application/json" });
              downloadFile("cupboard.json", content);
            }}
          >
            {words.saveFile}
          </button>
        )}
        <button type="button" class="press" onClick={() => picker.current?.click()}>
          {words.openFile}
        </button>
        <input
          ref={picker}
          type="file"
          hidden
          accept=".json,application/json"
          data-picker="cupboard"
          onChange={async (event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            if (file !== undefined) hand.bringIn(await file.text(), (brought) => words.broughtIn(brought.length));
            input.value = "";
          }}
        />
      </div>
      {unread !== null && (
        <p role="alert" class="refusal">
          {words.photoUnread(unread)}
        </p>
      )}
      <Outcome hand={hand} />
    </details>
  );
}

/** What came of the last thing that was done. */
export function Outcome({ hand }: { hand: CupboardHand }) {
  if (hand.problems.length > 0) return <Refusal problems={hand.problems.slice(0, 6)} isAway />;
  return <p role="status">{hand.told ?? ""}</p>;
}
