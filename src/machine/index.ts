// Machine: the build as a value: read against the catalogue, edited, written as an address. Imports records, catalogue.

export { addressOf, buildFrom } from "./address.js";
export { countAtHand, withCountAtHand } from "./at-hand.js";
export { type ChoiceRef, choiceId, choiceOf, copyOfChoice } from "./choice-ref.js";
export { nameForCopy, withCard, withoutCard } from "./copies.js";
export {
  applyEdits,
  type ChoiceValue,
  type Edit,
  editGivingUp,
  editsBetween,
  editsToModes,
  pinsOf,
  withChoice,
  withoutMode,
  withSecondMode,
} from "./edit.js";
export { type Filling, fillBuild } from "./fill.js";
export {
  type Fault,
  findFaults,
  findRecordFault,
  holding,
  type InvalidBuild,
  knowsMemory,
  type Release,
  type ResolvedBuild,
  type ResolvedCard,
  type ResolvedMode,
  resolveBuild,
  running,
} from "./resolve.js";
export { asStanding } from "./standing.js";
export { type AskedUnread, findUnread } from "./unread.js";
