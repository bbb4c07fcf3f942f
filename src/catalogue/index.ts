// The catalogue: linked records, look-ups, house rules. Imports records.
export * from "./catalogue.js";
export { chainsNamed, type OnChain, onChain } from "./chains.js";
export { type ClaimSite, claimSites, fixedSites, meetRevisions } from "./claims.js";
export { cardsOn, cardsOnOrOff, copyName, defaultMode, findCopies, labelCopies, modesOf, numberedName, pairCopies } from "./copies.js";
export { findingOf } from "./exceptions.js";
export { explain, explanations } from "./explanations.js";
export { lineId } from "./lines.js";
export { type Linked, type LinkOptions, link } from "./link.js";
export * from "./lookups.js";
export { type Naming, namings, namingsOfBuild } from "./names.js";
export { placeOf, type Ref, ref } from "./ref.js";
export type { Draft, Rule, Scene } from "./rule.js";
export { rules } from "./rules/index.js";
export { claimsAnywhere, claimsInSlot, followsSlot } from "./slot-windows.js";
export { type SocketRows, socketRows } from "./socket-row.js";
export { switchable } from "./switchable.js";
export { kindWord, type Unresolved, unresolvedNames } from "./unresolved.js";
export { kindsOf, mainMemory, mainMemoryLiesAnywhere, type Unsaid, unsaidOfCard, unsaidOfPart } from "./unsaid.js";
export * from "./versions.js";
export {
  fewestBits,
  ioMeeting,
  lacksSpace,
  type Meeting,
  mayBeMain,
  meetIo,
  meetMemory,
  memoryMeeting,
  overlay,
  spaceBits,
} from "./windows.js";
