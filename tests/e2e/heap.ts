import type { CDPSession, Page } from "playwright-core";

/** Kinds of the heap's nodes that the browser keeps for itself: compiled code comes and goes as it likes. */
const OWN_OF_BROWSER = new Set(["code", "object shape", "hidden", "synthetic"]);

/** What a heap snapshot of V8 says of its layout (documented in its `HeapProfiler` protocol and read by every inspector). */
interface Snapshot {
  readonly snapshot: {
    readonly meta: { readonly node_fields: readonly string[]; readonly node_types: readonly [readonly string[]] };
  };
  readonly nodes: readonly number[];
}

/** Readings further apart than this are not yet at rest, kB. */
const AT_REST = 30;

/**
 * Kilobytes that the page itself holds, garbage taken away and the browser's compiled code left out, once what is being
 * written to the device is written: a write under way holds some 8 kB until the disk has it.
 */
export async function heldKilobytes(protocol: CDPSession): Promise<number> {
  let before = await heldNow(protocol);
  for (let tries = 0; ; tries++) {
    await new Promise((resolve) => setTimeout(resolve, 2000));
    const now = await heldNow(protocol);
    if (before - now < AT_REST || tries === 20) return now;
    before = now;
  }
}

async function heldNow(protocol: CDPSession): Promise<number> {
  for (let i = 0; i < 2; i++) await protocol.send("HeapProfiler.collectGarbage");
  const parts: string[] = [];
  const take = ({ chunk }: { chunk: string }) => parts.push(chunk);
  protocol.on("HeapProfiler.addHeapSnapshotChunk", take);
  await protocol.send("HeapProfiler.takeHeapSnapshot", { reportProgress: false });
  protocol.off("HeapProfiler.addHeapSnapshotChunk", take);
  const { snapshot, nodes } = JSON.parse(parts.join("")) as Snapshot;
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const [type, size] = [fields.indexOf("type"), fields.indexOf("self_size")];
  let bytes = 0;
  for (let at = 0; at < nodes.length; at += fields.length)
    if (!OWN_OF_BROWSER.has(types[0][nodes[at + type]!]!)) bytes += nodes[at + size]!;
  return bytes / 1000;
}

/** So many edits of the first strap's length, each a step of its own, some milliseconds apart. */
export async function editStrap(page: Page, from: number, many: number): Promise<void> {
  await page.evaluate(
    async ([first, count]) => {
      type Doc = { straps: { length: { mm: number } }[] };
      type Held = { history: { steps: { value: Doc }[]; at: number } };
      type Session = { state: { get(): Held }; change(next: Doc, label: string): void };
      const { session } = (window as unknown as { laywright: { session: Session } }).laywright;
      for (let i = first!; i < first! + count!; i++) {
        const { history } = session.state.get();
        const now = history.steps[history.at]!.value;
        const [strap, ...others] = now.straps;
        const next = { ...strap!, length: { ...strap!.length, mm: 600 + i } };
        session.change({ ...now, straps: [next, ...others] }, `edit ${i}`);
        await new Promise((resolve) => setTimeout(resolve, 15));
      }
    },
    [from, many],
  );
  await page.waitForSelector('[data-keeping="kept"]', { state: "attached" });
}
