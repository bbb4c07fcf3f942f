// One fault as a variant of the build, and what the makers of faults are given.

import { must } from "../../records/index.js";
import type { Candidate } from "../../switching/index.js";
import type { Harness } from "../harness/loom.js";
import type { BuiltModel } from "../simulate/build-model.js";
import type { Variant } from "../simulate/model.js";
import type { Bank, Fault, Wire } from "../types.js";

export interface FaultCase {
  readonly fault: Fault;
  readonly variant: Variant;
  /** The burn is wrong, not the wiring. */
  readonly burn: boolean;
}

export interface FaultInput {
  readonly built: BuiltModel;
  readonly candidate: Candidate;
  readonly loom: Harness;
  readonly banks: readonly Bank[];
}

export type SwitchWire = Pick<Wire, "number" | "label" | "net" | "from" | "to" | "run" | "fromText" | "toText">;

/** The wires of the switch loom, in the order of the model's. */
export function switchWires({ loom, built }: FaultInput): SwitchWire[] {
  return built.wires.map((w) =>
    must(
      loom.wires.find((wire) => wire.number === w.number),
      `wire ${w.number} of the loom`,
    ),
  );
}
