// words: the door of the room.
export {
  classWords,
  costWords,
  effectWords,
  evidenceOrder,
  evidenceWords,
  outcomeWords,
  statusWords,
  verdictOrder,
  verdictWords,
  type Word,
} from "./state-words.js";
