// The word a writer probably meant: the nearest of the allowed ones, counting a swap of neighbours as one slip.
import { itemAt } from "./must.js";

/** Slips (insert, drop, change, swap neighbours) that turn one word into the other; case does not count. */
export function editDistance(a: string, b: string): number {
  const x = a.toLowerCase();
  const y = b.toLowerCase();
  let before: number[] = [];
  let last = Array.from({ length: y.length + 1 }, (_, j) => j);
  for (let i = 1; i <= x.length; i++) {
    const row = [i];
    for (let j = 1; j <= y.length; j++) {
      const same = x[i - 1] === y[j - 1] ? 0 : 1;
      let least = Math.min(itemAt(last, j) + 1, itemAt(row, j - 1) + 1, itemAt(last, j - 1) + same);
      if (i > 1 && j > 1 && x[i - 1] === y[j - 2] && x[i - 2] === y[j - 1]) least = Math.min(least, itemAt(before, j - 2) + 1);
      row.push(least);
    }
    before = last;
    last = row;
  }
  return itemAt(last, y.length);
}

/**
 * The nearest candidate, or nothing when none is near enough to be a slip of the hand, or two are equally near.
 * Of names of one or two characters (S1, R2) every one is near every other, so only their case may differ.
 * A maker's name in front, or the kind of thing behind, makes no two names near: what stands between must be.
 * A number with its sign turned around is another number: -12 is no slip for +12, nor for 12.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = mostSlips(word) + 0.5;
  let alone = true;
  for (const candidate of new Set(candidates)) {
    if (Math.abs(candidate.length - word.length) > least) continue;
    const count = editDistance(word, candidate);
    if (count > least || isTurned(word, candidate) || !nearInside(word, candidate)) continue;
    alone = count < least;
    best = candidate;
    least = count;
  }
  return alone ? best : undefined;
}

/** Whether one of two numbers is below zero and the other is not; a dash that is no hyphen is a minus too. */
function isTurned(a: string, b: string): boolean {
  const [x, y] = [a, b].map((word) => /^([-+\u2010-\u2015\u2212]?)[.0-9]/.exec(word)?.[1]);
  if (x === undefined || y === undefined) return false;
  return ["", "+"].includes(x) !== ["", "+"].includes(y);
}

function mostSlips(word: string): number {
  return word.length < 3 ? 0 : Math.max(1, Math.floor(word.length / 3));
}

/**
 * Whether two names are near in the words they do not share. vellgate-serial-card and vellgate-floppy-card have but maker and kind in
 * common; of tallow-tracer and tallow-bus-tracer one has a word more, with shared words on both sides of it.
 */
function nearInside(a: string, b: string): boolean {
  const x = a.toLowerCase().split(separators);
  const y = b.toLowerCase().split(separators);
  const shorter = Math.min(x.length, y.length);
  let front = 0;
  while (front < shorter && x[front] === y[front]) front += 1;
  let back = 0;
  while (back < shorter - front && x.at(-1 - back) === y.at(-1 - back)) back += 1;
  if (front + back === 0) return true;
  const [p, q] = [x.slice(front, x.length - back), y.slice(front, y.length - back)].map((rest) => rest.join("-"));
  if (p === undefined || q === undefined) return true;
  // A whole word more: between shared words it is a slip; at an end, after a single shared word, it is another thing of one maker.
  if (p === "" || q === "") return (front > 0 && back > 0) || front + back > 1 || p.length + q.length < 2;
  return editDistance(p, q) <= mostSlips(p.length > q.length ? p : q) || lettersOf(p) === lettersOf(q);
}

/** What is left when the order is forgotten: 61 and 16 are one slip of the hand, however short. */
function lettersOf(word: string): string {
  return [...word].sort().join("");
}

const separators = /[-_ /]+/;

/** "a, b, c and 4 more": a list a reader can take in; each word as `write` has it. */
export function truncateList(words: readonly string[], most = 8, write: (word: string) => string = (word) => word): string {
  if (words.length === 0) return "none";
  const shown = words.slice(0, most).map(write).join(", ");
  return words.length <= most ? shown : `${shown} and ${words.length - most} more`;
}
