/**
 * Font files as bytes (TrueType, OpenType or WOFF), read by the host: from disk in the CLI, by fetch in the browser.
 * `fallbacks` are asked in turn for characters that the first fonts lack, and read only when there are any.
 */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly fallbacks: readonly (() => Promise<Uint8Array>)[];
}
