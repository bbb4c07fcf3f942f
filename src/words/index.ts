// Words: the one table of states and what they are called; text helpers. Imports records, catalogue, machine.

export { bestSentence, betterSentence, firmwareText, runnerUpSentence } from "./best-text.js";
export { changeOverSentence, type LidCard, lidCard, stepText } from "./change-over-text.js";
export { type ConditionFacts, conditionalSentence } from "./condition-text.js";
export { type ExactTestFacts, exactTestText } from "./exact-test.js";
export { noticeText } from "./notice.js";
export { mainMemoryLies, resourceWords, unsaidOwner, unsaidText } from "./resources.js";
export {
  classWords,
  costWords,
  type Evidence,
  effectWords,
  evidenceOrder,
  evidenceWords,
  outcomeWords,
  statusWords,
  type Verdict,
  verdictOrder,
  verdictWords,
  type Word,
} from "./state-words.js";
export { takenText } from "./taken-text.js";
export { capital, countText, listText, rangeText } from "./text.js";
export { costCells, costHeads, thenText } from "./ways-out-text.js";
export { byHandLine, divisionLine, fewerSentence, waysSentence, wishText } from "./ways-text.js";
