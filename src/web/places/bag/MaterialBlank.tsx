import { ChoiceBlank } from "../../fields/blanks.tsx";
import { useProject } from "../../state/workbench.ts";

/** Which of the project's materials; `none` adds the choice of no material at all. */
export function MaterialBlank(props: {
  label: string;
  path: string;
  value: string | null;
  none?: string;
  labelled?: boolean;
  onValue: (id: string | null) => void;
}) {
  const { materials } = useProject();
  const known = materials.map(({ id, name }) => [id, name] as const);
  const options = props.none === undefined ? known : [["", props.none] as const, ...known];
  return (
    <ChoiceBlank
      label={props.label}
      path={props.path}
      labelled={props.labelled ?? false}
      value={props.value ?? ""}
      options={options}
      onValue={(id) => props.onValue(id === "" ? null : id)}
    />
  );
}
