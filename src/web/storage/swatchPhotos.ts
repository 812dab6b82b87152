import { createStore, type Store } from "../state/store.ts";

/** Photographs of her materials by name, as small pictures; of this device, for all projects. */
export interface SwatchPhotos {
  /** Address of each picture, by the material's name. */
  readonly photos: Store<ReadonlyMap<string, string>>;
  /** Keeps a photograph, cut to the shape of a swatch; false when the browser cannot read it as a picture. */
  keep(name: string, file: Blob): Promise<boolean>;
  /** Gives a material that has another name now the photograph that it had. */
  follow(from: string, to: string): void;
  forget(name: string): void;
}

const PLACE = "laywright-swatches";
/** Four times what a swatch is on the page, for sharp screens, px. */
const SIZE = { width: 432, height: 280 } as const;

/** Opens the photographs of this device; without storage, or without room, they last as long as the page. */
export function openSwatchPhotos(): SwatchPhotos {
  const photos = createStore<ReadonlyMap<string, string>>(readPhotos());
  const put = (next: ReadonlyMap<string, string>) => {
    photos.set(next);
    try {
      localStorage.setItem(PLACE, JSON.stringify([...next]));
    } catch {
      // The picture is on the page all the same.
    }
  };
  return {
    photos,
    keep: async (name, file) => {
      const picture = await createImageBitmap(file).catch(() => null);
      if (picture === null) return false;
      const shown = cutToSwatch(picture);
      picture.close();
      if (shown !== null) put(new Map(photos.get()).set(name, shown));
      return shown !== null;
    },
    follow: (from, to) => {
      const own = photos.get().get(from);
      if (own !== undefined && from !== to && !photos.get().has(to)) put(new Map(photos.get()).set(to, own));
    },
    forget: (name) => {
      const next = new Map(photos.get());
      next.delete(name);
      put(next);
    },
  };
}

/** The middle of a picture at the size of a swatch. */
function cutToSwatch(picture: ImageBitmap): string | null {
  const canvas = document.createElement("canvas");
  canvas.width = SIZE.width;
  canvas.height = SIZE.height;
  const pen = canvas.getContext("2d");
  if (pen === null) return null;
  const scale = Math.max(SIZE.width / picture.width, SIZE.height / picture.height);
  const [width, height] = [picture.width * scale, picture.height * scale];
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, (SIZE.width - width) / 2, (SIZE.height - height) / 2, width, height);
  return canvas.toDataURL("image/jpeg", 0.8);
}

function readPhotos(): ReadonlyMap<string, string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? "[]");
    if (!Array.isArray(kept)) return new Map();
    return new Map(kept.filter(isPhoto));
  } catch {
    return new Map();
  }
}

function isPhoto(entry: unknown): entry is [string, string] {
  return (
    Array.isArray(entry) &&
    typeof entry[0] === "string" &&
    typeof entry[1] === "string" &&
    entry[1].startsWith("data:image/")
  );
}
