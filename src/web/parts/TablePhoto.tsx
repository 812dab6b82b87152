import { useMemo } from "preact/hooks";
import type { TablePicture } from "../../core/patterns/patternDrawing.ts";

/** A straightened photograph at its place in a drawing in mm, y up. */
export function TablePhoto({ picture }: { picture: TablePicture }) {
  const shown = useMemo(() => pictureUrl(picture), [picture]);
  const { minX, maxX, minY, maxY } = picture.box;
  if (shown === null) return null;
  return (
    <image
      href={shown}
      width={maxX - minX}
      height={maxY - minY}
      transform={`translate(${minX} ${maxY}) scale(1 -1)`}
      preserveAspectRatio="none"
    />
  );
}

/** The photograph as the browser shows pictures; null where it cannot draw. */
function pictureUrl({ width, height, gray }: TablePicture): string | null {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d");
  if (pen === null) return null;
  const pixels = pen.createImageData(width, height);
  for (const [i, value] of gray.entries()) pixels.data.set([value, value, value, 255], 4 * i);
  pen.putImageData(pixels, 0, 0);
  return canvas.toDataURL("image/jpeg", 0.85);
}
