import { CONSTRUCTIONS } from "../../../core/straps/constructions/catalogue.ts";
import { STRAP_CHOICES, type StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { ChoiceBlank, OptionalLengthBlank } from "../../fields/blanks.tsx";
import { Term } from "../../parts/Term.tsx";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { MaterialBlank } from "./MaterialBlank.tsx";

/** How a strap's sentences change it. */
export type SetStrap = (part: Partial<StrapWish>, label: string, key?: string) => void;

/** What the sentences about a strap share. */
export interface StrapBlanks {
  readonly strap: StrapWish;
  readonly path: (field: string) => string;
  readonly set: SetStrap;
}

/** Second materials that a construction takes, in the order in which they are asked for. */
const ROLES = ["facing", "padding", "webbing", "cord"] as const;

/** What is inside the strap: facing, padding, webbing, cord, interfacing. */
export function StrapCore({ strap, path, set }: StrapBlanks) {
  const texts = useTexts();
  const words = texts.bag.strap;
  const { materials } = useProject();
  const taken = CONSTRUCTIONS[strap.construction].roles;
  const roles = ROLES.filter((role) => taken[role] !== undefined);
  const core = (field: "webbingWidth" | "webbingThickness" | "cordDiameter", label: string) => (
    <OptionalLengthBlank
      label={label}
      path={path(`core.${field}`)}
      value={strap.core?.[field] ?? null}
      empty="?"
      fine={field === "webbingThickness"}
      range={{ minMm: 0.1, maxMm: 200 }}
      onValue={(mm, key) => set({ core: { ...strap.core, [field]: mm ?? undefined } }, label, key)}
    />
  );
  const interfacing = strap.interfacing ?? "none";
  return (
    <p class="sentence">
      {roles.map((role) => (
        <span key={role}>
          {words.roles[role](
            <MaterialBlank
              label={words.roleLabels[role]}
              path={path(`materials.${role}`)}
              none={words.noMaterial}
              value={strap.materials[role] ?? null}
              {...(role === "facing" ? {} : { make: role })}
              onValue={(id, key) =>
                set({ materials: { ...strap.materials, [role]: id ?? undefined } }, words.roleLabels[role], key)
              }
            />,
          )}{" "}
          {role === "webbing" &&
            words.webbingSize(
              core("webbingWidth", words.webbingWidth),
              core("webbingThickness", words.webbingThickness),
            )}
          {role === "cord" && words.cordSize(core("cordDiameter", words.cordDiameter))}{" "}
        </span>
      ))}
      {words.interfaced(
        <Term id="interfacing" word={words.interfacingWord} />,
        <ChoiceBlank<NonNullable<typeof strap.interfacing>>
          label={words.interfacingLabel}
          path={path("interfacing")}
          value={interfacing}
          options={STRAP_CHOICES.interfacing.map((choice) => [choice, words.interfacings[choice]] as const)}
          onValue={(next) => {
            // The only interfacing there is is the one that is meant.
            const own = strap.materials.interfacing ?? materials.find(({ kind }) => kind === "interfacing")?.id;
            set({ interfacing: next, materials: { ...strap.materials, interfacing: own } }, words.interfacingLabel);
          }}
        />,
      )}{" "}
      {interfacing !== "none" &&
        words.interfacedWith(
          <MaterialBlank
            label={words.interfacingMaterial}
            path={path("materials.interfacing")}
            none={words.noMaterial}
            value={strap.materials.interfacing ?? null}
            make="interfacing"
            onValue={(id, key) =>
              set(
                { materials: { ...strap.materials, interfacing: id ?? undefined } },
                words.interfacingMaterial,
                key,
              )
            }
          />,
        )}
    </p>
  );
}
