import type { BenchLine, BenchPlacement } from "./benchLine.ts";
import type { Instance } from "./dataset.ts";
import { benchModule } from "./instancesAt.ts";
import { verifyLine } from "./verifyLine.ts";

/** What another packer made: a plan for the strip, or the density of a box of its own choice. */
export type OtherResult =
  | { readonly length: number; readonly placements: readonly BenchPlacement[] }
  | { readonly density: number };

/** A general-purpose packer to compare with; rectangles only. */
export interface OtherPacker {
  readonly name: string;
  pack(instance: Instance, quarterTurns: boolean): OtherResult;
}

/** One line of comparison. `gap` is against our bound; absent when the packer cannot keep to the strip's width. */
export interface AgainstLine {
  readonly packer: string;
  readonly density: number;
  readonly length?: number;
  readonly gap?: number;
  readonly seconds: number;
}

/** The packers that the checkout's bench folder knows. Throws `UsageError` elsewhere. */
export async function otherPackers(): Promise<readonly OtherPacker[]> {
  return (await benchModule<{ default: readonly OtherPacker[] }>("otherPackers.ts", "against")).default;
}

/** Runs a packer on an instance; its plan is verified like ours, and told as faults when wrong. */
export function runAgainst(
  packer: OtherPacker,
  instance: Instance,
  ours: BenchLine,
  quarterTurns: boolean,
): { line: AgainstLine; faults: string[] } {
  const start = performance.now();
  const result = packer.pack(instance, quarterTurns);
  const seconds = Math.round(performance.now() - start) / 1000;
  if ("density" in result) return { line: { packer: packer.name, density: result.density, seconds }, faults: [] };
  const { length, placements } = result;
  const density = (ours.density * ours.length) / length;
  const gap = (length - ours.bound) / ours.bound;
  const faults = verifyLine(instance, { ...ours, length, density, placements }, quarterTurns);
  return { line: { packer: packer.name, density, length, gap, seconds }, faults };
}
