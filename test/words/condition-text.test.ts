// The sentence of a "works if": it states the act, or the loss, and says how much more there is.
import { describe, expect, it } from "vitest";
import { type ConditionFacts, conditionalSentence } from "../../src/words/index.js";

const way = (says: string) => ({ says });
const pullUps: ConditionFacts = { kind: "remedy", says: "Bank lines float", ways: [way("Solder a pull-up to each bank line.")] };
const pin: ConditionFacts = { kind: "remedy", says: "Upper half only", ways: [way("Use an adapter."), way("Lift pin 1."), way("Cut it.")] };
const slow: ConditionFacts = { kind: "loss", says: "Slow.", loss: { says: "Slow.", suspected: false }, ways: [way("Use H2.")] };
const late: ConditionFacts = { kind: "loss", says: "Perhaps: Late.", loss: { says: "Late.", suspected: true }, ways: [] };
const looks: ConditionFacts = { kind: "cosmetic", says: "Keys exchanged", ways: [way("Relabel them.")] };

describe("works if", () => {
  it.each([
    ["one act", [pullUps], "Yes, if you do this: Solder a pull-up to each bank line."],
    ["one act and what only looks odd", [pullUps, looks], "Yes, if you do this: Solder a pull-up to each bank line."],
    ["one act of three", [pin], "Yes, if you do this: Use an adapter. Two other ways to the same stand below."],
    ["two acts", [pin, pullUps], "Yes, if you do two things, first: Use an adapter. Two other ways to the same stand below."],
    ["an act and a loss", [pullUps, slow], "Yes, if you do this: Solder a pull-up to each bank line. A loss is named below."],
    ["a loss that can be mended", [slow], "Yes, with a loss: Slow. Against it: Use H2."],
    ["a loss that is only suspected", [late], "Yes, perhaps with a loss: Late."],
    ["two losses", [slow, late], "Yes, with a loss: Slow. Against it: Use H2. One more is named below."],
    ["something to get", [{ kind: "to-get", says: "Get R6.", ways: [] }], "Yes, but first: Get R6."],
  ] as const)("%s", (_, conditions, says) => expect(conditionalSentence(conditions)).toBe(says));
});
