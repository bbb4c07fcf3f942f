// Which combination of a machine is built where nobody names one: sheets, the site, the command line and the planner all ask here.
import type { Catalogue } from "../catalogue/index.js";
import { type Combination, combinationsToWire, judgeRunning } from "../planning/index.js";
import type { Build } from "../records/index.js";
import { type BestWiring, bestWiring, wiringOptions } from "../wiring/index.js";

export interface ToBeBuilt {
  readonly build: Build;
  /** Combinations that are told beside it. */
  readonly told?: readonly Combination[];
}

/** The best of all these builds, each a division of the same machine's cards; undefined where none has a combination. */
export function bestBuilt(catalogue: Catalogue, asked: readonly ToBeBuilt[], tables = true): BestWiring | undefined {
  return bestWiring(
    catalogue,
    asked.map(({ build, told = [] }) => ({
      rounds: combinationsToWire(catalogue, build),
      told,
      options: wiringOptions(build, { tables, judge: (combination) => judgeRunning(catalogue, combination) }),
    })),
  );
}
