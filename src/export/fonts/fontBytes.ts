/**
 * Font files as bytes (TrueType or OpenType), read by the host: from disk in the CLI, by fetch in the browser.
 * `fallbacks` are asked in turn for characters that the first font lacks.
 */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  readonly fallbacks: readonly Uint8Array[];
}
