// The wiring of one combination of a build: with the parts its owner chose or has, falling into the mode they call safest.
import type { Combination } from "../planning/index.js";
import { planWiring, type Wiring } from "../wiring/index.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";

export function wiringFor(club: Club, { build }: AskedBuild, combination: Combination, tables = true): Wiring {
  return planWiring(club.catalogue, combination, {
    switch: build.switch,
    atHand: build.at_hand?.parts,
    safest: build.modes?.find((mode) => mode.safest)?.id,
    tables,
  });
}
