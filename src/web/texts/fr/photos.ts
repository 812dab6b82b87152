import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enPhotos } from "../en/photos.ts";
import { words } from "../words.tsx";

/** Photographs in French, a draft. */
export const frPhotos: Draft<typeof enPhotos> = {
  take: "Photo pour l’échantillon",
  another: "Une autre photo",
  takeAway: "Retirer la photo",
  unread: (file) => `${file} n’est pas une image que ce navigateur sait montrer. Choisissez un JPEG, PNG ou WebP.`,
  underlay: "Poser une photo dessous",
  reading: "Lecture de la photo …",
  straightened: "La feuille de repère y est\u00a0: la photo se trouve sous le contour, redressée et à l’échelle.",
  takeOutline: "Prendre le contour trouvé",
  tookOutline: "contour d’une photo",
  shows: (width) =>
    words(
      "De son bord gauche à son bord droit la photo montre ",
      width,
      ". Prenez-la bien d’en haut\u00a0; avec notre feuille de repère à côté de la chute, elle trouve seule l’échelle et le contour.",
    ),
  showsLabel: "Ce que la photo montre de gauche à droite",
};
