// Every single fault a bench knows, as a variant of the build. What is seen of them is for fault-table.ts.
import { burns } from "./burn-faults.js";
import type { FaultCase, FaultInput } from "./fault-case.js";
import { throwSwaps, wireSwaps } from "./swap-faults.js";
import { contactsStuck, knobs } from "./switch-faults.js";
import { bridges, mirroredPlugs, openPinWires, openWires, pinsNotLifted, pullUpsMissing, touchingNets } from "./wire-faults.js";

export function singleFaults(input: FaultInput): FaultCase[] {
  return [
    ...throwSwaps(input),
    ...wireSwaps(input),
    ...openWires(input),
    ...openPinWires(input),
    ...touchingNets(input),
    ...bridges(input),
    ...mirroredPlugs(input),
    ...pullUpsMissing(input),
    ...pinsNotLifted(input),
    ...knobs(input),
    ...contactsStuck(input),
    ...burns(input),
  ];
}
