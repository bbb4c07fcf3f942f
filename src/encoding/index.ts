// Encoding: a question as a constraint problem. Variables, facts of the trade as constraints, and the two problems made of them.
export { changeCost, changeCount, changesOf, possibleChanges, standing, toGet } from "./changes.js";
export { applies, type Compiled, compile, forbids, type Unsettled, withRules } from "./compile.js";
export { conjunctions, fact, ref } from "./draft.js";
export { allowed_nano, drawn_nano, ofNano } from "./exact-amounts.js";
export type { Condition, Fact, OnInMode, OwnersChoice, Ref, ToGet } from "./facts.js";
export {
  cardIn,
  complement,
  eachCard,
  eachMode,
  type Frame,
  holds,
  inSlot,
  modeKept,
  ofRevision,
  onRevisions,
  runsVersion,
  setTo,
  withMemory,
} from "./frame.js";
export { conflictsAmong, testedOn } from "./lookup.js";
export { tradeRules } from "./rules/index.js";
export { draws } from "./rules/rails.js";
export { unreadWords } from "./rules/unread.js";
