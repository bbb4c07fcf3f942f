// Every finding there is, explained by its code: those of reading, those of the house rules, and the few that no single record shows.
import { type Explanation, type FindingCode, readingExplanations } from "../records/index.js";
import { rules } from "./rules/index.js";

/** Findings that come from several files, from the tests or from the folder, told by code. */
const besides: readonly Explanation[] = [
  {
    code: "rule-duplicate-id",
    meaning: "Two files hold a record of one kind with one id.",
    why: "Only the first is read, and nobody sees that the other is missing.",
    mend: "Give one of them another id, the same as its file's name, or delete it.",
  },
  {
    code: "rule-stale-exception",
    meaning: "A record is allowed to break a house rule that it keeps, or that does not exist.",
    why: "An exception nobody needs any more would hide the next breach of that rule.",
    mend: "Take the entry out of allow, or correct the name of the rule in it.",
  },
  {
    code: "rule-bench-against-rules",
    meaning: "A tested build worked although the records rule it out, or failed although they find nothing against it.",
    why: "One of the records is wrong, and every answer that rests on it may be.",
    mend: "Mend the record that is wrong, or write down the conflict that the failure shows; open_question declares a matter nobody can explain yet.",
  },
  {
    code: "rule-question",
    meaning: "A build that was asked about names something the records do not have, or says too little to be a machine.",
    why: "A question that means no machine has no answer, and a guess at what was meant might be about another one.",
    mend: "Write the name as the records have it, or leave the choice out for the planner to fill.",
  },
  {
    code: "rule-picture-there",
    meaning: "A tested build names a picture that does not lie in the folder photos.",
    why: "The page would show a gap where the proof should be.",
    mend: "Put the picture into the folder photos under that name, or say in words where it can be seen.",
  },
];

/** In the order in which a file meets them: read, linked, held against the rules. */
export const explanations: readonly Explanation[] = [
  ...readingExplanations,
  ...rules.map((rule): Explanation => ({ code: `rule-${rule.name}`, meaning: rule.says, why: rule.why, mend: rule.mend })),
  ...besides,
];

/** The explanation of a code as a finding shows it; the name of a house rule will do. */
export function explain(code: string): Explanation | undefined {
  const asked = code.trim().toLowerCase() as FindingCode;
  return explanations.find((e) => e.code === asked) ?? explanations.find((e) => e.code === `rule-${asked}`);
}
