import type { enPhotos } from "../en/photos.ts";
import { words } from "../words.tsx";

/** Photographs of materials and leftovers in German. */
export const dePhotos: typeof enPhotos = {
  take: "Foto für das Muster",
  another: "Ein anderes Foto",
  takeAway: "Foto wegnehmen",
  unread: (file) => `${file} ist kein Bild, das dieser Browser zeigen kann. Wählen Sie JPEG, PNG oder WebP.`,
  underlay: "Ein Foto darunterlegen",
  reading: "Das Foto wird gelesen …",
  straightened: "Das Fotoblatt ist darauf: Das Foto liegt entzerrt und im Maßstab unter dem Umriss.",
  takeOutline: "Den gefundenen Umriss nehmen",
  tookOutline: "Umriss aus einem Foto",
  shows: (width) =>
    words(
      "Vom linken zum rechten Rand zeigt das Foto ",
      width,
      ". Fotografieren Sie gerade von oben; liegt unser Fotoblatt daneben, findet es Maßstab und Umriss selbst.",
    ),
  showsLabel: "Was das Foto von links nach rechts zeigt",
};
