/** What browsers and Node ≥ 18 both have for unpacking zlib data; only what is used of it. */
interface Unpacker {
  readonly writable: { getWriter(): { write(chunk: Uint8Array): Promise<void>; close(): Promise<void> } };
  readonly readable: { getReader(): { read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array }> } };
}
declare const DecompressionStream: new (format: "deflate" | "gzip") => Unpacker;

/** Data packed as zlib (RFC 1950) or gzip (RFC 1952), unpacked. Rejects when the data is neither. */
export async function inflated(data: Uint8Array, format: "deflate" | "gzip"): Promise<Uint8Array> {
  const unpacker = new DecompressionStream(format);
  const writer = unpacker.writable.getWriter();
  const written = writer.write(data).then(() => writer.close());
  // What is amiss with the data is told where it is read.
  written.catch(() => undefined);
  const reader = unpacker.readable.getReader();
  const chunks: Uint8Array[] = [];
  for (let part = await reader.read(); !part.done; part = await reader.read()) chunks.push(part.value!);
  await written;
  const out = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    out.set(chunk, at);
    at += chunk.length;
  }
  return out;
}
