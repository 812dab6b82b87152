import { type StrapWarning, warning } from "../../words/phrase.ts";
import type { PartNames, PhraseCode } from "../../words/strapWords.ts";
import { TRADE } from "../constructions/construction.ts";
import { forbiddenZones, type JoinSeam, joinLoss, planJoins, preCutDiagonalLoss } from "./joins.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { StripLength } from "./strapPieces.ts";
import type { StrapLengths } from "./strapResult.ts";

/** The lengths of strip a strap is cut from, and what joining them brings with it. */
export interface JoinedStrips {
  readonly lengths: readonly StripLength[];
  readonly joined: boolean;
  readonly seam: JoinSeam;
  /** The step that comes before all others when strips are joined. */
  readonly step: PhraseCode;
  readonly warnings: readonly StrapWarning[];
}

const STEPS: Readonly<Record<JoinSeam, PhraseCode>> = {
  diagonal: "join-diagonal",
  straight: "join-straight",
  lapped: "join-lapped",
};

/** Longest strip that can be cut from the outer material, along the roll or across it, mm. */
function longestStrip({ wish, materials }: ResolvedWish): number {
  const { longestPiece = Number.POSITIVE_INFINITY, usableWidth = Number.POSITIVE_INFINITY } = materials.outer;
  if (wish.grain === "crosswise") return usableWidth;
  return wish.grain === "lengthwise" || longestPiece === Number.POSITIVE_INFINITY
    ? longestPiece
    : Math.max(longestPiece, Number.isFinite(usableWidth) ? usableWidth : 0);
}

/** Splits a strap that no stock is long enough for, where the maker allows it; else says what would help. */
export function joinStrips(
  resolved: ResolvedWish,
  cutWidth: number,
  lengths: StrapLengths,
  ends: readonly [StrapEnd, StrapEnd],
  names: PartNames,
): JoinedStrips {
  const { wish, construction, materials } = resolved;
  const thick = ["vinyl", "leather", "cork"].includes(materials.outer.kind);
  const seam = wish.joins?.seam ?? (thick ? "lapped" : "diagonal");
  const short: StripLength[] =
    lengths.shortPart === null ? [] : [{ suffix: "short", name: names.shortPart, mm: lengths.shortPart }];
  const long = lengths.shortPart === null ? { suffix: "", name: "" } : { suffix: "long", name: names.longPart };
  const whole = {
    lengths: [...short, { ...long, mm: lengths.cut }],
    joined: false,
    seam,
    step: STEPS[seam],
    warnings: [] as StrapWarning[],
  };
  const longest = longestStrip(resolved);
  if (lengths.cut <= longest) return whole;
  const facts = { cut: lengths.cut, longest };
  if (!wish.joins?.allowed) {
    const parted = wish.adjustment === "two-part" || construction.overRing;
    return { ...whole, warnings: [warning(parted ? "longer-than-stock-parts" : "longer-than-stock", facts)] };
  }
  const loss = joinLoss(seam, cutWidth, wish.joins.seamAllowance ?? TRADE.seamAllowance);
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const plan = planJoins(
    lengths.cut,
    longest,
    loss,
    forbiddenZones(lengths.cut, [ends[0].allowance, ends[1].allowance], adjusts),
  );
  if (!plan) return { ...whole, warnings: [warning("no-place-for-join")] };
  const parts = plan.pieces.map(
    (mm, i): StripLength => ({
      suffix: [long.suffix, String(i + 1)].filter(Boolean).join("-"),
      name: [long.name, names.lengthOf(i + 1, plan.pieces.length)].filter(Boolean).join(", "),
      mm,
      joined: true,
    }),
  );
  const warnings = [warning("joined")];
  const preCut = preCutDiagonalLoss(wish.joins.seamAllowance ?? TRADE.seamAllowance);
  if (seam === "diagonal" && preCut < loss) {
    warnings.push(warning("join-loss", { loss, preCut }));
  }
  return { ...whole, lengths: [...short, ...parts], joined: true, warnings };
}
