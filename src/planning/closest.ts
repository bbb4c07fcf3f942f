// The word somebody probably meant.

/** The nearest of the names, when it is near enough to be meant; undefined otherwise. Levenshtein distance (1966). */
export function closest(word: string, names: readonly string[]): string | undefined {
  let best: { name: string; distance: number } | undefined;
  for (const name of names) {
    const d = distance(word.toLowerCase(), name.toLowerCase());
    if (d <= Math.max(1, Math.floor(name.length / 3)) && (!best || d < best.distance)) best = { name, distance: d };
  }
  return best?.name;
}

function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    }
    row = next;
  }
  return row[b.length]!;
}
