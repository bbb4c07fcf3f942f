// Every single fault a bench knows, as a variant of the build. What is seen of them is for faultTable.ts.
import { burns } from "./burnFaults.js";
import type { FaultCase, FaultInput } from "./faultCase.js";
import { throwSwaps, wireSwaps } from "./swapFaults.js";
import { contactsStuck, knobs } from "./switchFaults.js";
import { bridges, mirroredPlugs, openWires, pinsNotLifted, pullUpsMissing, touchingNets } from "./wireFaults.js";

export function singleFaults(input: FaultInput): FaultCase[] {
  return [
    ...throwSwaps(input),
    ...wireSwaps(input),
    ...openWires(input),
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
