import { type FollowingPiece, INTERFACING_CUTS, type Panel } from "../../../core/panels/panel.ts";
import { lengthNow } from "../../../core/project/sizedPanels.ts";
import { ChoiceBlank, LengthBlank } from "../../fields/blanks.tsx";
import { Term } from "../../parts/Term.tsx";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { MaterialBlank } from "./MaterialBlank.tsx";

interface FollowingProps {
  readonly panel: Panel;
  readonly path: (field: string) => string;
  readonly set: (part: Partial<Panel>, label: string, key?: string) => void;
}

/** Interfacing and lining that follow from a panel: of what material, and how much smaller they are cut. */
export function FollowingPieces(props: FollowingProps) {
  return (
    <>
      <FollowingWords {...props} which="interfacing" />
      <FollowingWords {...props} which="lining" />
    </>
  );
}

/** How far inside the panel's stitch line it may lie, mm. */
const INSET = { minMm: 0, maxMm: 200 };
/** What an inset piece starts from, mm: the lining of a bag lies a little inside it (common practice, no source). */
const USUAL_INSET = 1;

function FollowingWords({ panel, path, set, which }: FollowingProps & { which: "interfacing" | "lining" }) {
  const words = useTexts().bag.panel;
  const project = useProject();
  const piece = panel[which] ?? null;
  const label = which === "interfacing" ? words.interfacingLabel : words.liningLabel;
  const cutLabel = which === "interfacing" ? words.interfacingCutLabel : words.liningCutLabel;
  const insetLabel = which === "interfacing" ? words.interfacingInset : words.liningInset;
  const put = (next: FollowingPiece | null, told: string, key?: string) =>
    set(which === "interfacing" ? { interfacing: next } : { lining: next ?? undefined }, told, key);
  const material = (
    <MaterialBlank
      label={label}
      path={path(`${which}.materialId`)}
      none={which === "interfacing" ? words.noInterfacing : words.noLining}
      value={piece?.materialId ?? null}
      {...(which === "interfacing" ? { make: "interfacing" as const } : {})}
      onValue={(materialId, key) =>
        put(materialId === null ? null : { ...piece, materialId, cut: piece?.cut ?? "full" }, label, key)
      }
    />
  );
  return (
    <p class="sentence">
      {which === "interfacing" ? words.interfacing(<Term id="interfacing" />, material) : words.lining(material)}{" "}
      {piece !== null &&
        words.interfacingCut(
          <ChoiceBlank
            label={cutLabel}
            path={path(`${which}.cut`)}
            value={piece.cut}
            options={INTERFACING_CUTS.map((cut) => [cut, words.interfacingCuts[cut]] as const)}
            onValue={(cut) =>
              put(
                {
                  materialId: piece.materialId,
                  cut,
                  ...(cut === "inset" ? { inset: piece.inset ?? USUAL_INSET } : {}),
                },
                cutLabel,
              )
            }
          />,
        )}{" "}
      {piece?.cut === "inset" &&
        words.inset(
          <LengthBlank
            label={insetLabel}
            path={path(`${which}.inset`)}
            value={lengthNow(project, piece.inset ?? 0) ?? 0}
            range={INSET}
            onValue={(inset, key) => put({ ...piece, inset }, insetLabel, key)}
          />,
        )}
    </p>
  );
}
