// Asks planning about one card alone on one board revision under one firmware version.
import type { Catalogue } from "../catalogue/index.js";
import type { Answer } from "../planning/answer.js";
import type { CellKey, Judge } from "./cells.js";

const waiting = {
  verdict: "unknown",
  says: "Not worked out yet.",
  count: "0",
  exact: false,
  hanging: "0",
  hangingExact: false,
  combinations: [],
  possible: [],
  reasons: [],
  reasonsComplete: false,
  repairs: [],
  repairsComplete: false,
  unknowns: [],
  history: [],
} as unknown as Answer;

export const judge: Judge = (_catalogue: Catalogue, _key: CellKey) => ({ verdict: "unknown", evidence: "inferred", answer: waiting });
