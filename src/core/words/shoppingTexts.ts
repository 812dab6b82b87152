/** What a shopping list says in one language; a language that lacks a sentence does not compile. */
export interface ShoppingTexts {
  readonly title: (projects: readonly string[]) => string;
  readonly groups: Readonly<Record<"cloth" | "pieces" | "hardware" | "consumables" | "supplies", string>>;
  readonly wide: (width: string) => string;
  readonly packs: (packs: number, pack: number) => string;
  readonly total: (money: string) => string;
  readonly noTotal: (currency: string) => string;
  /** Below the sum, of hardware, thread and tape. */
  readonly onTop: string;
  readonly nothing: string;
  /** What to cut into, of several stocks, and why. */
  readonly open: {
    readonly own: (stock: string) => string;
    readonly buyLength: (stock: string, length: string, money: string | null) => string;
    readonly buyPiece: (stock: string, money: string | null) => string;
    readonly nothing: string;
    readonly inAll: (money: string) => string;
    readonly others: string;
    readonly other: (stocks: readonly string[], money: string | null, leftOut: number) => string;
    readonly leftOut: (pieces: number) => string;
  };
  /** Heads of the table as data. */
  readonly heads: readonly [
    group: string,
    what: string,
    amount: string,
    toPay: string,
    currency: string,
    shop: string,
    projects: string,
  ];
}
