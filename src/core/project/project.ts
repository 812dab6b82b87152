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
  /** Whatever one bag costs besides cloth and supplies and is not reckoned by the minute. */
  readonly workPerBag: number;
  /** Work on one bag in minutes, and what an hour of it costs. */
  readonly minutesPerBag?: number | undefined;
  readonly hourlyRate?: number | undefined;
  /** Rent, power, machines: a share of materials and work, an amount for each bag, or both. */
  readonly overheadShare?: number | undefined;
  readonly overheadPerBag?: number | undefined;
  /** `markup`: share of the cost added to it. `margin`: share of the price that is left after the cost. */
  readonly by: (typeof PRICED_BY)[number];
  readonly share: number;
}

/** The tax on what is bought and sold, as far as it concerns the maker. */
export interface SalesTax {
  /** Share of the price without it. */
  readonly rate: number;
  /** True when the prices in the project contain it; false when the shop adds it. */
  readonly inPrices: boolean;
  /** True when the maker charges it on bags and gets back what is paid: costs then count without it. */
  readonly onBags: boolean;
}

/** Something that goes into every bag besides cloth: a ring, a zip, thread, a label. */
export interface Supply {
  readonly id: string;
  readonly name: string;
  /** How many, or how much of one, go into a bag. */
  readonly perBag: number;
  /** What a pack costs; null when that is not known. */
  readonly price: number | null;
  /** How many are sold together. */
  readonly pack: number;
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
  readonly tax?: SalesTax | undefined;
  readonly supplies?: readonly Supply[] | undefined;
  /** Plans kept by name, newest first. */
  readonly plans?: readonly KeptPlan[] | undefined;
}
