import type { Pose } from "../geometry/pose.ts";
import type { Material } from "../materials/material.ts";
import type { Centred, Match } from "../panels/match.ts";
import type { BagMeasure } from "../panels/measure.ts";
import type { Panel } from "../panels/panel.ts";
import type { Seam } from "../panels/seams.ts";
import type { SewingMachine, StrapWish } from "../straps/wish/strapWish.ts";
import type { LengthUnit } from "../units/lengthWords.ts";
import type { KeptPlan } from "./keptPlan.ts";
import type { OutputSettings } from "./outputSettings.ts";

/** A piece put down by hand: which copy of which piece of the cut list, where on which stock. */
export interface Pin extends Pose {
  readonly materialId: string;
  readonly stockId: string;
  readonly pieceId: string;
  /** 0 … count − 1. */
  readonly copy: number;
}

/** How a price is reckoned from the cost: a share of the cost on it, or a share of the price in it. */
export const PRICED_BY = ["markup", "margin"] as const;

/** What a bag costs besides its cloth, and how its price is made; amounts in the project's currency. */
export interface Pricing {
  /** Work, hardware, thread and overhead of one bag. */
  readonly workPerBag: number;
  /** `markup`: share of the cost added to it. `margin`: share of the price that is left after the cost. */
  readonly by: (typeof PRICED_BY)[number];
  readonly share: number;
}

/** A strip narrower than this is hard to cut: the ruler hardly lies on it (common practice, no source). mm. */
export const LEAST_STRIP = 10;

/** A project in memory: everything the maker said, lengths in mm. Written by `writeProject`, read by `readProject`. */
export interface Project {
  readonly name: string;
  /** Unit of lengths that are written as bare numbers. */
  readonly unit: LengthUnit;
  /** Bags to make. */
  readonly bags: number;
  /** ISO 4217 code such as `EUR`, or whatever the maker writes before amounts. */
  readonly currency: string;
  /** What sizes of panels can follow. */
  readonly measures?: readonly BagMeasure[] | undefined;
  readonly materials: readonly Material[];
  readonly straps: readonly StrapWish[];
  readonly panels: readonly Panel[];
  /** Edges of panels that are sewn together. */
  readonly seams?: readonly Seam[] | undefined;
  /** Seams over which the cloth's pattern runs on. */
  readonly matches?: readonly Match[] | undefined;
  /** Parts whose middle has its place on the pattern. */
  readonly centred?: readonly Centred[] | undefined;
  /** Least distance between pieces, mm. */
  readonly gap: number;
  /** Least distance from a piece to the edge of the stock, mm. */
  readonly margin: number;
  /** Narrowest strip that ruler cuts are to take off, mm; 0 where any will do, `LEAST_STRIP` when not said. */
  readonly leastStrip?: number | undefined;
  readonly pins: readonly Pin[];
  readonly output: OutputSettings;
  /** The machine the straps are sewn on, where a strap says nothing of its own. */
  readonly sewingMachine?: SewingMachine | undefined;
  /** File of the workshop that machine and materials are taken from; what it gave stands in the project. */
  readonly workshop?: string | undefined;
  readonly pricing?: Pricing | undefined;
  /** Plans kept by name, newest first. */
  readonly plans?: readonly KeptPlan[] | undefined;
}
