import type { MaterialRoles } from "../../../core/straps/wish/strapWish.ts";
import { ChoiceBlank, OptionalLengthBlank } from "../../fields/blanks.tsx";
import { Term } from "../../parts/Term.tsx";
import { useTexts } from "../../texts/texts.ts";
import { MaterialBlank } from "./MaterialBlank.tsx";
import type { StrapWords } from "./strapWords.ts";

/** Second materials of a construction: what it cannot be made without, and what it may have. */
const ROLES_OF: Readonly<Record<string, readonly Exclude<keyof MaterialRoles, "outer" | "interfacing">[]>> = {
  "two-layer": ["facing"],
  "sewn-turned": ["facing", "padding"],
  bonded: ["facing"],
  "three-hemmed": ["padding"],
  "webbing-overlay": ["webbing"],
  "webbing-sleeve": ["webbing"],
  corded: ["cord"],
};

/** What is inside the strap: facing, padding, webbing, cord, interfacing. */
export function StrapCore({ strap, path, set }: StrapWords) {
  const texts = useTexts();
  const words = texts.bag.strap;
  const roles = ROLES_OF[strap.construction] ?? [];
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
              onValue={(id) =>
                set({ materials: { ...strap.materials, [role]: id ?? undefined } }, words.roleLabels[role])
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
          options={[
            ["none", words.interfacings.none],
            ["full", words.interfacings.full],
            ["reduced", words.interfacings.reduced],
            ["quarter", words.interfacings.quarter],
          ]}
          onValue={(next) => set({ interfacing: next }, words.interfacingLabel)}
        />,
      )}{" "}
      {interfacing !== "none" &&
        words.interfacedWith(
          <MaterialBlank
            label={words.interfacingMaterial}
            path={path("materials.interfacing")}
            none={words.noMaterial}
            value={strap.materials.interfacing ?? null}
            onValue={(id) =>
              set({ materials: { ...strap.materials, interfacing: id ?? undefined } }, words.interfacingMaterial)
            }
          />,
        )}
    </p>
  );
}
