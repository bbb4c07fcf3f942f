// One minimal set at a time, by halving: a subset of groups that cannot stand (QuickXplain), and one to give up (FastDiag).
import type { Subsets } from "./subsets.js";

/** A minimal subset of `groups` that cannot stand, given that they cannot (Junker, "QuickXplain", AAAI 2004). */
export function quickXplain(subsets: Subsets, groups: readonly number[]): readonly number[] {
  const explain = (background: readonly number[], changed: boolean, among: readonly number[]): readonly number[] => {
    if (changed && !subsets.stands(background)) return [];
    if (among.length === 1) return among;
    const half = among.length >> 1;
    const [front, back] = [among.slice(0, half), among.slice(half)];
    const second = explain([...background, ...front], front.length > 0, back);
    const first = explain([...background, ...second], second.length > 0, front);
    return [...first, ...second];
  };
  if (groups.length === 0 || !subsets.stands([])) return [];
  return [...explain([], false, groups)].sort((a, b) => a - b);
}

/** A minimal subset of `groups` to give up so that the rest can stand (Felfernig, Schubert, Zehentner, "FastDiag", 2012). */
export function fastDiag(subsets: Subsets, groups: readonly number[]): readonly number[] {
  const diagnose = (changed: boolean, among: readonly number[], standing: readonly number[]): readonly number[] => {
    if (changed && subsets.stands(standing)) return [];
    if (among.length === 1) return among;
    const half = among.length >> 1;
    const [front, back] = [among.slice(0, half), among.slice(half)];
    const without = (given: readonly number[], out: readonly number[]) => given.filter((g) => !out.includes(g));
    const first = diagnose(true, back, without(standing, front));
    const second = diagnose(first.length > 0, front, without(standing, first));
    return [...first, ...second];
  };
  if (groups.length === 0 || subsets.stands(groups)) return [];
  return [...diagnose(false, groups, groups)].sort((a, b) => a - b);
}
