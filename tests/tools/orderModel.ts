// What so many orders a day need, worked out from figures measured on one core: the arithmetic behind
// docs/explanation/a-million-orders.md. Run by itself it prints the table there: `tsx tests/tools/orderModel.ts`.
import { fileURLToPath } from "node:url";

/** One order of a kind, as measured. Processor time in ms of one core, sizes in bytes. */
export interface OrderFigures {
  readonly name: string;
  /** Reading its project and working its pieces out; done on both sides. */
  readonly readMs: number;
  readonly searchMs: number;
  /** Checking and drawing its files, on the batch's side. */
  readonly drawMs: number;
  /** The queue at both ends together. */
  readonly queueMs: number;
  /** Its task and its plans, as they go through the store. */
  readonly taskBytes: number;
  readonly plansBytes: number;
  /** Its folder. */
  readonly filesBytes: number;
}

export interface OrderLoad {
  readonly ordersADay: number;
  /** Share of a core that is planned with: the rest is for peaks. */
  readonly planned: number;
  /** Lays that wait in the store at a time, of each batch. */
  readonly waiting: number;
}

export interface OrderNeeds {
  readonly ordersASecond: number;
  /** Cores that search, and cores that check and draw, whole ones. */
  readonly workerCores: number;
  readonly batchCores: number;
  /** Through the store, both ways, bits a second. */
  readonly networkBits: number;
  /** Commands that the store answers in a second. */
  readonly storeCommands: number;
  /** In the store at a time, bytes. */
  readonly storeBytes: number;
  /** Files of a day, bytes. */
  readonly diskBytes: number;
}

const SECONDS_A_DAY = 86_400;
/** Given out, taken, kept alive, put back, asked for, taken away: of one lay, as many commands at most. */
const COMMANDS_A_LAY = 10;

/** What orders of one kind need, each by itself in a lay. */
export function orderNeeds(order: OrderFigures, { ordersADay, planned, waiting }: OrderLoad): OrderNeeds {
  const ordersASecond = ordersADay / SECONDS_A_DAY;
  const cores = (ms: number): number => Math.ceil((ordersASecond * ms) / 1000 / planned);
  const half = order.queueMs / 2;
  const batchCores = cores(2 * order.readMs + order.drawMs + half);
  return {
    ordersASecond,
    workerCores: cores(order.readMs + order.searchMs + half),
    batchCores,
    // The task goes in and out of the store, so do its plans.
    networkBits: 8 * 2 * ordersASecond * (order.taskBytes + order.plansBytes),
    storeCommands: COMMANDS_A_LAY * ordersASecond,
    storeBytes: batchCores * waiting * (order.taskBytes + order.plansBytes),
    diskBytes: ordersADay * order.filesBytes,
  };
}

/** What `npx tsx tests/bench/orderParts.ts` and the empty lays of `tests/bench/batch.ts` printed, 2026-11-30, Node 20. */
const QUEUE_MS = 2.05;
const CROSSBODY: OrderFigures = {
  name: "crossbody, two cloths, effort 0.2",
  readMs: 14,
  searchMs: 68,
  drawMs: 555,
  queueMs: QUEUE_MS,
  taskBytes: 3542,
  plansBytes: 1225,
  filesBytes: 284_833,
};

const ORDERS: readonly OrderFigures[] = [
  {
    name: "pouch, one cloth, effort 0.2",
    readMs: 8,
    searchMs: 173,
    drawMs: 439,
    queueMs: QUEUE_MS,
    taskBytes: 1029,
    plansBytes: 526,
    filesBytes: 128_712,
  },
  CROSSBODY,
  { ...CROSSBODY, name: "the same, were its search to take 2 s (supposed, not measured)", searchMs: 2000 },
];

/** The load of the page. */
const MILLION: OrderLoad = { ordersADay: 1_000_000, planned: 0.7, waiting: 512 };

/** Rows of a table in Markdown: what each kind of order needs. */
export function needsTable(): string {
  const rows = ORDERS.map((order) => {
    const needs = orderNeeds(order, MILLION);
    const cells = [
      order.name,
      `${needs.workerCores}`,
      `${needs.batchCores}`,
      `${(needs.networkBits / 1e6).toFixed(2)} Mbit/s`,
      `${needs.storeCommands.toFixed(0)}`,
      `${Math.ceil(needs.storeBytes / 1e6)} MB`,
      `${Math.round(needs.diskBytes / 1e9)} GB`,
    ];
    return `| ${cells.join(" | ")} |`;
  });
  return [
    "| order | cores that search | cores that check and draw | network at the store | its commands a second | in it at a time | files of a day |",
    "| --- | ---: | ---: | ---: | ---: | ---: | ---: |",
    ...rows,
  ].join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(needsTable());
