import { unstated } from "../../../core/materials/laser.ts";
import { MATERIAL_KINDS, type Material, type MaterialKind, MOST_TILT } from "../../../core/materials/material.ts";
import { plainMaterial, usersOf, withMaterial, withoutMaterial } from "../../../core/project/edits.ts";
import { ChoiceBlank, CountBlank, GrainBlank, TextBlank, ThicknessBlank, Tick } from "../../fields/blanks.tsx";
import { type LengthWords, useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import { LeftOutParts } from "../../parts/LeftOutParts.tsx";
import { Term } from "../../parts/Term.tsx";
import { useBroughtIntoView } from "../../parts/useBroughtIntoView.ts";
import { routeHash } from "../../state/route.ts";
import { freshName } from "../../state/session.ts";
import { useStore } from "../../state/store.ts";
import { useChange, useProject, useWorkbench } from "../../state/workbench.ts";
import { type Texts, useTexts } from "../../texts/texts.ts";
import { CupboardOffers } from "./CupboardOffers.tsx";
import { CupboardShelf } from "./CupboardShelf.tsx";
import { LibraryShelf } from "./LibraryShelf.tsx";
import { MaterialMore } from "./MaterialMore.tsx";
import { NapWords } from "./NapWords.tsx";
import { PatternWords } from "./PatternWords.tsx";
import { PriceWords, type SetMaterial } from "./PriceWords.tsx";
import { StockList } from "./StockList.tsx";
import { Swatch } from "./Swatch.tsx";
import { SwatchPhoto } from "./SwatchPhoto.tsx";
import { WhatToBuy } from "./WhatToBuy.tsx";

/** The materials of the project and what there is of each. */
export function ClothPlace({ open }: { open: string | null }) {
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const lengths = useLengths();
  const material = project.materials.find(({ id }) => id === open);
  const add = () => {
    const fresh = plainMaterial(
      project,
      freshName(
        texts.cloth.newName,
        project.materials.map(({ name }) => name),
      ),
    );
    change((now) => ({ ...now, materials: [...now.materials, fresh] }), texts.cloth.add);
    location.hash = routeHash("cloth", fresh.id);
  };
  return (
    <div class="stack">
      <nav aria-label={texts.cloth.swatches}>
        <ul class="shelf">
          {project.materials.map((each) => (
            <li key={each.id}>
              <a
                class="card"
                href={routeHash("cloth", each.id)}
                aria-current={each.id === open ? "true" : undefined}
              >
                <Swatch material={each} />
                <span class="card-name">{each.name}</span>
                <span class="soft small">{stockWords(each, lengths, texts)}</span>
              </a>
            </li>
          ))}
          <li class="card-add">
            <button type="button" class="press" onClick={add}>
              <Icon name="plus" /> {texts.cloth.add}
            </button>
          </li>
        </ul>
      </nav>
      <LibraryShelf />
      <CupboardShelf />
      {material === undefined ? (
        <p>{texts.cloth.hint}</p>
      ) : (
        <MaterialSpread key={material.id} material={material} />
      )}
      <LeftOutParts />
    </div>
  );
}

function MaterialSpread({ material }: { material: Material }) {
  const texts = useTexts();
  const opened = useBroughtIntoView<HTMLElement>();
  const project = useProject();
  const change = useChange();
  const words = texts.cloth;
  const path = (field: string) => `materials[${project.materials.indexOf(material)}].${field}`;
  const set: SetMaterial = (part, label, key) =>
    change((now) => withMaterial(now, material.id, part), `${material.name}: ${label}`, key);
  const users = usersOf(project, material.id);
  const remove = () => {
    change((now) => withoutMaterial(now, material.id), words.removed(material.name));
    location.hash = routeHash("cloth");
  };
  const shared = { material, path, set };
  return (
    <section ref={opened} class="sheet stack" aria-label={material.name}>
      <TextBlank
        labelled
        label={words.name}
        path={path("name")}
        value={material.name}
        onValue={(name, key) => set({ name }, words.name, key)}
      />
      <p class="sentence">
        {words.isA(
          <ChoiceBlank<MaterialKind>
            label={words.kindLabel}
            path={path("kind")}
            value={material.kind}
            options={MATERIAL_KINDS.map((kind) => [kind, texts.kinds[kind]] as const)}
            onValue={(kind) => set({ kind, ...unstated(kind) }, words.kindLabel)}
          />,
          <ThicknessBlank
            label={words.thicknessLabel}
            path={path("thickness")}
            value={material.thickness}
            isLeather={material.kind === "leather"}
            onValue={(thickness, key) => set({ thickness }, words.thicknessLabel, key)}
          />,
        )}{" "}
        {words.grainSentence(
          <Term id="grain" />,
          <GrainBlank
            label={words.grainLabel}
            path={path("grain")}
            value={material.grain}
            onValue={(grain) => set({ grain }, words.grainLabel)}
          />,
        )}{" "}
        {material.grain !== "free" &&
          words.tiltSentence(
            <CountBlank
              label={words.tiltLabel}
              path={path("tilt")}
              value={material.tilt ?? 0}
              min={0}
              max={MOST_TILT}
              onValue={(tilt, key) => set({ tilt: tilt === 0 ? undefined : tilt }, words.tiltLabel, key)}
            />,
          )}
      </p>
      <div class="row">
        <Tick
          label={words.facesAlike}
          path={path("facesAlike")}
          value={material.facesAlike}
          onValue={(facesAlike) => set({ facesAlike }, words.facesAlike)}
        />
      </div>
      <NapWords {...shared} />
      <StockList {...shared} />
      <CupboardOffers material={material} />
      <PriceWords {...shared} />
      <MaterialMore {...shared} />
      <PatternWords {...shared} />
      <WhatToBuy material={material} />
      <div class="row">
        <button
          type="button"
          class="press"
          disabled={users.length > 0 || project.materials.length === 1}
          onClick={remove}
        >
          <Icon name="bin" /> {words.remove}
        </button>
        <KeepInLibrary material={material} />
        <SwatchPhoto material={material} />
        {users.length > 0 && <span class="soft">{words.usedBy(users.join(", "))}</span>}
        <a class="press plain" href={routeHash("cloth")}>
          {texts.bag.closeSpread}
        </a>
      </div>
    </section>
  );
}

/** Puts the material, as it is now, among those that every project is offered. */
function KeepInLibrary({ material }: { material: Material }) {
  const words = useTexts().cloth.library;
  const { library } = useWorkbench();
  const project = useProject();
  const all = useStore(library.materials, (materials) => materials);
  const isThere = all.some(({ name }) => name === material.name);
  return (
    <button type="button" class="press" onClick={() => library.keep(material, project)}>
      <Icon name="pin" /> {isThere ? words.keepAgain : words.keep}
    </button>
  );
}

/** What there is of a material, in a few words. */
function stockWords({ stock }: Material, lengths: LengthWords, texts: Texts): string {
  const rolls = stock.filter((each) => each.kind === "roll");
  const count = (keptBack: boolean) =>
    stock.reduce((sum, each) => sum + (each.kind !== "roll" && !!each.keptBack === keptBack ? each.count : 0), 0);
  const [leftovers, keptBack] = [count(false), count(true)];
  const widths = [...new Set(rolls.map((roll) => lengths.size(roll.width)))];
  return [
    ...(widths.length > 0 ? [texts.cloth.rollsWide(rolls.length, widths.join(", "))] : []),
    ...(leftovers > 0 ? [texts.cloth.leftovers(leftovers)] : []),
    ...(keptBack > 0 ? [texts.cloth.keptBackShort(keptBack)] : []),
    ...(stock.length === 0 ? [texts.cloth.nothing] : []),
  ].join(" · ");
}
