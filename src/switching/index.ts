// Switching: what the modes ask of one switch, and the devices and contacts that give it, ranked.
export { compare } from "./compare.js";
export { hasStop, type TerminalUse } from "./contacts/contact-plan.js";
export { type Candidate, type Candidates, candidates, type LineUse } from "./contacts/design.js";
export { type DeviceFit, fitDevice, type LineAt } from "./contacts/device.js";
export { optimalityOf, runnerUpOf } from "./contacts/optimality.js";
export type { Called } from "./demand/called.js";
export { type Demands, demandsOf } from "./demand/demands.js";
export { type Sockets, socketsOf, type WindowPart } from "./demand/sockets.js";
export type {
  BankLine,
  Optimality,
  PinWork,
  RunnerUp,
  WayOut,
  WiringOptions,
  WiringReason,
  WiringReasonCode,
} from "./types.js";
