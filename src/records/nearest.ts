// The word a writer probably meant: the nearest of the allowed ones, counting a swap of neighbours as one slip.

/** Slips (insert, drop, change, swap neighbours) that turn one word into the other; case does not count. */
export function slips(a: string, b: string): number {
  const x = a.toLowerCase();
  const y = b.toLowerCase();
  let before: number[] = [];
  let last = Array.from({ length: y.length + 1 }, (_, j) => j);
  for (let i = 1; i <= x.length; i++) {
    const row = [i];
    for (let j = 1; j <= y.length; j++) {
      const same = x[i - 1] === y[j - 1] ? 0 : 1;
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && x[i - 1] === y[j - 2] && x[i - 2] === y[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      row.push(least);
    }
    before = last;
    last = row;
  }
  return last[y.length]!;
}

/**
 * The nearest candidate, or nothing when none is near enough to be a slip of the hand, or two are equally near.
 * Of names of one or two characters (S1, R2) every one is near every other, so only their case may differ.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = word.length < 3 ? 0.5 : Math.max(1, Math.floor(word.length / 3)) + 0.5;
  let alone = true;
  for (const candidate of new Set(candidates)) {
    if (Math.abs(candidate.length - word.length) > least) continue;
    const count = slips(word, candidate);
    if (count > least) continue;
    alone = count < least;
    best = candidate;
    least = count;
  }
  return alone ? best : undefined;
}

/** "a, b, c and 4 more": a list a reader can take in. */
export function few(words: readonly string[], most = 8): string {
  if (words.length === 0) return "none";
  return words.length <= most ? words.join(", ") : `${words.slice(0, most).join(", ")} and ${words.length - most} more`;
}
