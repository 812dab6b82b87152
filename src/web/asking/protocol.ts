/** A question to a worker, with its number. */
export interface Asked<A> {
  readonly id: number;
  readonly ask: A;
}

/** An answer, or what went wrong in our code. */
export type Answered =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly reason: string };
