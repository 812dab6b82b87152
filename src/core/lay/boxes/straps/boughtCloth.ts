/** What is lost of cloth between the shop and the cutting table. */
export interface ClothLoss {
  /** Cut off each cut end to square it, mm. */
  readonly squaring: number;
  /** Shares lost in a wash before cutting, 0 … 0.3. */
  readonly lengthwise: number;
  readonly crosswise: number;
}

/** What is left to cut from of a length as bought: both ends squared, then washed. 0 when nothing is left. mm. */
export function lengthToCut(bought: number, { squaring, lengthwise }: ClothLoss): number {
  return Math.max(0, bought - 2 * squaring) * (1 - lengthwise);
}

/** What has to be bought for a length to cut from; the other way round. mm. */
export function lengthToBuy(cut: number, { squaring, lengthwise }: ClothLoss): number {
  return cut / (1 - lengthwise) + 2 * squaring;
}
