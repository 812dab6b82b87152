import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";

/** How a strap's sentences change it. */
export type SetStrap = (part: Partial<StrapWish>, label: string, key?: string) => void;

/** What the sentences about a strap share. */
export interface StrapBlanks {
  readonly strap: StrapWish;
  readonly path: (field: string) => string;
  readonly set: SetStrap;
}
