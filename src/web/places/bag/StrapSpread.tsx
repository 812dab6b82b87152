import { freshIdIn, withPartCopied, withStrap } from "../../../core/project/edits.ts";
import { rebuiltAs, unusedChoices } from "../../../core/straps/build/unusedChoices.ts";
import { PRESET_IDS, presetWish } from "../../../core/straps/wish/presets.ts";
import {
  CONSTRUCTION_IDS,
  type ConstructionId,
  type LengthWish,
  STRAP_CHOICES,
  type StrapWish,
  type WidthWish,
} from "../../../core/straps/wish/strapWish.ts";
import { STRAP_WORDS } from "../../../core/words/words.ts";
import { ChoiceBlank, CountBlank, LengthBlank, TextBlank } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { routeHash } from "../../state/route.ts";
import { freshName } from "../../state/session.ts";
import { useChange, useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { ConstructionBoard } from "./ConstructionBoard.tsx";
import { MaterialBlank } from "./MaterialBlank.tsx";
import { partNames } from "./newParts.ts";
import { PartTroubles, Spread } from "./Spread.tsx";
import { type SetStrap, type StrapBlanks, StrapCore } from "./StrapCore.tsx";
import { StrapMore } from "./StrapMore.tsx";
import { StrapPicture } from "./StrapPicture.tsx";
import { StrapSewing } from "./StrapSewing.tsx";

/** Least and greatest width and length of a strap that can be asked for, mm. */
const WIDTH = { minMm: 3, maxMm: 500 };
const LENGTH = { minMm: 20, maxMm: 20_000 };

/** A strap, opened. */
export function StrapSpread({ strap }: { strap: StrapWish }) {
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const index = project.straps.indexOf(strap);
  const path = (field: string) => `straps[${index}].${field}`;
  const set: SetStrap = (part, label, key) =>
    change((now) => withStrap(now, strap.id, part), `${strap.name}: ${label}`, key);
  const copy = () => {
    const id = freshIdIn(project, "strap");
    const name = freshName(texts.bag.copyName(strap.name), partNames(project));
    change((now) => withPartCopied(now, strap.id, { id, name }), texts.bag.copy);
    location.hash = routeHash("bag", id);
  };
  const shared = { strap, path, set };
  return (
    <Spread id={strap.id} name={strap.name} picture={<StrapPicture strap={strap} set={set} />} onCopy={copy}>
      <TextBlank
        labelled
        label={texts.bag.name}
        path={path("name")}
        value={strap.name}
        onValue={(name, key) => set({ name }, texts.bag.name, key)}
      />
      <MainSentence {...shared} />
      <Presets strap={strap} set={set} />
      <ConstructionBoard
        strap={strap}
        onChoose={(id) => set(rebuiltAs(strap, id), texts.bag.strap.constructionLabel)}
      />
      <StrapCore {...shared} />
      <StrapMore {...shared} />
      <StrapSewing strap={strap} />
      <PartTroubles path={`straps[${index}]`} partId={strap.id} />
      {unusedChoices(strap, "").length > 0 && (
        <button
          type="button"
          class="press"
          onClick={() => set(rebuiltAs(strap, strap.construction), texts.bag.strap.leaveOut)}
        >
          {texts.bag.strap.leaveOut}
        </button>
      )}
    </Spread>
  );
}

/** Measures of common bags, a press each. */
function Presets({ set }: Pick<StrapBlanks, "strap" | "set">) {
  const words = useTexts().bag.strap;
  const core = STRAP_WORDS[useLanguage()];
  const lengths = useLengths();
  return (
    <details class="more">
      <summary>{words.usualMeasures}</summary>
      <p class="ruler-offers">
        {PRESET_IDS.map((id) => {
          const wish = presetWish(id, lengths.units.system);
          const label = `${core.presets[id]}: ${lengths.box(wish.width.mm, wish.length.mm)}`;
          return (
            <button key={id} type="button" class="press" onClick={() => set(wish, label)}>
              {label}
            </button>
          );
        })}
      </p>
      <p class="soft small">{core.presetNote}</p>
    </details>
  );
}

function MainSentence({ strap, path, set }: StrapBlanks) {
  const texts = useTexts();
  const words = texts.bag.strap;
  const { width, length } = strap;
  const construction = (
    <ChoiceBlank<ConstructionId>
      label={words.constructionLabel}
      path={path("construction")}
      value={strap.construction}
      options={CONSTRUCTION_IDS.map((id) => [id, texts.constructions[id].name] as const)}
      onValue={(id) =>
        set(
          { ...rebuiltAs(strap, id), width: strap.width ?? { kind: "finished", mm: 25 } },
          words.constructionLabel,
        )
      }
    />
  );
  const wide = width !== undefined && (
    <LengthBlank
      label={words.widthLabel}
      path={path("width.mm")}
      value={width.mm}
      range={WIDTH}
      onValue={(mm, key) => set({ width: { ...width, mm } }, words.widthLabel, key)}
    />
  );
  const wideKind = width !== undefined && (
    <ChoiceBlank<WidthWish["kind"]>
      label={words.widthKindLabel}
      path={path("width.kind")}
      value={width.kind}
      options={STRAP_CHOICES.width.map((choice) => [choice, words.widthKinds[choice]] as const)}
      onValue={(kind) => set({ width: { ...width, kind } }, words.widthKindLabel)}
    />
  );
  const long = (
    <LengthBlank
      label={words.lengthLabel}
      path={path("length.mm")}
      value={length.mm}
      range={LENGTH}
      onValue={(mm, key) => set({ length: { ...length, mm } }, words.lengthLabel, key)}
    />
  );
  const longKind = (
    <ChoiceBlank<LengthWish["kind"]>
      label={words.lengthKindLabel}
      path={path("length.kind")}
      value={length.kind}
      options={STRAP_CHOICES.length.map((choice) => [choice, words.lengthKinds[choice]] as const)}
      onValue={(kind) => set({ length: { ...length, kind } }, words.lengthKindLabel)}
    />
  );
  const outer = (
    <MaterialBlank
      label={texts.bag.material}
      path={path("materials.outer")}
      value={strap.materials.outer}
      onValue={(id, key) =>
        id !== null && set({ materials: { ...strap.materials, outer: id } }, texts.bag.material, key)
      }
    />
  );
  const count = (
    <CountBlank
      label={words.countLabel}
      path={path("count")}
      value={strap.count}
      max={999}
      onValue={(next, key) => set({ count: next }, words.countLabel, key)}
    />
  );
  return (
    <p class="sentence">
      {words.made(construction)} {width !== undefined && <>{words.wide(wide, wideKind)}</>}
      {words.long(long, longKind, outer)} {words.count(count)}
    </p>
  );
}
