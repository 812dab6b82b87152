import { PIECE_GRAINS, type PieceGrain } from "../../core/materials/cutPiece.ts";
import { useTexts } from "../texts/texts.ts";
import { ChoiceBlank } from "./blanks.tsx";

/** The direction that a panel or a material keeps. */
export function GrainBlank(props: {
  label: string;
  path: string;
  value: PieceGrain;
  onValue: (grain: PieceGrain) => void;
}) {
  const { grains } = useTexts();
  return (
    <ChoiceBlank<PieceGrain> {...props} options={PIECE_GRAINS.map((grain) => [grain, grains[grain]] as const)} />
  );
}
