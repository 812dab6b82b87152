import type { PieceGrain } from "../../core/materials/cutPiece.ts";
import { useTexts } from "../texts/texts.ts";
import { ChoiceBlank } from "./blanks.tsx";

const GRAINS = ["either", "lengthwise", "crosswise", "free"] as const;

/** The direction that a panel or a material keeps. */
export function GrainBlank(props: {
  label: string;
  path: string;
  value: PieceGrain;
  onValue: (grain: PieceGrain) => void;
}) {
  const { grains } = useTexts();
  return <ChoiceBlank<PieceGrain> {...props} options={GRAINS.map((grain) => [grain, grains[grain]] as const)} />;
}
