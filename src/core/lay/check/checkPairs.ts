import type { LayFinding } from "../../problems/layProblems.ts";
import { type CheckedCopy, copyName } from "./laidOutline.ts";
import { outlineDistance } from "./outlineDistance.ts";
import { overlapArea } from "./overlapArea.ts";
import { areaTolerance, lengthTolerance } from "./tolerance.ts";

/** A plan with more clashes than this is beyond mending; the rest is not looked for. */
const MOST_FINDINGS = 200;

/**
 * Overlaps and broken gaps between the copies on one stock. Sweeps along the stock, so that only copies that are
 * near each other along it are compared.
 */
export function checkPairs(copies: readonly CheckedCopy[], gap: number): LayFinding[] {
  const sorted = [...copies].sort((a, b) => a.outline.minX - b.outline.minX);
  const findings: LayFinding[] = [];
  let active: CheckedCopy[] = [];
  for (const copy of sorted) {
    active = active.filter((other) => other.outline.maxX + gap > copy.outline.minX);
    for (const other of active) {
      const finding = checkPair(other, copy, gap);
      if (finding) findings.push(finding);
      if (findings.length >= MOST_FINDINGS) return findings;
    }
    active.push(copy);
  }
  return findings;
}

function checkPair(first: CheckedCopy, second: CheckedCopy, gap: number): LayFinding | null {
  const a = first.outline;
  const b = second.outline;
  const commonX = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const commonY = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  if (commonX <= -gap || commonY <= -gap) return null;
  const names = { path: second.path, ...copyName(second), other: copyName(first) };
  const allowed = areaTolerance(a, b);
  if (commonX > 0 && commonY > 0 && commonX * commonY > allowed) {
    const areaMm2 = overlapArea(a, b);
    if (areaMm2 > allowed) return { code: "plan-overlap", ...names, areaMm2 };
  }
  if (gap <= 0) return null;
  const distanceMm = outlineDistance(a, b, gap);
  return distanceMm < gap - lengthTolerance(a, b)
    ? { code: "plan-too-close", ...names, distanceMm, leastMm: gap }
    : null;
}
