import { useState } from "preact/hooks";
import { addBag } from "../../../core/bags/addBag.ts";
import {
  BAG_LIMITS,
  type BagBody,
  type BagOpening,
  type BagPockets,
  type BagStraps,
  type BagWish,
  usualBag,
} from "../../../core/bags/bagWish.ts";
import { hasDepth } from "../../../core/bags/bodies.ts";
import { PANEL_WORDS } from "../../../core/words/words.ts";
import { ChoiceBlank, LengthBlank, TextBlank } from "../../fields/blanks.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** A bag from its measures: its body, three sizes and what it has, in a sentence. Its parts come besides what there is. */
export function BagMaker({ isMore }: { isMore?: boolean }) {
  const texts = useTexts();
  const parts = PANEL_WORDS[useLanguage()];
  const words = texts.bag.fromMeasures;
  const change = useChange();
  const project = useProject();
  // Below the bags to begin from it is their sister; folded away below the shelf it stands by itself.
  const Heading = isMore ? "h2" : "h3";
  const inches = project.output.lengths.startsWith("in");
  const [name, setName] = useState(isMore ? words.another : project.name);
  const [wish, setWish] = useState<BagWish>(() => usualBag("boxed", inches));
  const set = (part: Partial<BagWish>) => setWish((now) => ({ ...now, ...part }));
  const size = (key: "width" | "height" | "depth" | "allowance") => (
    <LengthBlank
      label={parts.measures[key]}
      path={`bag.${key}`}
      value={wish[key]}
      range={BAG_LIMITS[key]}
      onValue={(mm) => set({ [key]: mm })}
    />
  );
  const choice = <T extends string>(
    key: keyof BagWish,
    label: string,
    value: T,
    options: Readonly<Record<T, string>>,
    put: (value: T) => void,
  ) => (
    <ChoiceBlank
      label={label}
      path={`bag.${key}`}
      value={value}
      options={Object.entries(options) as [T, string][]}
      onValue={put}
    />
  );
  const body = choice<BagBody>("body", words.body, wish.body, parts.bodies, (next) =>
    setWish(usualBag(next, inches)),
  );
  return (
    <section class="stack" aria-label={words.heading}>
      <Heading>{words.heading}</Heading>
      <p class="sentence">
        {words.sizes(body, size("width"), size("height"), hasDepth(wish) ? size("depth") : null)}{" "}
        {words.sewn(
          size("allowance"),
          choice<BagOpening>("opening", words.opening, wish.opening, words.openings, (opening) => set({ opening })),
          choice("lining", words.lining, wish.lining === null ? "none" : "lined", words.linings, (next) =>
            set({ lining: next === "none" ? null : (usualBag(wish.body, inches).lining ?? 2) }),
          ),
        )}{" "}
        {words.has(
          choice<BagPockets>("pockets", words.pockets, wish.pockets, words.pocketKinds, (pockets) =>
            set({ pockets }),
          ),
          choice<BagStraps>("straps", words.straps, wish.straps, words.strapKinds, (straps) => set({ straps })),
        )}{" "}
        {words.backed(
          choice<BagWish["interfacing"]>(
            "interfacing",
            words.interfacing,
            wish.interfacing,
            words.interfacings,
            (interfacing) => set({ interfacing }),
          ),
          <TextBlank
            label={isMore ? words.ownName : words.name}
            path="bag.name"
            value={name}
            max={80}
            onValue={setName}
          />,
        )}
      </p>
      <p class="soft">{parts.about[wish.body]}</p>
      <div class="row">
        <button
          type="button"
          class="press main"
          onClick={() =>
            change((now) => {
              const own = name.trim();
              return addBag(isMore || own === "" ? now : { ...now, name: own }, wish, parts, own || words.another);
            }, words.make)
          }
        >
          {isMore ? words.addIt : words.make}
        </button>
      </div>
    </section>
  );
}
