import { inflated } from "./inflated.ts";
import { unpackPixels } from "./pixelFont.ts";
import { unpackWoff } from "./unpackWoff.ts";

/** A font file as libraries read it: unpacked, whether it came as gzip, WOFF, our font of squares or as it is. */
export async function unpackFont(file: Uint8Array): Promise<Uint8Array> {
  const isGzip = file[0] === 0x1f && file[1] === 0x8b;
  return unpackPixels(await unpackWoff(isGzip ? await inflated(file, "gzip") : file));
}
