// What a thread of a batch runs in tests/bench/manyOrders.ts in place of laying: a record as large as that of a small order.
const KINDS = [
  "plan.json",
  "cut-sheet.pdf",
  "cut-sheet.txt",
  "cut-sheet.csv",
  "labels.pdf",
  "roll.svg",
  "roll.dxf",
];
const MORE = ["roll-sheets.pdf", "roll-long.pdf", "roll-projector.pdf", "roll-ruler.pdf", "patterns.pdf"];

export default ({ task: { task } }) => ({
  folder: task.folder,
  currency: "EUR",
  length: 400,
  use: 0.5,
  gap: 0,
  toPay: 700,
  taken: [],
  leftOut: [],
  notes: [],
  faults: [],
  shares: task.orders.map(({ name }) => ({ name, bags: 1, pieces: 3, length: 400, toPay: 700 })),
  files: [...KINDS, ...MORE].map((name) => ({ name: `${task.folder}/${name}`, sha256: "0".repeat(64) })),
});
