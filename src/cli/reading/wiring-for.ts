// What is built of a machine that is run in several ways: the best combination with its wiring, and its number among those that are told.
import { bestBuilt } from "../../pages/index.js";
import type { Answer, Combination, Division } from "../../planning/index.js";
import { type BestWiring, planWiring, type Wiring, wiringOptions } from "../../wiring/index.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";

/** The wiring of one combination: with the parts its owner chose or has, falling into the mode they call safest. */
export function wiringFor(club: Club, { build }: AskedBuild, combination: Combination, tables = true): Wiring {
  return planWiring(club.catalogue, combination, wiringOptions(build, { tables }));
}

/** Undefined where the machine is run in one way alone, or not at all. */
export function bestFor({ catalogue }: Club, { build }: AskedBuild, { combinations }: Answer): BestWiring | undefined {
  return combinations.some((c) => c.modes.length > 1) ? bestBuilt(catalogue, [{ build, told: combinations }], false) : undefined;
}

/** The same over divisions of the cards, each a build of its own. */
export function bestOfDivisions({ catalogue }: Club, divisions: readonly Division[]): BestWiring | undefined {
  if (divisions.length < 2) return undefined;
  return bestBuilt(
    catalogue,
    divisions.map(({ build, combination }) => ({ build, told: combination ? [combination] : [] })),
    false,
  );
}

/** The answer with what is built among its combinations, at the end where it was not told; and its number, counted from 1. */
export function numbered(answer: Answer, built: Combination): { readonly answer: Answer; readonly number: number } {
  const at = answer.combinations.findIndex((c) => sameMachine(c, built));
  if (at >= 0) return { answer, number: at + 1 };
  return { answer: { ...answer, combinations: [...answer.combinations, built] }, number: answer.combinations.length + 1 };
}

function sameMachine(one: Combination, other: Combination): boolean {
  const key = ({ revision, memory, modes, cards }: Combination) =>
    JSON.stringify([revision, memory, modes, cards.map(({ as, revision, slot, settings }) => [as, revision, slot, settings])]);
  return key(one) === key(other);
}
