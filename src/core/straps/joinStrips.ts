import { TRADE } from "./construction.ts";
import { forbiddenZones, type JoinSeam, joinLoss, planJoins, preCutDiagonalLoss } from "./joins.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { StripLength } from "./strapPieces.ts";
import type { StrapLengths, StrapWarning } from "./strapResult.ts";

/** The lengths of strip a strap is cut from, and what joining them brings with it. */
export interface JoinedStrips {
  readonly lengths: readonly StripLength[];
  readonly joined: boolean;
  readonly seam: JoinSeam;
  /** The step that comes before all others when strips are joined. */
  readonly step: string;
  readonly warnings: readonly StrapWarning[];
}

const STEPS: Readonly<Record<JoinSeam, string>> = {
  diagonal:
    "Lay the square ends of two strips right sides together at right angles, sew corner to corner, trim to 1/4 in and press open; repeat for every join.",
  straight: "Sew the strips end to end right sides together and press the seams open.",
  lapped: "Skive both ends, overlap and bond them, and stitch across the overlap.",
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
): JoinedStrips {
  const { wish, materials } = resolved;
  const thick = ["vinyl", "leather", "cork"].includes(materials.outer.kind);
  const seam = wish.joins?.seam ?? (thick ? "lapped" : "diagonal");
  const short: StripLength[] =
    lengths.shortPart === null ? [] : [{ suffix: "short", name: "short part", mm: lengths.shortPart }];
  const long = lengths.shortPart === null ? { suffix: "", name: "" } : { suffix: "long", name: "long part" };
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
  const say = (code: string, text: string): StrapWarning => ({ code, text, lengths: facts });
  const twoPart =
    wish.adjustment === "two-part" || wish.construction === "tab"
      ? ""
      : " A strap in two parts with a ring between needs no join;";
  if (!wish.joins?.allowed) {
    const text = `The strip is {cut} long and the longest piece of stock gives {longest}.${twoPart} allow joins only if neither it nor longer stock will do.`;
    return { ...whole, warnings: [say("longer-than-stock", text)] };
  }
  const loss = joinLoss(seam, cutWidth, wish.joins.seamAllowance ?? TRADE.seamAllowance);
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const plan = planJoins(
    lengths.cut,
    longest,
    loss,
    forbiddenZones(lengths.cut, [ends[0].allowance, ends[1].allowance], adjusts),
  );
  if (!plan) {
    const text =
      "No join can be placed clear of the anchored ends, the shoulder and the slider's travel: use longer stock or a strap in two parts.";
    return { ...whole, warnings: [say("no-place-for-join", text)] };
  }
  const parts = plan.pieces.map(
    (mm, i): StripLength => ({
      suffix: [long.suffix, String(i + 1)].filter(Boolean).join("-"),
      name: [long.name, `length ${i + 1} of ${plan.pieces.length}`].filter(Boolean).join(", "),
      mm,
    }),
  );
  const warnings = [
    say("joined", "A join is bulky and the weakest spot of a strap that carries: avoid it where you can."),
  ];
  const preCut = preCutDiagonalLoss(wish.joins.seamAllowance ?? TRADE.seamAllowance);
  if (seam === "diagonal" && preCut < loss) {
    const text =
      "Each join of square ends loses {loss}; ends cut at 45° before they are joined lose only {preCut}.";
    warnings.push({ code: "join-loss", text, lengths: { loss, preCut } });
  }
  return { ...whole, lengths: [...short, ...parts], joined: true, warnings };
}
