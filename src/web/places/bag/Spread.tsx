import type { ComponentChildren } from "preact";
import { withoutPart, withPartMoved } from "../../../core/project/edits.ts";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useBroughtIntoView } from "../../parts/useBroughtIntoView.ts";
import { useDerived } from "../../state/derived.ts";
import { routeHash } from "../../state/route.ts";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** An opened piece of the shelf: its picture on the left, what there is to say about it on the right. */
export function Spread(props: {
  id: string;
  name: string;
  picture: ComponentChildren;
  children: ComponentChildren;
  onCopy: () => void;
}) {
  const texts = useTexts();
  const { pieces } = useDerived();
  const change = useChange();
  const opened = useBroughtIntoView<HTMLElement>();
  const remove = () => {
    const pieceIds = new Set(pieces.flatMap(({ partId, id }) => (partId === props.id ? [id] : [])));
    change((now) => withoutPart(now, props.id, pieceIds), texts.bag.removed(props.name));
    location.hash = routeHash("bag");
  };
  return (
    <section ref={opened} class="sheet spread" aria-label={props.name}>
      <div class="spread-picture">{props.picture}</div>
      <div class="stack">
        {props.children}
        <div class="row">
          <button type="button" class="press" onClick={props.onCopy}>
            <Icon name="copy" /> {texts.bag.copy}
          </button>
          <ShelfOrder id={props.id} />
          <button type="button" class="press" onClick={remove}>
            <Icon name="bin" /> {texts.bag.remove}
          </button>
          <a class="press plain" href={routeHash("bag")}>
            {texts.bag.closeSpread}
          </a>
        </div>
      </div>
    </section>
  );
}

/** The part one place earlier or later among its kind, for fingers and keys; a mouse drags its card. */
function ShelfOrder({ id }: { id: string }) {
  const words = useTexts().bag;
  const change = useChange();
  const { straps, panels } = useProject();
  const kin: readonly { readonly id: string }[] = straps.some((strap) => strap.id === id) ? straps : panels;
  const at = kin.findIndex((part) => part.id === id);
  const move = (before: string | null) => change((now) => withPartMoved(now, id, before), words.reordered);
  return (
    <>
      <button
        type="button"
        class="press"
        disabled={at <= 0}
        aria-label={words.earlier}
        title={words.earlier}
        onClick={() => move(kin[at - 1]?.id ?? null)}
      >
        ←
      </button>
      <button
        type="button"
        class="press"
        disabled={at >= kin.length - 1}
        aria-label={words.later}
        title={words.later}
        onClick={() => move(kin[at + 2]?.id ?? null)}
      >
        →
      </button>
    </>
  );
}

/** What stands in the way of cutting this part, with the next step. */
export function PartTroubles({ path, partId }: { path: string; partId: string }) {
  const problems = useDerived().troubles.filter(
    (problem) => problem.path.startsWith(path) || problem.path === partId,
  );
  return <Refusal problems={problems} />;
}
