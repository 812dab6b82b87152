import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { freshIdIn, withPartCopied, withPartMoved } from "../../../core/project/edits.ts";
import type { Project } from "../../../core/project/project.ts";
import { useLengths } from "../../fields/units.ts";
import { frameOf, type ShelfFrame, ShelfPicture } from "../../parts/ShelfPicture.tsx";
import { useDerived } from "../../state/derived.ts";
import { leftOutParts } from "../../state/leftOutParts.ts";
import { routeHash } from "../../state/route.ts";
import { freshName } from "../../state/session.ts";
import { useChange } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { partNames } from "./newParts.ts";
import { panelSize, strapSize } from "./partSizes.ts";

/** What a dragged card carries: the id of its part. */
const PART = "application/x-laywright-part";

/** The pieces of the bag, a card each, at one scale; dragged or moved by keys into another order, copied by a key. */
export function Shelf(props: { project: Project; open: string | null; children: ComponentChildren }) {
  const { project, open } = props;
  const texts = useTexts();
  const lengths = useLengths();
  const change = useChange();
  const [over, setOver] = useState<string | null>(null);
  const { pieces, troubles } = useDerived();
  const kinds = [project.straps, project.panels] as const;
  const cards = [
    ...project.straps.map((strap) => ({ ...strap, size: strapSize(strap, lengths, texts) })),
    ...project.panels.map((panel) => ({ ...panel, size: panelSize(project, panel, lengths) })),
  ];
  const leftOut = new Set(leftOutParts(project, troubles).map(({ id }) => id));
  const firsts = cards.flatMap(({ id }) => pieces.find(({ partId }) => partId === id) ?? []);
  const frame = frameOf(firsts);
  const onKeyDown = (event: KeyboardEvent, id: string, name: string) => {
    const kin: readonly { readonly id: string }[] = kinds.find((kind) => kind.some((one) => one.id === id)) ?? [];
    const at = kin.findIndex((one) => one.id === id);
    const isBack = event.key === "ArrowLeft" || event.key === "ArrowUp";
    const isOn = event.key === "ArrowRight" || event.key === "ArrowDown";
    if (event.shiftKey && (isBack || isOn)) {
      const to = isBack ? at - 1 : at + 2;
      if (to >= 0 && to <= kin.length)
        change((now) => withPartMoved(now, id, kin[to]?.id ?? null), texts.bag.reordered);
      focusCard(id);
    } else if (event.key.toLowerCase() === "d" && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const copy = {
        id: freshIdIn(project, kin === project.straps ? "strap" : "panel"),
        name: freshName(texts.bag.copyName(name), partNames(project)),
      };
      change((now) => withPartCopied(now, id, copy), texts.bag.copy);
      focusCard(copy.id);
    } else return;
    event.preventDefault();
  };
  return (
    <nav aria-label={texts.bag.shelf}>
      <ul class="shelf">
        {cards.map((card) => (
          <li
            key={card.id}
            draggable
            class={over === card.id ? "drop-before" : undefined}
            onDragStart={(event) => {
              event.dataTransfer?.setData(PART, card.id);
              event.dataTransfer?.setDragImage(event.currentTarget, 20, 20);
            }}
            onDragOver={(event) => {
              if (!event.dataTransfer?.types.includes(PART)) return;
              event.preventDefault();
              setOver(card.id);
            }}
            onDragLeave={() => setOver(null)}
            onDrop={(event) => {
              const id = event.dataTransfer?.getData(PART) ?? "";
              setOver(null);
              if (id !== "") change((now) => withPartMoved(now, id, card.id), texts.bag.reordered);
            }}
          >
            <a
              class="card"
              draggable={false}
              data-part={card.id}
              href={routeHash("bag", card.id)}
              aria-current={card.id === open ? "true" : undefined}
              aria-keyshortcuts="Shift+ArrowLeft Shift+ArrowRight D"
              onKeyDown={(event) => onKeyDown(event, card.id, card.name)}
            >
              <PartPicture partId={card.id} frame={frame} />
              <span class="card-name">
                {card.name}
                {card.count > 1 && <span class="soft"> ×{card.count}</span>}
              </span>
              <span class="soft small">{card.size}</span>
              {leftOut.has(card.id) && <span class="small refusal">{texts.leftOut.short}</span>}
            </a>
          </li>
        ))}
        <li class="card-add">{props.children}</li>
      </ul>
      <p class="soft small shelf-hint">{texts.bag.shelfHint}</p>
    </nav>
  );
}

/** The keyboard stays on a card that was moved, and goes to one that was made, when the shelf is drawn anew. */
function focusCard(id: string): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() =>
      document.querySelector<HTMLElement>(`.card[data-part="${CSS.escape(id)}"]`)?.focus(),
    ),
  );
}

/** The first piece of a strap or panel, small, for its card. */
function PartPicture({ partId, frame }: { partId: string; frame: ShelfFrame }) {
  const piece = useDerived().pieces.find((each) => each.partId === partId);
  if (piece === undefined) return <span class="card-picture" />;
  return (
    <span class="card-picture" aria-hidden="true">
      <ShelfPicture piece={piece} frame={frame} />
    </span>
  );
}
