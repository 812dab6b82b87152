/** The known word closest to what was typed, or null when none is within a third of its length. O(words × length²). */
export function nearestWord(typed: string, words: readonly string[]): string | null {
  let best: string | null = null;
  let least = Math.max(1, Math.floor(typed.length / 3)) + 1;
  for (const word of words) {
    const d = editDistance(typed, word);
    if (d < least) {
      least = d;
      best = word;
    }
  }
  return best;
}

/** Levenshtein distance. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
