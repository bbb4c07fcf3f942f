// Which version lies under which levels of the lines, when it is given which modes' cards each position switches.
import type { Demands } from "../demand/demands.js";

/** A version for each levels, so that every position has a mode (or lies beyond the stop) and every mode a position. */
export function chooseVersions(
  levelsAt: readonly number[],
  wants: readonly (readonly number[])[],
  open: number,
  demands: Demands,
  stop: boolean,
): Map<number, number> | undefined {
  const different = [...new Set(levelsAt)];
  const chosen = new Map<number, number>([[open, 0]]);
  const version = (mode: number) => demands.versions.indexOf(demands.modes[mode]!.firmware);
  const holds = (levels: number, v: number) =>
    stop || levelsAt.every((at, p) => at !== levels || wants[p]!.some((mode) => version(mode) === v));
  const complete = () =>
    demands.modes.every((_, mode) => levelsAt.some((at, p) => wants[p]!.includes(mode) && chosen.get(at) === version(mode)));
  const step = (i: number): boolean => {
    const levels = different[i];
    if (levels === undefined) return complete();
    if (levels === open) return holds(levels, 0) && step(i + 1);
    for (let v = 0; v < demands.versions.length; v += 1) {
      if (!holds(levels, v)) continue;
      chosen.set(levels, v);
      if (step(i + 1)) return true;
      chosen.delete(levels);
    }
    return false;
  };
  return step(0) ? chosen : undefined;
}

/** The mode of each position; of two modes alike each gets one. */
export function modesAt(
  levelsAt: readonly number[],
  wants: readonly (readonly number[])[],
  versionAt: ReadonlyMap<number, number>,
  demands: Demands,
): (number | undefined)[] {
  const used = new Set<number>();
  return levelsAt.map((levels, p) => {
    const version = demands.versions[versionAt.get(levels) ?? 0];
    const fits = wants[p]!.filter((mode) => demands.modes[mode]!.firmware === version);
    const mode = fits.find((m) => !used.has(m)) ?? fits[0];
    if (mode !== undefined) used.add(mode);
    return mode;
  });
}
