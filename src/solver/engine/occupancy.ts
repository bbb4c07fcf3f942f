// What a variable occupies, made ready to be compared: for each value its runs in order, apart from one another, and where they begin and
// end in all. Two values of two variables then clash, or not, by one walk along both lists.
import type { Occupier } from "../model/problem.js";

type Run = readonly [from: number, to: number];

export interface Occupancy {
  /** For each value its runs, none meeting the next. */
  readonly runs: readonly (readonly Run[])[];
  /** For each value where its runs begin and end; a value without runs ends before it begins. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** Where the runs of all values begin and end. */
  readonly start: number;
  readonly end: number;
}

export function occupancyOf(size: number, windows: Occupier["windows"]): Occupancy {
  const from = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  const to = new Float64Array(size).fill(Number.NEGATIVE_INFINITY);
  let start = Number.POSITIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  const runs = Array.from({ length: size }, (_, value) => {
    const merged = mergeRuns(windows[value] ?? []);
    const [first, last] = [merged[0], merged.at(-1)];
    if (first && last) {
      from[value] = first[0];
      to[value] = last[1];
      start = Math.min(start, first[0]);
      end = Math.max(end, last[1]);
    }
    return merged;
  });
  return { runs, from, to, start, end };
}

/** Runs in order, those that overlap made one. */
function mergeRuns(runs: readonly Run[]): readonly Run[] {
  if (runs.length < 2) return runs;
  const out: Run[] = [];
  for (const [from, to] of [...runs].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && from <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], to)];
    else out.push([from, to]);
  }
  return out;
}

/** Whether two lists in order have a whole number in common. */
export function runsMeet(one: readonly Run[], two: readonly Run[]): boolean {
  for (let i = 0, j = 0; i < one.length && j < two.length; ) {
    const [a, b] = [one[i]!, two[j]!];
    if (a[0] <= b[1] && b[0] <= a[1]) return true;
    if (a[1] < b[1]) i++;
    else j++;
  }
  return false;
}
