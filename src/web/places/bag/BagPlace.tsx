import { useState } from "preact/hooks";
import { freshIdIn } from "../../../core/project/edits.ts";
import { CountBlank } from "../../fields/blanks.tsx";
import { openDemo } from "../../files/openProjectFile.ts";
import { Icon } from "../../parts/Icon.tsx";
import { PinTroubles } from "../../parts/PinTroubles.tsx";
import { routeHash } from "../../state/route.ts";
import { freshName } from "../../state/session.ts";
import { useChange, useProject, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { BagMaker } from "./BagMaker.tsx";
import { BagMeasures } from "./BagMeasures.tsx";
import { SeamTroubles } from "./marks/SeamTroubles.tsx";
import { newPanel, newStrap, partNames } from "./newParts.ts";
import { PanelSpread } from "./PanelSpread.tsx";
import { PatternPicker } from "./pattern/PatternPicker.tsx";
import { PatternSheet } from "./pattern/PatternSheet.tsx";
import { Shelf } from "./Shelf.tsx";
import { StarterShelf } from "./StarterShelf.tsx";
import { StrapSpread } from "./StrapSpread.tsx";

/** What the bag is made of: the shelf of pieces, and the one that is open. */
export function BagPlace(props: {
  open: string | null;
  /** The pattern that is being brought in; null when none is. */
  file: File | null;
  setFile: (file: File | null) => void;
}) {
  const { open, file, setFile } = props;
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const [isAdding, setAdding] = useState(false);
  const isEmpty = project.straps.length + project.panels.length === 0;
  const strap = project.straps.find(({ id }) => id === open);
  const panel = project.panels.find(({ id }) => id === open);
  return (
    <div class="stack bag">
      {!isEmpty && (
        <p class="sentence">
          {texts.bag.making(
            <CountBlank
              key="bags"
              label={texts.bag.bags}
              path="bags"
              value={project.bags}
              max={1000}
              onValue={(bags, key) => change((now) => ({ ...now, bags }), texts.bag.bags, key)}
            />,
          )}
        </p>
      )}
      {!isEmpty && <BagMeasures />}
      {!isEmpty && (
        <Shelf project={project} open={open}>
          <AddParts onPattern={setFile} />
        </Shelf>
      )}
      {!isEmpty && (
        // What is not seen is not worked out anew with every change.
        <details
          class="sheet stack another-bag"
          open={isAdding}
          onToggle={(event) => setAdding(event.currentTarget.open)}
        >
          <summary>{texts.bag.starters.add}</summary>
          {isAdding && <StarterShelf isMore />}
          {isAdding && <BagMaker isMore />}
        </details>
      )}
      {!isEmpty && <SeamTroubles />}
      {!isEmpty && <PinTroubles />}
      {isEmpty && file === null && <EmptyTable onPattern={setFile} />}
      {file !== null && (
        <PatternSheet key={`${file.name} ${file.lastModified}`} file={file} onClose={() => setFile(null)} />
      )}
      {strap !== undefined && <StrapSpread key={strap.id} strap={strap} />}
      {panel !== undefined && <PanelSpread key={panel.id} panel={panel} />}
    </div>
  );
}

interface PatternTaker {
  readonly onPattern: (file: File) => void;
}

function EmptyTable({ onPattern }: PatternTaker) {
  const texts = useTexts();
  const { session } = useWorkbench();
  return (
    <div class="sheet stack empty">
      <h2>{texts.bag.emptyHeading}</h2>
      <p>{texts.bag.emptyWords}</p>
      <div class="row card-add">
        <AddParts main onPattern={onPattern} />
        <button type="button" class="press plain" onClick={() => openDemo(session, texts.project.changes.demo)}>
          {texts.project.startDemo}
        </button>
      </div>
      <StarterShelf />
      <BagMaker />
    </div>
  );
}

/** A strap or a panel more, and its spread open. */
function AddParts({ main, onPattern }: PatternTaker & { main?: boolean }) {
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const addStrap = () => {
    const id = freshIdIn(project, "strap");
    const strap = newStrap(project, id, freshName(texts.bag.newStrap, partNames(project)));
    change((now) => ({ ...now, straps: [...now.straps, strap] }), texts.bag.addStrap);
    location.hash = routeHash("bag", id);
  };
  const addPanel = () => {
    const id = freshIdIn(project, "panel");
    const panel = newPanel(project, id, freshName(texts.bag.newPanel, partNames(project)));
    change((now) => ({ ...now, panels: [...now.panels, panel] }), texts.bag.addPanel);
    location.hash = routeHash("bag", id);
  };
  const look = main ? "press main" : "press";
  return (
    <>
      <button type="button" class={look} onClick={addStrap}>
        <Icon name="plus" /> {texts.bag.addStrap}
      </button>
      <button type="button" class={look} onClick={addPanel}>
        <Icon name="plus" /> {texts.bag.addPanel}
      </button>
      <PatternPicker onFile={onPattern} />
    </>
  );
}
