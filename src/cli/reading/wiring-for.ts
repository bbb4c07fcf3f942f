// The wiring of one combination of a build: with the parts its owner chose or has, falling into the mode they call safest.
import type { Combination } from "../../planning/index.js";
import { planWiring, type Wiring, wiringOptions } from "../../wiring/index.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";

export function wiringFor(club: Club, { build }: AskedBuild, combination: Combination, tables = true): Wiring {
  return planWiring(club.catalogue, combination, wiringOptions(build, { tables }));
}
