/** What can be wrong with a project file. */
export type FileProblem =
  | {
      readonly code: "file-not-json";
      readonly path: string;
      readonly line: number;
      readonly column: number;
      readonly reason: string;
    }
  | { readonly code: "unknown-key"; readonly path: string; readonly key: string; readonly nearest: string | null };
