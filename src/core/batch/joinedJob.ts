import { jobOf, laysOf, type ProjectJob } from "../job/projectJob.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Project } from "../project/project.ts";
import type { Language } from "../units/language.ts";
import type { OrderLay } from "./together.ts";

/** An order's job under the order's name. */
export interface NamedJob {
  readonly name: string;
  readonly job: ProjectJob;
}

/** A project without stock that another lay has been given. */
function withoutStock(project: Project, withheld: OrderLay["withheld"]): Project {
  return {
    ...project,
    materials: project.materials.map((material) => {
      const gone = withheld[material.id];
      return gone === undefined
        ? material
        : { ...material, stock: material.stock.filter(({ id }) => !gone.includes(id)) };
    }),
  };
}

/** The job of an order that leaves that stock alone. */
export function jobWithout(job: ProjectJob, withheld: OrderLay["withheld"], language: Language): ProjectJob {
  return Object.keys(withheld).length === 0 ? job : jobOf(withoutStock(job.project, withheld), language);
}

/** Between an order's name and the id or name of its piece. */
export const ORDER_SIGN = ": ";

/**
 * One job out of those of several orders with the same materials: every piece of each, under its order's name, so that
 * no piece on the table is anybody's. Its straps stay with the orders, whose own cut sheets say how they are made.
 */
export function joinedJob(orders: readonly NamedJob[], title: (orders: number) => string): ProjectJob {
  const first = orders[0]!.job.project;
  const bags = orders.reduce((sum, { job }) => sum + job.project.bags, 0);
  const names = orders.map(({ name }) => name).join(", ");
  const project: Project = {
    ...first,
    name: names.length <= LONGEST_LIST ? names : title(orders.length),
    bags,
    straps: [],
    panels: [],
    seams: [],
    matches: [],
    centred: [],
    measures: [],
    pins: [],
  };
  const pieces = ordersPieces(orders).flat();
  const heldLengthwise = orders.flatMap(({ name, job }) => job.heldLengthwise.map((id) => name + ORDER_SIGN + id));
  const list = { pieces, straps: [], heldLengthwise };
  return { project, ...list, lays: laysOf(project, list), troubles: [] };
}

/** The pieces of each order as they are laid together with the others'. */
export function ordersPieces(orders: readonly NamedJob[]): (readonly CutPiece[])[] {
  const seen = new Set<string>();
  return orders.map(({ name, job }) =>
    job.pieces.map((piece) => {
      const named = ofOrder(piece, name);
      // "a: b" of order "c" and "b" of order "c: a" would meet.
      let { id } = named;
      for (let n = 2; seen.has(id); n++) id = `${named.id}-${n}`;
      seen.add(id);
      return { ...named, id };
    }),
  );
}

/** A title of so many characters stands on a sheet in one line. */
const LONGEST_LIST = 60;

function ofOrder(piece: CutPiece, order: string): CutPiece {
  return {
    ...piece,
    id: order + ORDER_SIGN + piece.id,
    name: order + ORDER_SIGN + piece.name,
    partId: order + ORDER_SIGN + piece.partId,
  };
}
