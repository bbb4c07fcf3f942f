// Judges one complete machine: every matter in every mode.
import type { Build } from "../../../../src/records/index.js";
import { chainLevel, chainObjections } from "./chain.js";
import { effectsOf } from "./conflicts.js";
import { firmwareObjections, needObjections } from "./needs.js";
import { placeObjections } from "./place.js";
import { powerObjections } from "./power.js";
import { resourceObjections } from "./resources.js";
import { type Case, caseOf, type Judgement, type Machine, type ModeOfUse, type Objection, type World } from "./world.js";

export type { Judgement, Machine, World } from "./world.js";

const perMachine: readonly ((c: Case) => Objection[])[] = [placeObjections, powerObjections];
const perMode: readonly ((c: Case, mode: ModeOfUse) => Objection[])[] = [
  firmwareObjections,
  needObjections,
  resourceObjections,
  chainObjections,
];

/** Ends at the first matter that cannot be: most machines are no good, and millions are judged. */
export function judge(world: World, build: Build, machine: Machine): Judgement {
  const c = caseOf(world, build, machine);
  const matters = [...perMachine.map((m) => () => m(c)), ...c.modes.flatMap((mode) => perMode.map((m) => () => m(c, mode)))];
  const open: string[] = [];
  for (const matter of matters) {
    const objections = matter();
    const bad = objections.filter((o) => o.kind === "no").map((o) => o.why);
    if (bad.length > 0) return { bad, open, level: 0 };
    open.push(...objections.map((o) => o.why));
  }
  const effects = effectsOf(c);
  const objections = effects.flatMap((e) => e.objections);
  return {
    bad: objections.filter((o) => o.kind === "no").map((o) => o.why),
    open: [...open, ...objections.filter((o) => o.kind === "unknown").map((o) => o.why)],
    level: Math.max(0, ...effects.map((e) => e.level), ...c.modes.map((m) => chainLevel(c, m))),
  };
}
