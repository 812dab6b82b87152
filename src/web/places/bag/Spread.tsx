import type { ComponentChildren } from "preact";
import { withoutPart } from "../../../core/project/edits.ts";
import { Icon } from "../../parts/Icon.tsx";
import { useBroughtIntoView } from "../../parts/useBroughtIntoView.ts";
import { routeHash } from "../../state/route.ts";
import { useDerived } from "../../state/useDerived.ts";
import { useChange } from "../../state/workbench.ts";
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
