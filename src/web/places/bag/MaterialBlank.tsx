import type { Material, MaterialKind } from "../../../core/materials/material.ts";
import { plainMaterial } from "../../../core/project/edits.ts";
import { ChoiceBlank } from "../../fields/blanks.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { freshName } from "../../state/session.ts";
import { useStore } from "../../state/store.ts";
import { useChange, useProject, useWorkbench } from "../../state/workbench.ts";
import { takenInto } from "../../storage/materialLibrary.ts";
import { useTexts } from "../../texts/texts.ts";

let visits = 0;
/** No id of a project begins so. */
const LIBRARY = "\u0000library/";

/**
 * Which of the project's materials; `none` adds the choice of no material at all. With `make`, a material of that kind
 * can be made on the spot where there is none: one step with the choice of it, so that one undo takes both back.
 */
export function MaterialBlank(props: {
  label: string;
  path: string;
  value: string | null;
  none?: string;
  labelled?: boolean;
  make?: MaterialKind;
  onValue: (id: string | null, joinKey?: string) => void;
}) {
  const texts = useTexts();
  const project = useProject();
  const { library } = useWorkbench();
  const change = useChange();
  const { make, value } = props;
  const { materials } = project;
  const known = materials.map(({ id, name }) => [id, name] as const);
  const others = useStore(library.materials, (all) => all).filter(({ name }) =>
    materials.every((own) => own.name !== name),
  );
  const offered = others.map(({ name }) => [`${LIBRARY}${name}`, texts.bag.fromLibrary(name)] as const);
  const own = props.none === undefined ? known : [["", props.none] as const, ...known];
  const add = (kind: MaterialKind) => {
    const name = freshName(
      texts.bag.freshMaterial[kind],
      materials.map((each) => each.name),
    );
    take({ ...plainMaterial(project, name), kind });
  };
  const take = (fresh: Material) => {
    const key = `${props.path}@made${++visits}`;
    change((now) => ({ ...now, materials: [...now.materials, fresh] }), fresh.name, key);
    props.onValue(fresh.id, key);
  };
  const choose = (id: string) => {
    const kept = id.startsWith(LIBRARY) ? others.find(({ name }) => name === id.slice(LIBRARY.length)) : undefined;
    if (kept !== undefined) take(takenInto(project, kept));
    else props.onValue(id === "" ? null : id);
  };
  return (
    <>
      <ChoiceBlank
        label={props.label}
        path={props.path}
        labelled={props.labelled ?? false}
        value={value ?? ""}
        options={[...own, ...offered]}
        onValue={choose}
      />
      {make !== undefined && value === null && !materials.some(({ kind }) => kind === make) && (
        <>
          {" "}
          <button type="button" class="press" onClick={() => add(make)}>
            <Icon name="plus" /> {texts.bag.makeMaterial(texts.kinds[make])}
          </button>
        </>
      )}
    </>
  );
}
