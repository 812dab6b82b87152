import { isSmallPicture } from "../../core/cupboard/cupboard.ts";

/** Longest side of a picture that is kept with a piece, px, and what it is made smaller to where it stays too heavy. */
const SIDES = [480, 320, 200] as const;

/** A photograph made small enough to be kept, as a data address; null when the browser cannot read it as a picture. */
export async function smallPicture(file: Blob): Promise<string | null> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (picture === null) return null;
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d");
  let found: string | null = null;
  for (const side of SIDES) {
    if (found !== null || pen === null) break;
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    pen.imageSmoothingQuality = "high";
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const address = canvas.toDataURL("image/jpeg", 0.75);
    if (isSmallPicture(address)) found = address;
  }
  picture.close();
  return found;
}
