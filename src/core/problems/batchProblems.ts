/** What can be wrong with a table of orders. `path` is the head of the column, or empty for the whole table. */
export type BatchProblem =
  | { readonly code: "orders-empty"; readonly path: string }
  | { readonly code: "orders-not-a-list"; readonly path: string }
  | { readonly code: "orders-unreadable"; readonly path: string; readonly line: number }
  | { readonly code: "order-column-missing"; readonly path: string }
  | { readonly code: "order-column-unknown"; readonly path: string; readonly nearest: string | null }
  | { readonly code: "order-column-ambiguous"; readonly path: string; readonly parts: readonly string[] }
  /** Two columns that say the same thing. */
  | { readonly code: "order-column-twice"; readonly path: string; readonly first: string }
  | { readonly code: "order-nameless"; readonly path: string }
  | { readonly code: "order-name-twice"; readonly path: string; readonly name: string; readonly firstRow: number }
  | { readonly code: "order-too-many-cells"; readonly path: string; readonly count: number; readonly most: number }
  | { readonly code: "due-unreadable"; readonly path: string; readonly value: string };
