// What is built of a machine that is run in several ways: the best combination with its wiring, and its number among those that are told.
import { bestBuilt } from "../../pages/index.js";
import type { Answer, Combination, Ways } from "../../planning/index.js";
import {
  type BestBuilt,
  type BestWiring,
  planSingleVersion,
  planWiring,
  type SingleVersion,
  type Wiring,
  wiringOptions,
} from "../../wiring/index.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";

/** The wiring of one combination: with the parts its owner chose or has, falling into the mode they call safest. */
export function wiringFor(club: Club, { build }: AskedBuild, combination: Combination, tables = true): Wiring {
  return planWiring(club.catalogue, combination, wiringOptions(build, { tables }));
}

/** How the device that the build names stands in its socket where no switch chooses between versions; undefined where there is none such. */
export function namedDevice({ catalogue }: Club, { build }: AskedBuild, { answer, built }: AnswerBuilt): SingleVersion | undefined {
  if (build.switch?.device === undefined || built?.kind === "refused") return undefined;
  const wiring = built?.best.wiring;
  const combination = built?.best.combination ?? answer.combinations[0];
  if (!combination || (wiring?.kind === "wiring" && wiring.plan.device)) return undefined;
  return planSingleVersion(catalogue, combination, wiringOptions(build));
}

/** The best over all divisions of the cards, each a build of its own; undefined where there is nothing to choose. */
export function bestOfDivisions({ catalogue }: Club, ways: Ways, tables = false): BestWiring | undefined {
  const { divisions, divisionsComplete } = ways;
  if (divisions.length < 2) return undefined;
  const asked = divisions.map(({ build, combination }) => ({ build, told: combination ? [combination] : [] }));
  const best = bestBuilt(catalogue, asked, tables);
  return best && { ...best, proven: best.proven && divisionsComplete };
}

export type BuiltMachine =
  | { readonly kind: "built"; readonly number: number; readonly best: BestBuilt }
  | { readonly kind: "refused"; readonly why: Extract<BestWiring, { kind: "refused" }> };

export interface AnswerBuilt {
  /** With what is built among its combinations: at the end where the answer did not tell it. */
  readonly answer: Answer;
  /** Left out where the machine is run in one way alone, or not at all. */
  readonly built?: BuiltMachine;
}

export interface BuiltOptions {
  /** What is known already to be the best. */
  readonly given?: BestWiring | undefined;
  /** With the fault tables, which take longest. */
  readonly tables?: boolean;
}

export function builtOf(
  { catalogue }: Club,
  { build }: AskedBuild,
  answer: Answer,
  { given, tables = false }: BuiltOptions = {},
): AnswerBuilt {
  const { combinations } = answer;
  if (combinations.every((c) => c.modes.length < 2)) return { answer };
  const best = given ?? bestBuilt(catalogue, [{ build, told: combinations }], tables);
  if (!best) return { answer };
  if (best.kind === "refused") return { answer, built: { kind: "refused", why: best } };
  const at = combinations.findIndex((c) => sameMachine(c, best.combination));
  if (at >= 0) return { answer, built: { kind: "built", number: at + 1, best } };
  return {
    answer: { ...answer, combinations: [...combinations, best.combination] },
    built: { kind: "built", number: combinations.length + 1, best },
  };
}

function sameMachine(one: Combination, other: Combination): boolean {
  const key = ({ revision, memory, modes, cards }: Combination) =>
    JSON.stringify([revision, memory, modes, cards.map(({ as, revision, slot, settings }) => [as, revision, slot, settings])]);
  return key(one) === key(other);
}
