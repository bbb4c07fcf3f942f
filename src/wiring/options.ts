// What a build says about its switched machine, as planWiring takes it.
import type { Build } from "../records/index.js";
import type { WiringOptions } from "./types.js";

export function wiringOptions(build: Build, more: Pick<WiringOptions, "length_m" | "tables" | "judge"> = {}): WiringOptions {
  const safest = build.modes?.find((m) => m.safest);
  return {
    ...(build.switch ? { switch: build.switch } : {}),
    ...(build.at_hand?.parts ? { atHand: build.at_hand.parts } : {}),
    ...(safest ? { safest: safest.id } : {}),
    ...more,
  };
}
