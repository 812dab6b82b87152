import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { UnitsContext } from "../fields/units.ts";
import { type FileTrouble, openProjectFile } from "../files/openProjectFile.ts";
import { BagPlace } from "../places/bag/BagPlace.tsx";
import { ClothPlace } from "../places/cloth/ClothPlace.tsx";
import { LayPlace } from "../places/lay/LayPlace.tsx";
import { TablePlace } from "../places/table/TablePlace.tsx";
import { routeHash } from "../state/route.ts";
import { useStore } from "../state/store.ts";
import { unitsOf, useProject, useWorkbench, type Workbench, WorkbenchContext } from "../state/workbench.ts";
import { CATALOGUES, LanguageContext, TextsContext, useTexts } from "../texts/texts.ts";
import { Headline } from "./Headline.tsx";
import { useShortcuts } from "./shortcuts.ts";
import { Told } from "./Told.tsx";

/** The page. */
export function App({ bench }: { bench: Workbench }) {
  const language = useStore(bench.settings, (settings) => settings.language);
  return (
    <WorkbenchContext.Provider value={bench}>
      <LanguageContext.Provider value={language}>
        <TextsContext.Provider value={CATALOGUES[language]}>
          <Page />
        </TextsContext.Provider>
      </LanguageContext.Provider>
    </WorkbenchContext.Provider>
  );
}

function Page() {
  const bench = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const { place, open } = useStore(bench.route, (route) => route);
  const [trouble, setTrouble] = useState<FileTrouble | null>(null);
  const [pattern, setPattern] = useState<File | null>(null);
  const openFile = async (file: File) => setTrouble(await openProjectFile(file, bench.session, bench.plans, texts));
  const isDropping = useFileDrop((file) => {
    if (!isPatternName(file.name)) return openFile(file);
    location.hash = routeHash("bag");
    return setPattern(file);
  });
  useShortcuts(bench.session);
  // Another place begins at its top, wherever the last one was read to.
  const last = useRef(place);
  useLayoutEffect(() => {
    if (last.current !== place) scrollTo(0, 0);
    last.current = place;
  }, [place]);
  useEffect(() => {
    document.title = `${texts.shell.places[place]} · ${project.name} · ${texts.shell.appName}`;
  }, [texts, place, project.name]);
  return (
    <UnitsContext.Provider value={unitsOf(project)}>
      <div class="shell">
        <Headline onFile={openFile} />
        <Told trouble={trouble} onUnderstood={() => setTrouble(null)} />
        <main class="place" id="place" tabIndex={-1} data-place={place} aria-label={texts.shell.places[place]}>
          <h1 class="only-read">
            {texts.shell.places[place]}: {project.name}
          </h1>
          {place === "bag" && <BagPlace open={open} file={pattern} setFile={setPattern} />}
          {place === "cloth" && <ClothPlace open={open} />}
          {place === "lay" && <LayPlace open={open} />}
          {place === "table" && <TablePlace open={open} />}
        </main>
        {isDropping && <div class="dropping">{texts.shell.dropHere}</div>}
      </div>
    </UnitsContext.Provider>
  );
}

/** Whether a file is a drawing or picture by its name; what else is dropped should be a project. */
function isPatternName(name: string): boolean {
  return /\.(?:svg|dxf|pdf|png|jpe?g)$/iu.test(name);
}

/** True while a file is held over the page; hands it over when it is let go. */
function useFileDrop(onFile: (file: File) => void): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    const over = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) onFile(file);
    };
    addEventListener("dragover", over);
    addEventListener("dragleave", leave);
    addEventListener("drop", drop);
    return () => {
      removeEventListener("dragover", over);
      removeEventListener("dragleave", leave);
      removeEventListener("drop", drop);
    };
  });
  return isOver;
}
